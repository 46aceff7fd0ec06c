"""Delays and the clock's offset with their uncertainties."""

import math

import pytest
from tests.samples.prove_cases import STEPS, aligned, healthy, reports, row, script

from backprobe.stages.prove.alignment import align
from backprobe.stages.prove.delays import clock_offset, delay, reported_turns
from backprobe.stages.prove.prove import undoubled
from backprobe.stages.prove.setup import Timing


def both(rows, steps=STEPS):
    """On-delay, off-delay and offset."""
    found = aligned(rows, steps)
    return delay(found, script(steps), on=True), delay(found, script(steps), on=False), clock_offset(found)


def test_delays_are_told_from_the_clock_by_the_arrivals():
    """The clock is 7 s ahead, all reports 1 s under way: 7 - 1 + 0.6 = 6.6 s; the delays are 2 + 7 - 6.6 and 20.4 s."""
    rows = healthy(9.0, 27.0, late=1.0, shift=7.0)
    on, off, offset = both(rows)
    assert (on.value_s, off.value_s, offset.value_s) == pytest.approx((2.4, 20.4, 6.6))
    assert offset.u_s == pytest.approx(math.hypot(2.0, 8 / len(rows)))
    assert on.u_s == pytest.approx(math.sqrt(1.0**2 + 0.5**2 + offset.u_s**2))  # one event, hand, clock


def test_without_arrivals_the_sum_is_shown():
    """And no offset."""
    on, off, offset = both(healthy(9.0, 27.0, late=None))
    assert (on.value_s, off.value_s, offset) == pytest.approx((9.0, 27.0, None))
    assert on.u_s == pytest.approx(math.hypot(1.0, 0.5))


def test_several_turns_give_their_middle_and_a_smaller_uncertainty():
    """Delays of 2, 3 and 4 s: 3 s, spread 1 s / √3, hand 0.5 s."""
    steps = [(0, "off")] + [(t, key) for n in (0, 300, 600) for t, key in ((100 + n, "on"), (250 + n, "off"))]
    rows = [row(-60, "boot", late=None)]
    for n, slow in ((0, 2), (300, 3), (600, 4)):
        rows += [row(100 + n + slow, "ignition_on", late=None), row(250 + n + 10, "ignition_off", late=None)]
    on, off, _ = both(rows, steps)
    assert on.value_s == pytest.approx(3.0)
    assert on.u_s == pytest.approx(math.sqrt(1 / 3 + 0.25))
    assert off.u_s == pytest.approx(0.5)


def test_a_report_interval_leaves_a_range():
    """Off at 298 s, on at 328 s, key at 300 s: anywhere from 0 to 28 s, 14 s ± 28 / 2 / √3."""
    rows = [row(t, ignition=int(302 <= t < 820), late=None) for t in range(-2, 1200, 30)]
    on, off, _ = both(rows)
    assert on.value_s == pytest.approx(14.0)
    assert on.u_s == pytest.approx(math.hypot(14 / math.sqrt(3), 0.5))
    assert off.value_s == pytest.approx((8 + 38) / 2)  # on at 808 s, off at 838 s


def test_nothing_is_made_up():
    """No turn reported, no delay; what was reported stands under its row."""
    silent = aligned([row(-60, "boot"), row(5, "heartbeat"), row(900, "heartbeat")])
    assert delay(silent, script(), on=True) is None
    found = aligned(healthy())
    assert {index: edge.on for index, edge in reported_turns(found.best, script()).items()} == {3: True, 6: False}


def test_a_clock_that_was_never_set_has_no_offset():
    """All of it is the date; with arrivals the delays are known all the same."""
    rows = [",".join([a, str(i), *rest]) for i, (a, _, *rest) in enumerate(each.split(",") for each in healthy())]
    unset = []
    for line, known in zip(rows, healthy(), strict=True):
        cells = line.split(",")
        [report] = reports([known])
        cells[1] = str(report.time_s - 1_774_944_000 + 315_964_900)
        unset.append(",".join(cells))
    found = align(undoubled(reports(unset)), script(), timing=Timing())
    assert clock_offset(found) is None
    assert delay(found, script(), on=False).value_s == pytest.approx(20.4, abs=0.1)
