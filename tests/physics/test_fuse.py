"""When a fuse opens, read between its gates."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.fuse import opening_s

GATES = [(1.35, 600.0), (1.6, 50.0), (2.0, 5.0), (3.5, 0.5), (6.0, 0.15)]


def test_gates_are_met():
    """At each gate its own time."""
    assert [opening_s(multiple, GATES) for multiple, _ in GATES] == [time_s for _, time_s in GATES]


def test_between_gates_a_log_log_line():
    """Half way on the log sheet from (2.0, 5) to (3.5, 0.5): at √7 it is √2.5 = 1.581 s."""
    assert opening_s(7.0**0.5, GATES) == pytest.approx(2.5**0.5)


def test_below_the_first_gate_nothing_is_sure():
    """At 134 % of the rating no time is promised."""
    assert opening_s(1.34, GATES) is None


def test_beyond_the_last_gate_the_heat_stays():
    """At 12 times: 0.15 s × (6 / 12)² = 0.0375 s, the same I²t."""
    assert opening_s(12.0, GATES) == pytest.approx(0.0375)


@given(st.floats(1.35, 100), st.floats(1.0, 10))
def test_more_current_never_opens_later(multiple, factor):
    """Over gates and beyond."""
    slow, fast = opening_s(multiple, GATES), opening_s(multiple * factor, GATES)
    assert fast <= slow * (1 + 1e-12)
