"""What is supposed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.findings import Standing
from backprobe.stages.parked.supposed import AGE_BASIS, REPORT_BASIS, STARTS_TO_BASIS, of_age


def test_a_battery_of_four_years():
    """4 years at 10, 5 and 2 %."""
    left = of_age(4)
    assert (left.low, left.likely, left.high) == pytest.approx((0.60, 0.80, 0.92))


@given(st.floats(0, 30), st.floats(0, 30))
def test_older_never_holds_more(years, more):
    """At each end, and never less than a fifth."""
    young, old = of_age(years), of_age(years + more)
    assert (old.low <= young.low, old.likely <= young.likely, old.high <= young.high) == (True, True, True)
    assert 0.2 <= old.low <= old.likely <= old.high <= 1.0


def test_an_unknown_age_takes_in_a_new_one():
    """New at best, six years at worst."""
    assert (of_age(None).low, of_age(None).high) == pytest.approx((0.40, 1.0))


def test_what_nobody_published_is_called_so():
    """Our own model."""
    assert {AGE_BASIS.standing, REPORT_BASIS.standing, STARTS_TO_BASIS.standing} == {Standing.MODEL}
