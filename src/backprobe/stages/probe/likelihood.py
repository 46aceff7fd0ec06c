"""How likely the readings on one wire are under each way in which a wire may behave (roles.py).

Each reading is the mix of level densities (levels.py) that a way expects at its position; readings of the same
position and capture share one level. A small share of figures is mistyped: such a figure may be anything, and is most
of all what a common slip makes of a true one (slips.py), so that a single odd value makes no way certain and none
impossible.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from statistics import median

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.limits.lookup import limit
from backprobe.physics.meter import standard_uncertainty_V
from backprobe.stages.probe.levels import (
    LEAST_V,
    MISTYPED_SHARE,
    MOST_V,
    Bell,
    battery,
    beside,
    densities,
    flat,
    pulled_down,
    under_load,
)
from backprobe.stages.probe.roles import Level, Mix, Way, ways
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slips import originals
from backprobe.stages.probe.spread import spread_V

FAR_V = 0.7  # levels further apart than this do not both stand for the battery (12 V system)
TWIN_V = 0.3  # two figures this close confirm one another (12 V system)
RESTING = (Key.OFF, Key.ACCESSORY, Key.ON)  # positions at which the battery rests
LIVE_V = limit("live", system_V=12).value
LOADED_A = 0.2  # a load that pulls a signal, a pull-up or a bus down; common practice, no source
ODD = MISTYPED_SHARE * flat(0.0, LEAST_V, to_V=MOST_V)  # the density of a mistyped figure, per volt


def position(reading: Reading) -> Key | None:
    """The key position that a reading stands for; None for one taken a few minutes after key-off.

    Within a minute it is `off`, after ten minutes `after`: between them a wire that is held for minutes may be
    in either state, so such a reading proves nothing about both.
    """
    if reading.after_min is None or reading.key not in (Key.OFF, Key.AFTER):
        return reading.key
    if reading.after_min >= limit("after_minutes", system_V=12).value:
        return Key.AFTER
    return Key.OFF if reading.after_min <= 1.0 else None


def is_loaded(reading: Reading) -> bool:
    """Whether a load stood on the wire that pulls down what is no feed."""
    return (reading.load_A or 0.0) >= LOADED_A


@dataclass(frozen=True, slots=True)
class Weighed:
    """One reading: its density by level, and how much of that is its being mistyped, by level."""

    reading: Reading
    odds: dict[Level, float]
    slips: dict[Level, float]


@dataclass(frozen=True, slots=True)
class Group:
    """Readings of one position, capture and loading, which share the level, and what each way expects there."""

    readings: tuple[Weighed, ...]
    mixes: tuple[Mix, ...]
    compared: bool  # whether another live wire stands at about the same level there

    def log_likelihoods(self, without: int | None = None) -> list[float]:
        """The log likelihood of the group under each way, at will without one of its readings."""
        joint = self._joint(without)
        return [math.log(math.fsum([share * joint[level] for level, share in mix])) for mix in self.mixes]

    def beside_the_rest(self, at: int) -> list[tuple[float, float]]:
        """For each way the density of one reading given the group's others, and the part that is its being mistyped."""
        weighed, rest = self.readings[at], self._joint(at)
        found = []
        for mix in self.mixes:
            shares = [(level, share * rest[level]) for level, share in mix]
            total = math.fsum([share for _, share in shares])
            density = math.fsum([share * weighed.odds[level] for level, share in shares])
            found.append(
                (density / total, math.fsum([share * weighed.slips[level] for level, share in shares]) / total)
            )
        return found

    def _joint(self, without: int | None) -> dict[Level, float]:
        kept = [weighed.odds for i, weighed in enumerate(self.readings) if i != without]
        return {level: math.prod(odds[level] for odds in kept) for level in Level}


