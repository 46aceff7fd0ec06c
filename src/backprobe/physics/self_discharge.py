"""What a battery loses by itself."""

from __future__ import annotations

import math

DAYS_PER_MONTH = 365.25 / 12


def self_discharge_per_day(per_month: float, *, temperature_C: float, at_C: float = 25.0) -> float:
    """The part of its charge that a battery loses in a day, from the part it loses in a month at `at_C`.

    It doubles for every 10 °C. Source: a battery maker's page on self-discharge; 0.0012 to 0.0019 of specific gravity
    a day at 26.7 °C, above 0.005 at 47 °C and about none at -2 °C (Electrical Engineering, 1940s) is of that kind.

    >>> round(self_discharge_per_day(0.05, temperature_C=35) / self_discharge_per_day(0.05, temperature_C=25), 9)
    2.0
    """
    return per_month / DAYS_PER_MONTH * math.pow(2.0, (temperature_C - at_C) / 10.0)
