"""What a battery gives when it is cold."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.capacity import capacity_fraction, capacity_fraction_by_rate

TABLE = [(-10.0, 0.606), (0.0, 0.84), (25.0, 1.0), (40.0, 1.05)]


def test_between_two_rows():
    """Half way from 0.606 at -10 °C to 0.84 at 0 °C is 0.723."""
    assert capacity_fraction(-5.0, TABLE) == pytest.approx(0.723)


def test_by_rate():
    """At 0 °C with 0.01 per kelvin: 1 - 0.25 = 0.75; far below it is nothing, not less."""
    assert capacity_fraction_by_rate(0.0, per_K=0.01) == pytest.approx(0.75)
    assert capacity_fraction_by_rate(-200.0, per_K=0.01) == 0.0


@given(st.floats(-40, 60), st.floats(0, 40))
def test_colder_never_gives_more(temperature_C, more_K):
    """By table and by rate."""
    assert capacity_fraction(temperature_C, TABLE) <= capacity_fraction(temperature_C + more_K, TABLE)
    cold, warm = (capacity_fraction_by_rate(t, per_K=0.008) for t in (temperature_C, temperature_C + more_K))
    assert cold <= warm
