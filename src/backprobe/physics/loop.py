"""Ohm's law around the loop: battery, fuse, joints, lead, ground."""

from __future__ import annotations

import math
from collections.abc import Iterable


def loop_ohm(parts_ohm: Iterable[float]) -> float:
    """The resistance of parts in a row [Ω].

    >>> loop_ohm([0.005, 0.0077, 0.042, 0.02])
    0.0747
    """
    return math.fsum(parts_ohm)


def short_circuit_A(source_V: float, *, loop_ohm: float) -> float:
    """The current of a dead short at the end of a loop [A]: U / R.

    >>> short_circuit_A(12.0, loop_ohm=0.3)
    40.0
    """
    return source_V / loop_ohm


def at_unit_V(source_V: float, *, current_A: float, loop_ohm: float) -> float:
    """What is left at the unit behind `loop_ohm` while `current_A` flows [V]: U - I R; not below 0.

    >>> round(at_unit_V(9.0, current_A=1.2, loop_ohm=0.25), 3)
    8.7
    """
    return max(0.0, source_V - current_A * loop_ohm)
