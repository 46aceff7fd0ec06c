"""One channel over all its rows, gathered block by block."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.recording_block import Block, Faults
from backprobe.formats.recording_channel import Tally, stretch_of
from backprobe.formats.recording_clock import Clock
from backprobe.formats.recording_layout import layout_of
from backprobe.formats.recording_rows import Rows, Start

LAYOUT = layout_of(["time_s,red", "0,12"], file="f")
NAN = math.nan


def tallied(
    times: list[float], values: list[float], *, block: int = 3, thresholds: tuple[float, ...] = (10.0,)
) -> Tally:
    tally, last = Tally(LAYOUT.columns[0], thresholds), times[0]
    for row in range(0, len(times), block):
        part = times[row : row + block]
        steps = [b - a for a, b in pairwise([last, *part])]
        start = Start(1 + row, row, Clock())
        rows = Rows(
            Block(range(2 + row, 2 + row + len(part)), part, [values[row : row + block]], None), steps, start, start
        )
        tally.add(stretch_of(rows, 0, layout=LAYOUT, size=2, faults=Faults()), steps)
        last = part[-1]
    return tally


def test_extremes_are_where_they_were_first_seen():
    """The lowest stands at rows 2 and 5: the first counts."""
    tally = tallied([0.0, 1.0, 2.0, 3.0, 4.0, 5.0], [12.0, 11.0, 9.0, 12.5, 12.5, 9.0])
    assert (tally.lowest, tally.lowest_at) == (9.0, (2.0, 2))
    assert (tally.highest, tally.highest_at) == (12.5, (3.0, 3))
    assert tally.total / tally.held == pytest.approx((12 + 11 + 9 + 12.5 + 12.5 + 9) / 6)


@pytest.mark.parametrize(
    ("values", "seconds", "rows"),
    [
        ([12.0, 12.0, 12.0, 12.0, 12.0, 12.0], 0.0, 0),
        ([9.0, 9.0, 9.0, 9.0, 9.0, 9.0], 5.0, 6),  # five steps of 1 s, all whole
        ([12.0, 12.0, 9.0, 12.0, 12.0, 12.0], 1.0, 1),  # half before and half after
        ([12.0, 12.0, 9.0, 9.0, 12.0, 12.0], 2.0, 2),  # the dip runs over two blocks: 0.5 + 1 + 0.5
        ([9.0, 12.0, 12.0, 12.0, 12.0, 9.0], 1.0, 2),  # half a step at each end
        ([10.0, 10.0, 10.0, 10.0, 10.0, 10.0], 0.0, 0),  # at the threshold is not below it
        ([12.0, NAN, 9.0, NAN, 12.0, 12.0], 1.0, 1),  # a gap is not below
    ],
)
def test_time_below(values, seconds, rows):
    """Six rows 1 s apart in blocks of three, threshold 10 V."""
    below = tallied([float(i) for i in range(6)], values).below[10.0]
    assert (below.seconds, below.rows) == (seconds, rows)


@given(
    st.lists(st.tuples(st.integers(1, 8), st.sampled_from([8.0, 9.5, 10.0, 12.5, NAN])), min_size=1, max_size=40),
    st.integers(1, 9),
)
def test_blocks_do_not_matter(rows, block):
    """Cut into any blocks: extremes, sum, time below as worked out over the whole."""
    times = [sum(step for step, _ in rows[: i + 1]) / 4 for i in range(len(rows))]
    values = [value for _, value in rows]
    tally = tallied(times, values, block=block, thresholds=(9.0, 10.0))
    held = [value for value in values if not math.isnan(value)]
    assert tally.held == len(held)
    assert tally.total == pytest.approx(math.fsum(held))
    if held:
        assert (tally.lowest, tally.highest) == (min(held), max(held))
    for threshold, below in tally.below.items():
        pairs = pairwise(zip(times, values, strict=True))
        assert below.seconds == pytest.approx(
            sum((t - s) * ((u < threshold) + (v < threshold)) / 2 for (s, u), (t, v) in pairs)
        )
        assert below.rows == sum(1 for value in values if value < threshold)


def test_values_beyond_reason():
    """A spike of 500 V is no voltage of a vehicle: it becomes a gap and is counted with its line."""
    faults = Faults()
    rows = Rows(Block([7, 8, 9], [0.0, 1.0, 2.0], [[12.0, 500.0, math.inf]], None), [0.0, 1.0, 1.0], Start(1), Start(1))
    stretch = stretch_of(rows, 0, layout=LAYOUT, size=1, faults=faults)
    assert (stretch.low, stretch.high, stretch.held, stretch.total) == (12.0, 12.0, 1, 12.0)
    assert [fault.place.line for fault in faults.places] == [8, 9]


def test_a_block_of_gaps():
    """Nothing held: nothing tallied, and the envelope shows the gap."""
    rows = Rows(Block([7, 8], [0.0, 1.0], [[NAN, NAN]], None), [0.0, 1.0], Start(1), Start(1))
    stretch = stretch_of(rows, 0, layout=LAYOUT, size=2, faults=Faults())
    assert (stretch.held, stretch.total) == (0, 0.0)
    assert math.isnan(stretch.lows[0])
