"""At what current a bare wire melts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.adiabatic import k_factor, withstands_s
from backprobe.physics.melting import COPPER_MELTS_C, onderdonk_A, preece_A
from backprobe.physics.wire import awg_area_mm2


def test_a_hundredth_of_the_time_is_ten_times_the_current():
    """10 ms melts at exactly ten times the current of 1 s."""
    area_mm2 = awg_area_mm2(20)
    assert onderdonk_A(area_mm2, time_s=0.01) == pytest.approx(10 * onderdonk_A(area_mm2, time_s=1.0))


def test_onderdonk_is_the_adiabatic_rule_to_the_melting_point():
    """From 25 °C to 1083 °C k is 287.6; Onderdonk gives 288.7 A/mm² for 1 s: within 0.5 %."""
    assert onderdonk_A(1.0, time_s=1.0) == pytest.approx(k_factor(25.0, COPPER_MELTS_C), rel=0.005)


def test_preece_grows_with_the_power_of_one_and_a_half():
    """Four times the diameter is eight times the current; 1 mm is 80 A."""
    assert preece_A(4.0) == pytest.approx(8 * preece_A(1.0))
    assert preece_A(1.0) == pytest.approx(80.0, abs=0.1)


@given(st.integers(10, 30), st.floats(0.01, 5.0))
def test_insulation_goes_long_before_the_copper(gauge, time_s):
    """At the melting current of a time, PVC insulation stands less than a sixth of it."""
    area_mm2 = awg_area_mm2(gauge)
    assert withstands_s(onderdonk_A(area_mm2, time_s=time_s), area_mm2=area_mm2, k=115) < time_s / 6
