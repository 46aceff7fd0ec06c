"""How long a battery lasts near its rated current."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.peukert import peukert_applies, peukert_hours, peukert_hours_of


def test_at_its_rated_current_a_battery_lasts_its_rated_hours():
    """100 Ah in 20 h is 5 A, whatever the exponent."""
    assert peukert_hours(5.0, capacity_Ah=100, rated_hours=20, exponent=1.4) == pytest.approx(20.0)


def test_an_ideal_battery_has_the_same_charge_at_any_current():
    """With exponent 1 twice the current is half the time."""
    assert peukert_hours(10.0, capacity_Ah=100, rated_hours=20, exponent=1.0) == pytest.approx(10.0)
    assert peukert_hours_of(100.0, current_A=10.0, exponent=1.0) == pytest.approx(10.0)


def test_the_law_promises_too_much_at_milliamperes():
    """At 35 mA and exponent 1.3 it gives 100 Ah more than four times over: 20 × (5 / 0.035)^1.3 × 0.035 = 443 Ah."""
    hours = peukert_hours(0.035, capacity_Ah=100, rated_hours=20, exponent=1.3)
    assert hours * 0.035 == pytest.approx(443, rel=0.01)
    assert not peukert_applies(0.035, capacity_Ah=100, rated_hours=20)
    assert peukert_applies(5.0, capacity_Ah=100, rated_hours=20)


@given(st.floats(1, 200), st.floats(1.0, 3.0), st.floats(1.0, 1.6))
def test_more_current_is_never_more_time(current_A, factor, exponent):
    """Hours fall as the current rises."""
    slow, fast = (
        peukert_hours(current, capacity_Ah=100, rated_hours=20, exponent=exponent)
        for current in (current_A, current_A * factor)
    )
    assert fast <= slow * (1 + 1e-12)
