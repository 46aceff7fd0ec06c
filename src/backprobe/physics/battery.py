"""How full a lead-acid battery is, from its volts at rest."""

from __future__ import annotations

import math

from backprobe.physics.interpolation import Points, linear

SURFACE_V = 0.5
SURFACE_FADES_H = 3.0
RESTED_H = 24.0


def charge_at_V(rest_V: float, table: Points) -> float:
    """State of charge, 0 to 1, of a 12 V battery at rest, read between the rows (V, charge) of a `table`.

    >>> round(charge_at_V(12.345, [(11.89, 0.0), (12.24, 0.5), (12.45, 0.75), (12.65, 1.0)]), 9)
    0.625
    """
    return linear(rest_V, table)


def surface_charge_V(hours: float) -> float:
    """The most by which a 12 V battery can still read too high `hours` after it was charged [V].

    Up to 0.5 V at once, fading to a third in 3 h and to nothing worth the name in 24 h: our own model. It agrees with
    the makers' advice to wait 6 to 8 h, better 24 h, before the volts are believed.

    >>> [round(surface_charge_V(hours), 2) for hours in (0, 3, 8, 24)]
    [0.5, 0.18, 0.03, 0.0]
    """
    return 0.0 if hours >= RESTED_H else SURFACE_V * math.exp(-hours / SURFACE_FADES_H)


def as_at_reference_V(rest_V: float, *, temperature_C: float, reference_C: float, V_per_K: float) -> float:
    """The volts that the same battery would be read at by a table made for `reference_C` [V].

    `V_per_K` is what is added for each kelvin above the reference. The convention that is printed beside rest-voltage
    tables, 0.024 V for 10 °F, is the hydrometer's; measured batteries hardly change (and the other way), so that both
    belong into the uncertainty.

    >>> round(as_at_reference_V(12.46, temperature_C=-17.8, reference_C=26.7, V_per_K=0.00432), 2)
    12.27
    """
    return rest_V + V_per_K * (temperature_C - reference_C)
