"""Scatter at rest, and how many positions count as independent."""

from random import Random

import pytest

from backprobe.physics.circular_normal import radius_range
from backprobe.stages.mount.reception.scatter import scatter_of


def wander(rng: Random, count: int, *, memory: float) -> list[float]:
    """One axis of positions with a standard deviation of 1 m, each `memory` of the one before."""
    value, values = rng.gauss(0, 1), []
    for _ in range(count):
        value = memory * value + (1 - memory**2) ** 0.5 * rng.gauss(0, 1)
        values.append(value)
    return values


def test_independent_positions_count_in_full() -> None:
    """1,000 draws of 1 m in each axis: 1.18 m and 2.45 m, and nearly all of them count."""
    rng = Random(1)
    found = scatter_of(wander(rng, 1000, memory=0), wander(rng, 1000, memory=0))
    assert found.r50_m == pytest.approx(1.1774, abs=0.06)
    assert found.r95_m == pytest.approx(2.4477, abs=0.15)
    assert found.independent > 700


def test_positions_that_remember_count_less() -> None:
    """With a memory of 0.98 a step (1 + 0.98) / (1 - 0.98) = 99 positions say what one does: 10 of 1,000 count."""
    counts = []
    for seed in range(30):
        rng = Random(seed)
        counts.append(scatter_of(wander(rng, 1000, memory=0.98), wander(rng, 1000, memory=0.98)).independent)
    assert 6 < sorted(counts)[15] < 25


def test_the_range_holds_the_truth() -> None:
    """Of 200 stretches that remember, at least nine in ten have the true 95 % radius (2.4477 m) in their range."""
    held = 0
    for seed in range(200):
        rng = Random(1000 + seed)
        found = scatter_of(wander(rng, 400, memory=0.9), wander(rng, 400, memory=0.9))
        low, high = radius_range(found.r95_m, int(found.independent))
        held += low <= 2.4477 <= high
    assert held >= 180


def test_one_place_is_one_position() -> None:
    """However often it is said."""
    found = scatter_of([5.0] * 100, [7.0] * 100)
    assert (found.r50_m, found.r95_m, found.independent) == (0.0, 0.0, 1.0)
