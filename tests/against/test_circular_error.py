"""Radii and ranges of a circular scatter against published figures.

* National Research Council, The Global Positioning System, 1995 (nationalacademies.org/read/4920/chapter/111):
  CEP = 0.589 (sN + sE), 2 drms = 2.4 CEP for a circular normal distribution, which then holds 98 %.
* The Rayleigh distribution's percentile s · √(-2 ln(1 - F)) (Wikipedia, Circular error probable, Conversion).
* Chi-square table, from memory: 95 % of 2, 10, 20 degrees: 5.991, 18.307, 31.410; 2.5 % of 10: 3.247;
  97.5 % of 20: 34.170.
"""

import math

import pytest

from backprobe.physics.circular_normal import chi_square, radius_factor


def test_cep_by_the_council() -> None:
    """0.589 · (1 + 1) = 1.178 standard deviations of one axis."""
    assert radius_factor(0.5) == pytest.approx(0.589 * 2, abs=0.001)


def test_twice_the_distance_root_mean_square() -> None:
    """2 drms = 2 √2 s = 2.4 CEP, and 98 % lie within it."""
    assert 2 * math.sqrt(2) / radius_factor(0.5) == pytest.approx(2.4, abs=0.003)
    assert 2 * math.sqrt(2) == pytest.approx(radius_factor(0.98), rel=0.02)


@pytest.mark.parametrize(("share", "factor"), [(0.5, 1.1774), (0.6321, 1.4142), (0.95, 2.4477), (0.997, 3.4086)])
def test_rayleigh(share: float, factor: float) -> None:
    """CEP, DRMS, R95 and R99.7 in standard deviations."""
    assert radius_factor(share) == pytest.approx(factor, abs=2e-3)


@pytest.mark.parametrize(
    ("share", "freedom", "value"),
    [(0.95, 2, 5.991), (0.95, 10, 18.307), (0.95, 20, 31.410), (0.025, 10, 3.247), (0.975, 20, 34.170)],
)
def test_chi_square_table(share: float, freedom: int, value: float) -> None:
    """To the three decimals of the table."""
    assert chi_square(share, freedom) == pytest.approx(value, abs=6e-4)
