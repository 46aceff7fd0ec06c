"""How far a meter's reading can be from the truth.

The data sheet gives ±(`percent` % of the reading + `counts` counts of the last digit); the reading's last digit
says what one count is. That half-width is the bound of a rectangular distribution: every true value inside it is
as likely as any other (JCGM 100:2008, the GUM, 4.3.7; clause number from memory, the rule a / √3 as a maker of
calibrators prints it for meter specifications).
"""

from __future__ import annotations

import math


def accuracy_V(volts: float, *, percent: float, counts: float, count_V: float) -> float:
    """Half-width in volts of the meter's ±(percent % of reading + counts) around a reading of `volts`.

    `count_V` is one count of the last digit shown, in volts (0.01 for '12.60').

    >>> round(accuracy_V(12.60, percent=0.5, counts=2, count_V=0.01), 3)
    0.083
    """
    return abs(volts) * percent / 100 + counts * count_V


def standard_uncertainty_V(half_width_V: float) -> float:
    """Standard uncertainty in volts of a value that may lie anywhere within ±`half_width_V`: a / √3.

    >>> round(standard_uncertainty_V(0.083), 4)
    0.0479
    """
    return half_width_V / math.sqrt(3)
