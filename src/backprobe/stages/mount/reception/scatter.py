"""How far positions at rest scatter round their mean, and how many of them count as independent.

What pushes a position away lasts for minutes, so that positions a second apart say the same twice. The number that
counts is n / (1 + 2 Σ r), with the autocorrelations r up to the first that is not positive, both axes together.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

_FIRM_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Scatter:
    """Radii round the mean place that hold 50 % and 95 % [m], and the number of independent positions."""

    r50_m: float
    r95_m: float
    independent: float


def scatter_of(east_m: Sequence[float], north_m: Sequence[float]) -> Scatter:
    """The scatter of positions that were taken at even times, in metres east and north of anywhere.

    >>> scatter_of([0.0, 2.0, 0.0, 2.0], [0.0, 0.0, 0.0, 0.0])
    Scatter(r50_m=1.0, r95_m=1.0, independent=4.0)
    """
    east, north = _centred(east_m), _centred(north_m)
    radii = sorted(round(math.hypot(x, y), _FIRM_DIGITS) for x, y in zip(east, north, strict=True))
    return Scatter(_share(radii, 0.5), _share(radii, 0.95), round(_independent(east, north), 1))


def _centred(values: Sequence[float]) -> list[float]:
    mean = math.fsum(values) / len(values)
    return [value - mean for value in values]


def _share(ordered: Sequence[float], share: float) -> float:
    """The value below which `share` of the ordered values lie, between two of them where need be."""
    at = share * (len(ordered) - 1)
    low = int(at)
    high = min(low + 1, len(ordered) - 1)
    return round(ordered[low] + (ordered[high] - ordered[low]) * (at - low), _FIRM_DIGITS)


def _independent(east: Sequence[float], north: Sequence[float]) -> float:
    power = _product(east, north, lag=0)
    if power < len(east) * 1e-9:  # a receiver that holds its position still says one thing, however often
        return 1.0
    doubled = 0.0
    for lag in range(1, len(east) // 3 + 1):
        likeness = round(_product(east, north, lag=lag) / power, _FIRM_DIGITS)
        if likeness <= 0:
            break
        doubled += 2 * likeness
    return max(1.0, len(east) / (1.0 + doubled))


def _product(east: Sequence[float], north: Sequence[float], *, lag: int) -> float:
    """The sum of products of what is `lag` apart."""
    total_east = math.fsum(a * b for a, b in zip(east, east[lag:], strict=False))
    return total_east + math.fsum(a * b for a, b in zip(north, north[lag:], strict=False))
