"""Ohm's law around the loop."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.loop import at_unit_V, loop_ohm, short_circuit_A


def test_parts_in_a_row_add_up():
    """Battery 5, fuse 7.7, lead 42 and ground 20 mΩ are 74.7 mΩ; at 12 V that is 160.6 A."""
    ohm = loop_ohm([0.005, 0.0077, 0.042, 0.020])
    assert ohm == pytest.approx(0.0747)
    assert short_circuit_A(12.0, loop_ohm=ohm) == pytest.approx(160.64, abs=0.01)


def test_what_is_left_at_the_unit():
    """9.0 V less 1.2 A × 0.25 Ω = 8.7 V."""
    assert at_unit_V(9.0, current_A=1.2, loop_ohm=0.25) == pytest.approx(8.7)


def test_no_unit_sees_less_than_nothing():
    """A loop that would eat 20 V of 12 V leaves 0, not -8."""
    assert at_unit_V(12.0, current_A=10.0, loop_ohm=2.0) == 0.0


@given(st.floats(0, 32), st.floats(0, 5), st.floats(0, 2), st.floats(0, 2))
def test_a_longer_loop_never_leaves_more(source_V, current_A, ohm, more_ohm):
    """More resistance, not more volts."""
    short, long = (at_unit_V(source_V, current_A=current_A, loop_ohm=r) for r in (ohm, ohm + more_ohm))
    assert long <= short
