"""Radii of a scatter that is alike in all directions, and their uncertainty."""

import math
from random import Random

import pytest

from backprobe.physics.circular_normal import chi_square, radius_factor, radius_range


def test_the_share_within_the_radius() -> None:
    """1 - exp(-r² / 2) is the share within r standard deviations."""
    for share in (0.1, 0.5, 0.95, 0.99):
        assert 1 - math.exp(-(radius_factor(share) ** 2) / 2) == pytest.approx(share)


def test_few_positions_leave_a_wide_range() -> None:
    """Two positions: 2 / 7.378 and 2 / 0.0506 under the root, 0.52 to 6.28; a hundred: close to the figure."""
    low, high = radius_range(1.0, 2)
    assert (low, high) == pytest.approx((math.sqrt(2 / 7.3778), math.sqrt(2 / 0.050636)), rel=1e-4)
    low, high = radius_range(1.0, 100)
    assert 0.9 < low < 1 < high < 1.12


def test_one_position_counts_as_two() -> None:
    """Nothing can be said of one; the range is the widest there is."""
    assert radius_range(1.0, 1) == radius_range(1.0, 2)


def test_the_range_holds_the_truth_as_often_as_it_says() -> None:
    """400 times ten positions from a standard deviation of 1: about 95 % of the ranges hold it (at least 92 %)."""
    rng, held = Random(3), 0
    for _ in range(400):
        east, north = ([rng.gauss(0, 1) for _ in range(10)] for _ in range(2))
        squares = sum((v - sum(axis) / 10) ** 2 for axis in (east, north) for v in axis)
        low, high = radius_range(math.sqrt(squares / 18), 10)
        held += low <= 1 <= high
    assert 368 <= held <= 392


def test_chi_square_of_two_is_exponential() -> None:
    """With two degrees of freedom it is -2 ln(1 - share)."""
    assert chi_square(0.95, 2) == pytest.approx(-2 * math.log(0.05), abs=1e-8)
