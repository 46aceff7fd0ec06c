"""How much of its rated charge a lead-acid battery gives when it is cold."""

from __future__ import annotations

from backprobe.physics.interpolation import Points, linear


def capacity_fraction(temperature_C: float, table: Points) -> float:
    """The part of the rated capacity at `temperature_C`, read between the rows (°C, fraction) of a table.

    >>> capacity_fraction(2.5, [(0.0, 0.84), (5.0, 0.88), (25.0, 1.0)])
    0.86
    """
    return linear(temperature_C, table)


def capacity_fraction_by_rate(temperature_C: float, *, per_K: float) -> float:
    """The part of the rated capacity at `temperature_C`: 1 + k (T - 25 °C); not below 0.

    `per_K` is 0.006 for a discharge in 10 to 20 h and 0.008 to 0.01 for one in 1 to 3 h. Source: a battery maker's
    support pages, after the IEC's correction C25 = Ct / (1 + k (t - 25)).

    >>> capacity_fraction_by_rate(0.0, per_K=0.006)
    0.85
    """
    return max(0.0, 1.0 + per_K * (temperature_C - 25.0))
