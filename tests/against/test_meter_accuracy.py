"""A published example of a meter's accuracy, and the rule that turns it into a standard uncertainty."""

import pytest

from backprobe.physics.meter import accuracy_V, standard_uncertainty_V


def test_published_example_of_one_percent_and_two_counts():
    """100.0 V on ±(1 % + 2) may be 98.8 to 101.2 V.

    Source: worked example of a maker of test instruments, gvda-instrument.com (article 102912098); read.
    """
    half_width_V = accuracy_V(100.0, percent=1.0, counts=2, count_V=0.1)
    assert (round(100.0 - half_width_V, 1), round(100.0 + half_width_V, 1)) == (98.8, 101.2)


def test_a_specification_is_divided_by_root_three():
    """Rectangular distribution: u = a / √3; 12.60 V on ±(0.5 % + 2 counts) gives a = 0.083 V, u = 0.0479 V.

    Source of the rule: Fluke Calibration, DMM measurement uncertainty, p. 41 (easymanua.ls); read. The figures
    were calculated from the rule by hand: 12.60 × 0.005 + 0.02 = 0.083; 0.083 / 1.7321 = 0.0479; k = 2: 0.096 V.
    """
    half_width_V = accuracy_V(12.60, percent=0.5, counts=2, count_V=0.01)
    assert round(half_width_V, 3) == 0.083
    assert round(standard_uncertainty_V(half_width_V), 4) == 0.0479
    assert 2 * standard_uncertainty_V(half_width_V) == pytest.approx(0.096, abs=0.0005)
