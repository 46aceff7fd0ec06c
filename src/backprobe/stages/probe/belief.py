"""What the readings on one wire say about its role: Bayes' rule over the ways in which a wire may behave."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from backprobe.evidence.keys import Key
from backprobe.evidence.reading import Reading
from backprobe.inference.bayes import posterior
from backprobe.stages.probe.likelihood import Evidence, Group, is_loaded, position
from backprobe.stages.probe.roles import Role, priors, ways
from backprobe.stages.probe.setup import Setup

DOUBTFUL_FROM = 0.35  # a figure is doubtful from this probability of being mistyped on: a second look costs little


@dataclass(frozen=True, slots=True)
class Belief:
    """What is believed of one wire: `ways` is parallel to `roles.ways(system_V)`, `roles` sums them by role.

    `doubtful` are readings that fit nothing the other readings allow: mistyped, or read off another wire. `compared`
    are the positions at which another live wire stands at about the same level.
    """

    wire: str
    readings: tuple[Reading, ...]
    ways: tuple[float, ...]
    roles: dict[Role, float]
    half_voltage: float
    doubtful: tuple[Reading, ...]
    compared: frozenset[Key]

    def at(self, key: Key) -> tuple[Reading, ...]:
        """The readings that count at a key position, doubtful ones left out."""
        return tuple(r for r in self.readings if position(r) is key and r not in self.doubtful)

    def volts(self, key: Key) -> float | None:
        """The median shown value at a key position without load [V], or None."""
        values = [r.volts for r in self.at(key) if not r.load_A]
        return median(values) if values else None


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
    compared = frozenset(group.readings[0].reading.key for group in groups if group.compared)
    return Belief(wire, tuple(readings), after, roles, half, doubtful, compared)


def answered(belief: Belief, doubtful: Reading) -> bool:
    """Whether a doubtful reading was outvoted by later ones, taken alike at its position, that agree with the rest.

    Zero against battery level is how a poor touch reads, not how figures are mistyped: two must outvote it.
    """
    loaded = is_loaded(doubtful)
    same = [r for r in belief.readings if r.key is doubtful.key and is_loaded(r) is loaded]
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
    """Readings that are likely mistyped, judged by what the wire's other readings say.

    Ways that allow anything are left out: they would take every slip for the truth.
    """
    if sum(len(group.readings) for group in groups) < 2:
        return ()
    known = [way.role is not Role.UNKNOWN or way.half_voltage for way, _ in ways(setup.system_V)]
    found = []
    for group in groups:
        own = group.log_likelihoods()
        for i, weighed in enumerate(group.readings):
            rest = group.log_likelihoods(without=i)
            after = _weigh([t - o + r for t, o, r in zip(total, own, rest, strict=True)], setup)
            parts = [(p, *part) for p, part, k in zip(after, group.beside_the_rest(i), known, strict=True) if k]
            fits = math.fsum([p * density for p, density, _ in parts])
            slips = math.fsum([p * slip for p, _, slip in parts])
            if slips > DOUBTFUL_FROM * fits:
                found.append(weighed.reading)
    return tuple(found)
