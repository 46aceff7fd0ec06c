"""Scatter round a place that is alike in all directions: the circular normal distribution.

With the same standard deviation s in east and north the distance from the middle is Rayleigh distributed: the circle
that holds a share p has the radius s · √(-2 ln(1 - p)), 1.1774 s for 50 % (CEP) and 2.4477 s for 95 %.
"""

from __future__ import annotations

import math

_STEPS = 200


def radius_factor(share: float) -> float:
    """The radius that holds `share` of all, in standard deviations of one axis.

    >>> round(radius_factor(0.5), 4), round(radius_factor(0.95), 4)
    (1.1774, 2.4477)
    """
    return math.sqrt(-2.0 * math.log(1.0 - share))


def radius_range(radius: float, independent: int, *, confidence: float = 0.95) -> tuple[float, float]:
    """The range of true radii behind one that was measured from `independent` positions round their own mean.

    2 (n - 1) s² / σ² follows chi-square with 2 (n - 1) degrees of freedom; n is taken as 2 at least.

    >>> [round(end, 2) for end in radius_range(1.0, 11)]
    [0.77, 1.44]
    """
    freedom = 2 * (max(independent, 2) - 1)
    tail = (1.0 - confidence) / 2
    high, low = (freedom / chi_square(share, freedom) for share in (tail, 1.0 - tail))
    return radius * math.sqrt(low), radius * math.sqrt(high)


def chi_square(share: float, freedom: int) -> float:
    """The value below which a chi-square of an even number of degrees of freedom stays in `share` of all cases.

    >>> round(chi_square(0.95, 2), 3), round(chi_square(0.025, 20), 3)
    (5.991, 9.591)
    """
    low, high = 0.0, freedom + 20.0 * math.sqrt(freedom) + 40.0
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if _chi_square_below(middle, freedom) < share:
            low = middle
        else:
            high = middle
    return round((low + high) / 2, 9)


def _chi_square_below(value: float, freedom: int) -> float:
    """The share of a chi-square below `value`: a sum of Poisson terms where the degrees of freedom are even."""
    half = value / 2
    if half == 0.0:
        return 0.0
    logs = (count * math.log(half) - half - math.lgamma(count + 1) for count in range(freedom // 2))
    return 1.0 - math.fsum(math.exp(each) for each in logs)
