"""Resistance from the millivolts under a known load."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.ground_drop import drop_ohm, floor_mA, step_ohm
from backprobe.physics.span import Span, exactly


def test_the_ends_of_both_are_put_together():
    """100 ± 5 mV at 5 ± 0.1 A: 95 / 5.1 = 18.6, 100 / 5 = 20, 105 / 4.9 = 21.4 mΩ."""
    found = drop_ohm(Span(95, 100, 105), load_A=Span(4.9, 5.0, 5.1))
    assert (found.low, found.likely, found.high) == pytest.approx((0.095 / 5.1, 0.020, 0.105 / 4.9))


def test_a_tenth_of_a_volt_at_two_amperes():
    """The workshop's 0.1 V for a ground is 50 mΩ at 2 A."""
    assert drop_ohm(exactly(100), load_A=exactly(2.0)).likely == pytest.approx(0.050)


def test_a_drop_below_nothing_counts_as_none():
    """-0.4 ± 2 mV at 2 A may be 0 to 0.8 mΩ."""
    found = drop_ohm(Span(-2.4, -0.4, 1.6), load_A=exactly(2.0))
    assert (found.low, found.likely, found.high) == pytest.approx((0.0, 0.0, 0.0008))


def test_the_step_from_idle_to_transmitting():
    """The supply falls by 0.2 V as the current rises by 1.0 A: 0.2 Ω around the loop."""
    assert step_ohm(Span(0.18, 0.20, 0.22), step_A=exactly(1.0)).likely == pytest.approx(0.2)


def test_the_least_load_that_tells():
    """To see 10 mΩ with a meter sure to 0.5 mV takes 50 mA; nothing shows a resistance of nothing."""
    assert floor_mA(0.010, meter_mV=0.5) == pytest.approx(50.0)
    assert floor_mA(0.0, meter_mV=0.5) == math.inf


@given(st.floats(0, 500), st.floats(0, 50), st.floats(0.5, 20), st.floats(0, 0.4))
def test_the_truth_lies_within(drop_mV, spread_mV, load_A, spread_A):
    """Low, likely and high stand in order."""
    drop = Span(drop_mV - spread_mV, drop_mV, drop_mV + spread_mV)
    found = drop_ohm(drop, load_A=Span(load_A - spread_A, load_A, load_A + spread_A))
    assert found.low <= found.likely <= found.high
