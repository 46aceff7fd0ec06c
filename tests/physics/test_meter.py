"""The meter's accuracy in volts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.meter import accuracy_V, standard_uncertainty_V


def test_percent_and_counts_add_up():
    """12.60 V on ±(0.5 % + 2 counts of 0.01 V): 12.60 × 0.005 + 2 × 0.01 = 0.063 + 0.020 = 0.083 V."""
    assert accuracy_V(12.60, percent=0.5, counts=2, count_V=0.01) == pytest.approx(0.063 + 0.020)


def test_the_last_digit_typed_sets_the_count():
    """12.6 V has counts of 0.1 V: 0.063 + 0.2 = 0.263 V, so 12.6 is not 12.60."""
    assert accuracy_V(12.6, percent=0.5, counts=2, count_V=0.1) == pytest.approx(0.063 + 0.2)


def test_a_negative_reading_is_as_uncertain_as_a_positive_one():
    """The percentage is of the size of the reading: 0.4 V backwards is still 0.002 + 0.02 V uncertain."""
    assert accuracy_V(-0.4, percent=0.5, counts=2, count_V=0.01) == pytest.approx(0.002 + 0.020)


def test_zero_volts_still_has_its_counts():
    """A shown zero is 0 ± 2 counts."""
    assert accuracy_V(0.0, percent=0.5, counts=2, count_V=0.01) == pytest.approx(0.02)


def test_the_standard_uncertainty_is_the_half_width_by_root_three():
    """0.083 / 1.73205 = 0.04792 V."""
    assert standard_uncertainty_V(0.083) == pytest.approx(0.083 / 1.7320508, rel=1e-6)


@given(st.floats(-60, 60), st.floats(0, 5), st.floats(0, 50), st.sampled_from([0.001, 0.01, 0.1, 1.0]))
def test_the_half_width_is_never_negative_and_never_below_its_counts(volts, percent, counts, count_V):
    """Whatever is read, the counts alone are a floor of the uncertainty."""
    assert accuracy_V(volts, percent=percent, counts=counts, count_V=count_V) >= counts * count_V
