"""What a battery loses by itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.self_discharge import self_discharge_per_day


def test_a_month_has_thirty_and_a_half_days():
    """5 % a month is 0.05 / 30.4375 = 0.164 % a day at 25 °C."""
    assert self_discharge_per_day(0.05, temperature_C=25) == pytest.approx(0.05 / 30.4375)


def test_ten_degrees_are_a_factor_of_two():
    """At 45 °C four times, at 5 °C a quarter."""
    warm = self_discharge_per_day(0.05, temperature_C=25)
    assert self_discharge_per_day(0.05, temperature_C=45) == pytest.approx(4 * warm)
    assert self_discharge_per_day(0.05, temperature_C=5) == pytest.approx(warm / 4)


@given(st.floats(-40, 60), st.floats(0, 40))
def test_warmer_never_loses_less(temperature_C, more_K):
    """The loss rises with the temperature."""
    cool, warm = (self_discharge_per_day(0.05, temperature_C=t) for t in (temperature_C, temperature_C + more_K))
    assert cool <= warm