@dataclass(frozen=True, slots=True)
class Evidence:
    """The readings of one wire beside those of the others, ready to be weighed."""

    readings: tuple[Reading, ...]
    others: tuple[Reading, ...]
    setup: Setup

    @property
    def scale(self) -> float:
        """1 in a 12 V vehicle, 2 in a 24 V vehicle."""
        return self.setup.system_V / 12.0

    def groups(self) -> list[Group]:
        """The readings in groups that share a level."""
        found: dict[tuple[Key | None, Key, Capture, bool], list[Reading]] = {}
        for reading in self.readings:
            group = (position(reading), reading.key, reading.capture, is_loaded(reading))
            found.setdefault(group, []).append(reading)
        return [self._group(readings) for readings in found.values()]

    def _group(self, readings: Sequence[Reading]) -> Group:
        first = readings[0]
        mixes = expected(self.setup.system_V, position(first), capture=first.capture, loaded=is_loaded(first))
        level = battery(first.key, first.capture, has_crank=self.setup.has_crank)
        others = self._beside(first)
        bell = self._battery(first, beside(level, reference_V(others, usual_V=level.centre_V)))
        weighed = tuple(self._weighed(reading, bell, group=readings) for reading in readings)
        return Group(weighed, mixes, any(abs(other - first.volts / self.scale) <= FAR_V for other in others))

    def _weighed(self, reading: Reading, bell: Bell, *, group: Sequence[Reading]) -> Weighed:
        """The density of a reading for each level; a figure that a second one confirms is no slip."""
        extra = standard_uncertainty_V(spread_V(reading, self.setup.meter)) / self.scale
        found = densities(reading.volts / self.scale, bell=bell, extra_V=extra, scale=self.scale)
        near = TWIN_V * self.scale
        confirmed = any(other is not reading and abs(other.volts - reading.volts) <= near for other in group)
        slips = dict.fromkeys(Level, ODD)
        if not confirmed:
            was = [w * bell.density(volts / self.scale, extra) for volts, w in originals(reading.typed)]
            slips[Level.BATTERY] += math.fsum(was)
        odds = {level: (1.0 - MISTYPED_SHARE) * value + slips[level] for level, value in found.items()}
        return Weighed(reading, odds, slips)

    def _battery(self, reading: Reading, bell: Bell) -> Bell:
        """Where the battery stands when the reading is taken (12 V scale), given where it stands at that position."""
        if reading.key is Key.CRANK and reading.capture in (Capture.MIN, Capture.LOGGED):
            bell = pulled_down(bell, self._rest_V())
        return under_load(bell) if is_loaded(reading) else bell

    def _beside(self, reading: Reading) -> list[float]:
        """The other wires' live levels at the same position (12 V scale), highest first; none in the crank."""
        if reading.key is Key.CRANK:
            return []
        levels: dict[str, float] = {}
        for other in self.others:
            level = other.volts / self.scale
            if other.key is reading.key and not is_loaded(other) and level >= LIVE_V:
                levels[other.wire] = max(level, levels.get(other.wire, level))
        return sorted(levels.values(), reverse=True)

    def _rest_V(self) -> float | None:
        """The wire's own level at rest, unloaded (12 V scale), else the other wires'; None where there is none."""
        for readings in (self.readings, self.others):
            resting = [r for r in readings if r.key in RESTING and not is_loaded(r)]
            levels = [level for r in resting if (level := r.volts / self.scale) >= LIVE_V]
            if levels:
                return median(levels)
        return None


def reference_V(levels: Sequence[float], *, usual_V: float) -> float | None:
    """The battery's level by those of other wires, highest first, or None.

    The highest counts, as wires only lose volts on their way. One that stands far above the next, or alone and far
    below the `usual_V`, may be mistyped or no supply itself: then there is no reference.
    """
    if not levels:
        return None
    alike = levels[0] - levels[1] <= FAR_V if len(levels) > 1 else usual_V - levels[0] <= FAR_V
    return levels[0] if alike else None


@cache
def expected(system_V: int, key: Key | None, *, capture: Capture, loaded: bool) -> tuple[Mix, ...]:
    """The levels that each way expects at a position; None lies between one and ten minutes after key-off.

    Under load a pull-up, a sensor or a bus cannot hold its level and goes to zero.
    """
    mixes = [_mix(way, key, capture=capture) for way, _ in ways(system_V)]
    if not loaded:
        return tuple(mixes)
    weak = (Level.SIGNAL, Level.RESTING)
    return tuple(tuple((Level.ZERO if level in weak else level, share) for level, share in mix) for mix in mixes)


def _mix(way: Way, key: Key | None, *, capture: Capture) -> Mix:
    if key is not None:
        return way.mix(key, capture)
    both = way.mix(Key.OFF, capture) + way.mix(Key.AFTER, capture)
    return tuple((level, share / 2.0) for level, share in both)
