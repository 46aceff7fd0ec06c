"""State of charge from volts at rest."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.battery import as_at_reference_V, charge_at_V, surface_charge_V

TABLE = [(11.89, 0.0), (12.06, 0.25), (12.24, 0.5), (12.45, 0.75), (12.65, 1.0)]


def test_rows_and_what_lies_between():
    """12.24 V is half; half way to 12.45 V is 62.5 %."""
    assert charge_at_V(12.24, TABLE) == 0.5
    assert charge_at_V(12.345, TABLE) == pytest.approx(0.625)


def test_beyond_the_table_it_is_full_or_empty():
    """No battery is fuller than full."""
    assert (charge_at_V(13.0, TABLE), charge_at_V(11.0, TABLE)) == (1.0, 0.0)


def test_surface_charge_fades():
    """0.5 V at once, 0.5 / e = 0.184 V after 3 h, nothing from 24 h on."""
    assert surface_charge_V(0.0) == 0.5
    assert surface_charge_V(3.0) == pytest.approx(0.5 / 2.718281828)
    assert (surface_charge_V(24.0), surface_charge_V(1e6)) == (0.0, 0.0)


def test_the_printed_correction():
    """0 °F is 44.4 K below 80 °F: 44.4 × 0.00432 = 0.192 V less, as printed."""
    corrected = as_at_reference_V(12.46, temperature_C=-17.78, reference_C=26.67, V_per_K=0.00432)
    assert corrected == pytest.approx(12.46 - 0.192, abs=0.001)


@given(st.floats(0, 48), st.floats(0, 48))
def test_longer_rest_never_leaves_more(hours, more):
    """Surface charge only falls."""
    assert surface_charge_V(hours + more) <= surface_charge_V(hours)


@given(st.floats(10, 14), st.floats(0, 2))
def test_more_volts_are_never_less_charge(volts, more_V):
    """The table is read rising."""
    assert charge_at_V(volts, TABLE) <= charge_at_V(volts + more_V, TABLE)
