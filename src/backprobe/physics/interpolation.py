"""Reading between the rows of a table."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise

Points = Sequence[tuple[float, float]]
_Ends = tuple[tuple[float, float], tuple[float, float]]


def linear(x: float, points: Points) -> float:
    """The value at `x` on straight lines between `points` (ascending in x); beyond the ends that of the end.

    >>> round(linear(12.345, [(12.24, 0.5), (12.45, 0.75)]), 9)
    0.625
    """
    return _between(x, points, line=_straight)


def log_log(x: float, points: Points) -> float:
    """The value at `x` on lines that are straight on a log-log sheet; beyond the ends that of the end.

    All figures must be positive.

    >>> round(log_log(4.0, [(2.0, 10.0), (8.0, 40.0)]), 9)
    20.0
    """
    return _between(x, points, line=_log_straight)


def _between(x: float, points: Points, *, line: Callable[[float, _Ends], float]) -> float:
    if x <= points[0][0]:
        return points[0][1]
    for left, right in pairwise(points):
        if x < right[0]:
            return line(x, (left, right))
        if x == right[0]:  # a row is that row, to the last digit
            return right[1]
    return points[-1][1]


def _straight(x: float, ends: _Ends) -> float:
    (x0, y0), (x1, y1) = ends
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def _log_straight(x: float, ends: _Ends) -> float:
    (x0, y0), (x1, y1) = ends
    return y0 * math.exp(math.log(y1 / y0) * math.log(x / x0) / math.log(x1 / x0))
