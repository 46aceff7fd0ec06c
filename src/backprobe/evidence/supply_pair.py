"""The unit's supply as it was shown twice: while the unit does nothing, and while it transmits."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SupplyPair:
    """The supply as shown by the unit, or measured at its plug, idle and transmitting, and one count of it [V]."""

    idle_V: float
    transmit_V: float
    count_V: float
