"""How fast the rows follow one another, and whether the clock went on."""

from __future__ import annotations

from itertools import pairwise
from statistics import median

from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.recording_pace import MOST_STEPS, UNKNOWN_S, Pace


def pace_of(times: list[float], block: int = 7) -> Pace:
    """The pace of rising times, taken in blocks."""
    pace, last = Pace(), times[0]
    for start in range(0, len(times), block):
        part = times[start : start + block]
        pace.add(part, [b - a for a, b in pairwise([last, *part])])
        last = part[-1]
    return pace


def test_a_clock_that_goes_on():
    """0.1 s steps with one gap of 3 s: the median step, and the gap."""
    times = [i / 8 for i in range(50)] + [50 / 8 + 3 + i / 8 for i in range(50)]
    pace = pace_of(times)
    assert not pace.stands
    assert pace.interval_s == 0.125
    assert pace.widest_s == 3.125  # 50/8 + 3 after 49/8


def test_a_clock_in_whole_seconds():
    """Four rows a second: the clock shows the same time on four rows, and a row takes 1 s / 4."""
    pace = pace_of([float(i // 4) for i in range(400)])
    assert pace.stands
    assert pace.usual_run == 4
    assert pace.interval_s == 0.25


def test_a_clock_that_stands_at_first():
    """Twelve rows at 0 and then 4 rows for every 2 s: the standing rows do not count towards the pace."""
    pace = pace_of([0.0] * 12 + [2.0 + 2 * (i // 4) for i in range(400)])
    assert pace.stands
    assert pace.interval_s == 0.5
    assert pace.longest == 12


def test_a_good_clock_that_stands_once():
    """A clock that goes on with every row but stands over 6 is not trusted."""
    times = [i * 0.5 for i in range(40)] + [19.5] * 5 + [20 + i * 0.5 for i in range(40)]
    pace = pace_of(times)
    assert pace.stands
    assert (pace.longest, pace.longest_at_s) == (6, 19.5)
    assert pace.interval_s == 0.5


def test_two_rows_of_one_time_do_no_harm():
    """A doubled row is no standing clock."""
    assert not pace_of([0.0, 1.0, 1.0, 2.0, 3.0, 4.0]).stands


def test_a_clock_that_never_goes_on():
    """Nothing is known of the pace."""
    pace = pace_of([0.0] * 30)
    assert pace.stands
    assert pace.interval_s == UNKNOWN_S


def test_one_row():
    """One row has no pace and no standing clock."""
    pace = pace_of([5.0])
    assert (pace.stands, pace.interval_s, pace.widest_s) == (False, 0.0, 0.0)


def test_memory_does_not_grow():
    """Of 100,000 steps at most 8,192 are kept, spread evenly: half of them from each half of the recording."""
    times = [float(i) for i in range(50_000)] + [50_000.0 + 3 * i for i in range(50_000)]
    pace = pace_of(times, block=999)
    assert len(pace.steps) <= MOST_STEPS
    assert abs(pace.steps.count(1.0) - pace.steps.count(3.0)) <= 1
    assert len(pace.runs) == 1


@given(st.lists(st.integers(1, 50), min_size=2, max_size=60), st.integers(1, 9))
def test_blocks_do_not_matter(steps, block):
    """Cut into any blocks, the median step and the widest are those of the whole."""
    times = [0.0]
    for step in steps:
        times.append(times[-1] + step / 4)
    pace = pace_of(times, block)
    assert pace.interval_s == median(b - a for a, b in pairwise(times))
    assert pace.widest_s == max(steps) / 4
