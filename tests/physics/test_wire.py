"""Size and resistance of copper wire."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.wire import (
    at_temperature_ohm,
    awg_area_mm2,
    awg_diameter_mm,
    circle_mm2,
    circular_mils,
    copper_mm2,
    copper_ohm_per_m,
)


def test_the_gauge_is_a_row_of_equal_ratios():
    """36 AWG is 0.127 mm and 4/0 (-3) is 11.684 mm = 0.46 inch, 92 times as thick, by definition."""
    assert awg_diameter_mm(36) == pytest.approx(0.127)
    assert awg_diameter_mm(-3) == pytest.approx(0.46 * 25.4)


def test_rules_of_thumb():
    """Three gauges are twice the area, six twice the diameter, ten a tenth: within 1.5 % (daycounter.com)."""
    assert awg_area_mm2(15) / awg_area_mm2(18) == pytest.approx(2.0, rel=0.015)
    assert awg_diameter_mm(12) / awg_diameter_mm(18) == pytest.approx(2.0, rel=0.015)
    assert awg_area_mm2(10) / awg_area_mm2(20) == pytest.approx(10.0, rel=0.02)


def test_a_circle_of_one_mil_is_one_circular_mil():
    """π / 4 × 0.0254² mm² is one."""
    assert circular_mils(math.pi / 4 * 0.0254**2) == pytest.approx(1.0)
    assert circle_mm2(2.0) == pytest.approx(math.pi)


def test_a_metre_of_a_square_millimetre():
    """0.017241 Ω, and that resistance stands for 1 mm²."""
    assert copper_ohm_per_m(1.0) == pytest.approx(0.017241)
    assert copper_mm2(0.017241) == pytest.approx(1.0)


def test_at_20_degrees_nothing_changes():
    """(234.5 + 20) / 254.5 = 1."""
    assert at_temperature_ohm(1.25, 20.0) == pytest.approx(1.25)


def test_resistance_is_none_at_the_inferred_zero():
    """The straight line of the formula meets nothing at -234.5 °C."""
    assert at_temperature_ohm(1.0, -234.5) == 0.0


@given(st.integers(-3, 39))
def test_thinner_wire_resists_more(gauge):
    """One gauge up is a factor of 92^(2/39) = 1.261 in resistance."""
    ratio = copper_ohm_per_m(awg_area_mm2(gauge + 1)) / copper_ohm_per_m(awg_area_mm2(gauge))
    assert ratio == pytest.approx(92 ** (2 / 39))


@given(st.floats(-60, 199), st.floats(0.1, 50))
def test_hotter_wire_resists_more(temperature_C, more_K):
    """0.393 % of the 20 °C figure for each kelvin."""
    rise = at_temperature_ohm(1.0, temperature_C + more_K) - at_temperature_ohm(1.0, temperature_C)
    assert rise == pytest.approx(more_K / 254.5)
