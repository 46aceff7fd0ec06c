"""What the readings on one wire say about its role.

For every way a wire may behave (roles.py) the likelihood of each reading is the mix of level densities
(levels.py); readings of the same key position and capture share one level. A small share of readings is mistyped:
such a figure may be anything, so that a single odd value makes no role certain and none impossible.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from statistics import median

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.inference.bayes import posterior
from backprobe.limits.lookup import limit
from backprobe.physics.meter import accuracy_V, standard_uncertainty_V
from backprobe.stages.probe.levels import LEAST_V, MISTYPED_SHARE, MOST_V, battery, beside, densities, flat, under_load
from backprobe.stages.probe.roles import Level, Mix, Role, Way, priors, ways
from backprobe.stages.probe.setup import Setup

FAR_V = 0.7  # levels further apart than this do not both stand for the battery (12 V system)
LIVE_V = limit("live", system_V=12).value
LOADED_A = 0.2  # a load that pulls a signal, a pull-up or a bus down; common practice, no source
ODD = MISTYPED_SHARE * flat(0.0, LEAST_V, to_V=MOST_V)  # the density of a mistyped figure, per volt
DOUBTFUL_BELOW = 2.0 * ODD


@dataclass(frozen=True, slots=True)
class Belief:
    """What is believed of one wire: `ways` is parallel to `roles.ways(system_V)`, `roles` sums them by role.

    `doubtful` are readings that fit nothing the other readings allow: mistyped, or read off another wire.
    """

    wire: str
    readings: tuple[Reading, ...]
    ways: tuple[float, ...]
    roles: dict[Role, float]
    half_voltage: float
    doubtful: tuple[Reading, ...]

    def at(self, key: Key) -> tuple[Reading, ...]:
        """The readings that count at a key position, doubtful ones left out."""
        return tuple(r for r in self.readings if position(r) is key and r not in self.doubtful)

    def volts(self, key: Key) -> float | None:
        """The median shown value at a key position without load [V], or None."""
        values = [r.volts for r in self.at(key) if not r.load_A]
        return median(values) if values else None


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


def believe(wire: str, readings: Sequence[Reading], *, others: Sequence[Reading], setup: Setup) -> Belief:
    """The belief about `wire` from its `readings`; `others` are those of the other wires (the battery's level)."""
    groups = Evidence(tuple(readings), tuple(others), setup).groups()
    logs = [group.log_likelihoods() for group in groups]
    total = [math.fsum(column) for column in zip(*logs, strict=True)] or [0.0] * len(ways(setup.system_V))
    after = _weigh(total, setup)
    doubtful = _doubtful(groups, total, setup=setup)
    table = ways(setup.system_V)
    roles = {role: math.fsum(p for (way, _), p in zip(table, after, strict=True) if way.role is role) for role in Role}
    half = math.fsum(p for (way, _), p in zip(table, after, strict=True) if way.half_voltage)
    return Belief(wire, tuple(readings), after, roles, half, doubtful)


@dataclass(frozen=True, slots=True)
class Group:
    """Readings of one position, capture and loading: they share the level; `odds` are its densities by level."""

    readings: tuple[Reading, ...]
    odds: tuple[dict[Level, float], ...]
    mixes: tuple[Mix, ...]  # what each way expects here

    def log_likelihoods(self, without: int | None = None) -> list[float]:
        """The log likelihood of the group under each way, at will without one of its readings."""
        kept = [odds for i, odds in enumerate(self.odds) if i != without]
        if not kept:
            return [0.0] * len(self.mixes)
        joint = {level: math.prod(odds[level] for odds in kept) for level in kept[0]}
        return [math.log(math.fsum([share * joint[level] for level, share in mix])) for mix in self.mixes]


@dataclass(frozen=True, slots=True)
class Evidence:
    """The readings of one wire beside those of the others, ready to be weighed."""

    readings: tuple[Reading, ...]
    others: tuple[Reading, ...]
    setup: Setup

    def groups(self) -> list[Group]:
        """The readings in groups that share a level."""
        found: dict[tuple[Key | None, Key, Capture, bool], list[Reading]] = {}
        for reading in self.readings:
            group = (position(reading), reading.key, reading.capture, _is_loaded(reading))
            found.setdefault(group, []).append(reading)
        return [self._group(readings) for readings in found.values()]

    def _group(self, readings: list[Reading]) -> Group:
        first = readings[0]
        mixes = expected(self.setup.system_V, position(first), capture=first.capture, loaded=_is_loaded(first))
        return Group(tuple(readings), tuple(self._odds(reading) for reading in readings), mixes)

    def _odds(self, reading: Reading) -> dict[Level, float]:
        """The density of a reading for each level; any figure may be mistyped."""
        scale = self.setup.system_V / 12.0
        meter = self.setup.meter
        accuracy = accuracy_V(reading.volts, percent=meter.percent, counts=meter.counts, count_V=reading.count_V)
        extra = standard_uncertainty_V(accuracy) / scale
        level = battery(reading.key, reading.capture, has_crank=self.setup.has_crank)
        bell = beside(level, self._reference_V(reading, usual_V=level.centre_V))
        bell = under_load(bell) if _is_loaded(reading) else bell
        found = densities(reading.volts / scale, bell=bell, extra_V=extra, scale=scale)
        return {level: (1.0 - MISTYPED_SHARE) * value + ODD for level, value in found.items()}

    def _reference_V(self, reading: Reading, *, usual_V: float) -> float | None:
        """The battery's level (12 V scale) by the other wires' live readings at the same position, not in the crank.

        The highest of them counts, as wires only lose volts on their way. One that stands far above the next, or
        alone and far below the `usual_V`, may be mistyped or no supply itself: then there is no reference.
        """
        if reading.key is Key.CRANK:
            return None
        levels: dict[str, float] = {}
        for other in self.others:
            level = other.volts * 12.0 / self.setup.system_V
            if other.key is reading.key and not _is_loaded(other) and level >= LIVE_V:
                levels[other.wire] = max(level, levels.get(other.wire, level))
        first, second = (*sorted(levels.values(), reverse=True), None, None)[:2]
        if first is None:
            return None
        alike = first - second <= FAR_V if second is not None else usual_V - first <= FAR_V
        return first if alike else None


def answered(belief: Belief, doubtful: Reading) -> bool:
    """Whether a doubtful reading was outvoted by later ones at its position that agree with the rest.

    Zero against battery level is how a poor touch reads, not how figures are mistyped: two must outvote it.
    """
    same = [r for r in belief.readings if r.key is doubtful.key]
    if doubtful.key is Key.CRANK:
        same = [r for r in same if r.capture is doubtful.capture]
    later = [r for r in same[same.index(doubtful) + 1 :] if r not in belief.doubtful]
    return len(later) >= (2 if abs(doubtful.volts) < 1.0 else 1)


def _weigh(logs: Sequence[float], setup: Setup) -> tuple[float, ...]:
    """The probability of each way from its log likelihood."""
    shares = priors(setup.system_V, has_crank=setup.has_crank, has_accessory=setup.has_accessory)
    prior = dict(enumerate(shares))
    after = posterior(prior, dict(enumerate(logs)))
    return tuple(after[i] for i in prior)


def _doubtful(groups: Sequence[Group], total: Sequence[float], *, setup: Setup) -> tuple[Reading, ...]:
    """Readings more likely mistyped than true, judged by what the wire's other readings say."""
    known = [way.role is not Role.UNKNOWN or way.half_voltage for way, _ in ways(setup.system_V)]
    found = []
    for group in groups:
        own = group.log_likelihoods()
        for i, reading in enumerate(group.readings):
            rest = group.log_likelihoods(without=i)
            after = _weigh([t - o + r for t, o, r in zip(total, own, rest, strict=True)], setup)
            alone = [math.fsum([share * group.odds[i][level] for level, share in mix]) for mix in group.mixes]
            fits = math.fsum([p * a for p, a, k in zip(after, alone, known, strict=True) if k])
            if fits < DOUBTFUL_BELOW:
                found.append(reading)
    return tuple(found) if sum(len(group.readings) for group in groups) > 1 else ()


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


def _is_loaded(reading: Reading) -> bool:
    return (reading.load_A or 0.0) >= LOADED_A
