"""A blade fuse, and when it opens at some current."""

from __future__ import annotations

import math
from dataclasses import dataclass

from backprobe.limits.fuse_lookup import Gates, gates_of, usual_type
from backprobe.limits.fuses import RERATING
from backprobe.limits.sourced import Gate
from backprobe.physics.fuse import opening_s
from backprobe.physics.interpolation import Points, linear


@dataclass(frozen=True, slots=True)
class Opening:
    """When a fuse opens [s]: not before `least_s`, not after `most_s`; None where nothing is said."""

    least_s: float | None
    most_s: float | None

    @property
    def middle_s(self) -> float | None:
        """Half way between the two on a log sheet, where a usual fuse lies: our own model. None without both."""
        return None if self.least_s is None or self.most_s is None else math.sqrt(self.least_s * self.most_s)


@dataclass(frozen=True, slots=True)
class Fuse:
    """A blade fuse: its ISO 8820-3 type (C, E or F), its rating, and the gates that are known of it."""

    type: str
    rating_A: float
    gates: Gates

    def opening(self, current_A: float) -> Opening:
        """When the fuse opens at `current_A`, by the gates that were read; what is from memory has no say."""
        return _opening(current_A / self.gates.as_A, self.gates.verified)

    def opening_with_memory(self, current_A: float) -> Opening:
        """When the fuse opens by all gates, those from memory as well: to be shown, never to decide."""
        if self.gates.only_faster_read:
            return _opening(current_A / self.rating_A, self.gates.unverified)
        every = sorted((*self.gates.verified, *self.gates.unverified), key=lambda gate: gate.percent)
        return _opening(current_A / self.gates.as_A, every)

    @property
    def clears_from_A(self) -> float:
        """The least current at which the fuse is sure to open at all [A]."""
        return min(gate.percent for gate in self.gates.verified if gate.most_s is not None) / 100.0 * self.gates.as_A

    @property
    def gate_currents_A(self) -> tuple[float, ...]:
        """The currents of the gates that were read [A], ascending."""
        return tuple(gate.percent / 100.0 * self.gates.as_A for gate in self.gates.verified)


def fuse_of(rating_A: float, fuse_type: str | None = None) -> Fuse:
    """A blade fuse; its type is the usual one of the rating where none is given. Raises OptionError.

    >>> fuse_of(10).opening(20.0)
    Opening(least_s=0.15, most_s=5.0)
    """
    known = usual_type(rating_A) if fuse_type is None else fuse_type
    return Fuse(known, rating_A, gates_of(known, rating_A))


def hot_rating_A(fuse: Fuse, *, ambient_C: float) -> float:
    """What is left of a fuse's rating in hot surroundings [A]."""
    return fuse.rating_A * linear(ambient_C, RERATING)


def _opening(multiple: float, gates: tuple[Gate, ...] | list[Gate]) -> Opening:
    least: Points = [(gate.percent / 100.0, gate.least_s) for gate in gates if gate.least_s is not None]
    most: Points = [(gate.percent / 100.0, gate.most_s) for gate in gates if gate.most_s is not None]
    return Opening(opening_s(multiple, least), opening_s(multiple, most))
