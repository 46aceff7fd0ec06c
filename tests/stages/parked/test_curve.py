"""What the curve shows."""

import pytest
from tests.samples.parked import parked

from backprobe.stages.parked.curve import curve_of
from backprobe.stages.parked.parked import parked_answer


def test_the_lines_fall_and_stand_in_order():
    """Worst, likely, best at every day; none rises."""
    curve = curve_of(parked_answer(parked()))
    assert all(a <= b <= c for a, b, c in zip(curve.worst, curve.likely, curve.best, strict=True))
    for line in (curve.worst, curve.likely, curve.best):
        assert list(line) == sorted(line, reverse=True)


def test_the_likely_line_meets_the_likely_need_at_the_likely_days():
    """The point before is above it, the point after below."""
    answer = parked_answer(parked())
    curve = curve_of(answer)
    above = [day for day, left in zip(curve.days, curve.likely, strict=True) if left >= curve.needed[1]]
    assert above[-1] <= answer.days.likely <= above[-1] + curve.days[1]


def test_the_wanted_days_are_on_it():
    """However far."""
    curve = curve_of(parked_answer(parked(wanted_days=900.0)))
    assert curve.days[-1] == pytest.approx(990.0)


def test_nothing_to_draw():
    """While something is lacking."""
    assert curve_of(parked_answer(parked(capacity_Ah=None))) is None
