"""How long a lead-acid battery lasts at a current near or above its rated one.

Not for the milliamperes of a parked vehicle: far below the rated current the law promises more charge than there is
(textbook knowledge, from memory). There plain ampere-hours count, less the battery's own self-discharge.
"""

from __future__ import annotations

import math

LEAST_OF_RATED = 0.5


def peukert_hours(current_A: float, *, capacity_Ah: float, rated_hours: float, exponent: float) -> float:
    """Hours until empty at `current_A`: H (C / (I H))^k. Source: Peukert, as printed by battery sellers.

    >>> round(peukert_hours(10, capacity_Ah=100, rated_hours=20, exponent=1.3), 2)
    8.12
    """
    return rated_hours * math.pow(capacity_Ah / (current_A * rated_hours), exponent)


def peukert_hours_of(peukert_Ah: float, *, current_A: float, exponent: float) -> float:
    """Hours until empty of a battery whose capacity at 1 A is `peukert_Ah`: C / I^k. Source: as above.

    >>> round(peukert_hours_of(100, current_A=5, exponent=1.2), 1)
    14.5
    """
    return peukert_Ah / math.pow(current_A, exponent)


def peukert_applies(current_A: float, *, capacity_Ah: float, rated_hours: float) -> bool:
    """Whether a current is near enough to the rated one for the law: at least half of it (our own model).

    >>> peukert_applies(0.035, capacity_Ah=100, rated_hours=20)
    False
    """
    return current_A >= LEAST_OF_RATED * capacity_Ah / rated_hours
