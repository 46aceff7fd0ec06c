"""What a start takes out of a battery, and how full it must be to give it."""

from __future__ import annotations

from backprobe.physics.interpolation import Points, linear


def crank_Ah(current_A: float, *, seconds: float) -> float:
    """The charge of one cranking [Ah].

    >>> crank_Ah(300, seconds=6)
    0.5
    """
    return current_A * seconds / 3600.0


def demand_over_supply(temperature_C: float, *, supply: Points, demand: Points) -> float:
    """How much harder a start is at `temperature_C` than at the tables' warm end, for the same battery.

    `supply` is the battery's available power and `demand` the power that the engine asks for, each as rows
    (°C, part of the warm figure).

    >>> demand_over_supply(-18.0, supply=[(-18, 0.40), (27, 1.0)], demand=[(-18, 2.10), (27, 1.0)])
    5.25
    """
    return linear(temperature_C, demand) / linear(temperature_C, supply)


def least_charge_to_crank(temperature_C: float, *, full_at_C: float, supply: Points, demand: Points) -> float:
    """The least state of charge that still starts the engine at `temperature_C`; above 1 where none does.

    `full_at_C` is the coldest at which a full battery of the vehicle's size is meant to start it. A battery's power is
    taken as proportional to its charge: our own model on published tables.

    >>> tables = {"supply": [(-18, 0.40), (0, 0.65), (27, 1.0)], "demand": [(-18, 2.10), (0, 1.55), (27, 1.0)]}
    >>> [round(least_charge_to_crank(t, full_at_C=-18, **tables), 2) for t in (-18, 0, 27)]
    [1.0, 0.45, 0.19]
    """
    hardest = demand_over_supply(full_at_C, supply=supply, demand=demand)
    return demand_over_supply(temperature_C, supply=supply, demand=demand) / hardest
