"""How long an insulated wire stands a short."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.adiabatic import k_factor, least_area_mm2, withstands_s


def test_time_and_area_are_the_same_rule():
    """0.75 mm² at k 115 and 40 A: (115 × 0.75 / 40)² = 4.650 s, and that time asks for 0.75 mm² again."""
    time_s = withstands_s(40.0, area_mm2=0.75, k=115)
    assert time_s == pytest.approx((86.25 / 40) ** 2)
    assert least_area_mm2(40.0, time_s=time_s, k=115) == pytest.approx(0.75)


def test_twice_the_current_is_a_quarter_of_the_time():
    """The heat goes with the square of the current."""
    assert withstands_s(80.0, area_mm2=1, k=115) == pytest.approx(withstands_s(40.0, area_mm2=1, k=115) / 4)


@given(st.floats(0, 120), st.floats(1, 30))
def test_a_hotter_start_leaves_less(from_C, more_K):
    """The factor falls as the first temperature rises."""
    assert k_factor(from_C + more_K, 160) < k_factor(from_C, 160)


@given(st.floats(1, 1000), st.floats(0.1, 10), st.floats(1.01, 3))
def test_thicker_wire_stands_longer(current_A, area_mm2, factor):
    """And so does less current."""
    thin_s = withstands_s(current_A, area_mm2=area_mm2, k=100)
    assert withstands_s(current_A, area_mm2=area_mm2 * factor, k=100) > thin_s
    assert withstands_s(current_A / factor, area_mm2=area_mm2, k=100) > thin_s
