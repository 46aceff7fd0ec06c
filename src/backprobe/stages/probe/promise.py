"""How promising a wire is for a slot, and how much a reading would tell about that.

The question for each wire and slot is whether it will end as *the proven wire*: of the right role and good in the
crank. `Promise.of` is the probability of that; `Promise.information_bits` is what a reading tells about it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from backprobe.evidence.keys import Capture, Key
from backprobe.findings import Verdict
from backprobe.inference.bayes import information_bits
from backprobe.stages.probe.belief import Belief
from backprobe.stages.probe.likelihood import expected
from backprobe.stages.probe.roles import Level, Role, ways
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import ROLE_OF, Check, Fitness, SlotName, better_capture_to_be_had, choosable

GOOD_IN_CRANK = 0.75  # a wire of the right role holds in the crank; common practice, no source
# All wires hang on one battery, so that what one of them showed in the crank speaks for the others: the chance that
# another wire holds, by how far the best so far stood above the limit (V in a 12 V system); our own estimate.
GOOD_BESIDE = ((1.5, 0.9), (0.0, 0.6), (-0.5, 0.3), (-math.inf, 0.1))
GOOD_IF_THIN = 0.5  # a thin wire turns out to hold by a better capture
OWED_BITS = 1.0  # what the last requirement of a sure wire is worth: the search ends there

# What a meter finds, as outcomes: zero, battery level, anything else.
_OUTCOME = {
    Level.ZERO: (1.0, 0.0, 0.0),
    Level.BATTERY: (0.0, 1.0, 0.0),
    Level.SIGNAL: (0.0, 0.0, 1.0),
    Level.PULSED: (0.0, 0.1, 0.9),
    Level.RESTING: (0.0, 0.4, 0.6),
    Level.HALF: (0.0, 0.0, 1.0),
    Level.ANYTHING: (0.06, 0.1, 0.84),
}


@dataclass(frozen=True, slots=True)
class Candidate:
    """One wire under consideration: what is believed of it and how it stands to each slot."""

    belief: Belief
    fits: Mapping[SlotName, Fitness]
    banned: bool = False


@dataclass(frozen=True, slots=True)
class Promise:
    """What the promise of a wire rests on: the setup, and the best that any wire showed in the crank [V]."""

    setup: Setup
    best_crank_V: float | None = None

    def of(self, candidate: Candidate, slot: SlotName) -> float:
        """The probability that this wire ends as the proven wire of the slot."""
        if candidate.banned:
            return 0.0
        return candidate.belief.roles[ROLE_OF[slot]] * self.in_crank(candidate, slot)

    def in_crank(self, candidate: Candidate, slot: SlotName) -> float:
        """The probability that the wire is good in the crank, given what was measured there."""
        crank = candidate.fits[slot].crank
        if crank is None:
            return 1.0
        if crank.verdict is Verdict.OPEN:
            return self._beside_others(crank)
        if crank.verdict is Verdict.THIN and better_capture_to_be_had(candidate.belief, self.setup):
            return GOOD_IF_THIN
        only_crank = Fitness(slot, (crank,))
        return 1.0 if choosable(only_crank, candidate.belief, setup=self.setup) else 0.0

    def _beside_others(self, crank: Check) -> float:
        if self.best_crank_V is None:
            return GOOD_IN_CRANK
        room_V = (self.best_crank_V - crank.limit.value) / (self.setup.system_V / 12.0)
        return next(good for from_V, good in GOOD_BESIDE if room_V >= from_V)

    def information_bits(self, candidate: Candidate, slot: SlotName, *, key: Key, capture: Capture) -> float:
        """What a reading tells about whether this wire ends as the proven wire of the slot [bits].

        A requirement of the slot that is still open is worth at least a little, however sure the role seems.
        """
        good = self.in_crank(candidate, slot)
        chances = outcome_chances(self.setup.system_V, key, capture=capture)
        seen = zip(_right(self.setup.system_V, slot), candidate.belief.ways, chances, strict=True)
        bits = _crank_bits(seen, good) if key is Key.CRANK else _standing_bits(seen, good)
        missing = candidate.fits[slot].missing()
        return bits + (OWED_BITS * self.of(candidate, slot) / len(missing) if key in missing else 0.0)


def if_live(belief: Belief, keys: Sequence[Key], *, role: Role, system_V: int) -> float:
    """The probability of the role, were the wire to show battery level at `keys`."""
    shown = [outcome_chances(system_V, key, capture=Capture.DISPLAY) for key in keys]
    weights = [p * math.prod(chances[i][1] for chances in shown) for i, p in enumerate(belief.ways)]
    total = math.fsum(weights)
    own = math.fsum(w for w, (way, _) in zip(weights, ways(system_V), strict=True) if way.role is role)
    return own / total if total > 0.0 else 0.0


Chances = tuple[float, float, float]


def _standing_bits(seen: zip[tuple[bool, float, Chances]], good: float) -> float:
    """What the outcomes at a standing position tell: a wire of the right role is proven with probability `good`."""
    yes, no = [0.0] * 3, [0.0] * 3
    for right, p, chances in seen:
        proven = good if right else 0.0
        for j, chance in enumerate(chances):
            yes[j] += p * chance * proven
            no[j] += p * chance * (1.0 - proven)
    return _bits(yes, no)


def _crank_bits(seen: zip[tuple[bool, float, Chances]], good: float) -> float:
    """What the crank tells: beside the role it shows itself whether a live wire is good."""
    yes, no = [0.0] * 4, [0.0] * 4
    for right, p, (zero, live, other) in seen:
        if right:
            yes[0] += p * zero
            yes[1] += p * live * good
            yes[2] += p * other
            no[3] += p * live * (1.0 - good)
        else:
            for j, chance in enumerate((zero, live, other)):
                no[j] += p * chance
    return _bits(yes, no)


def _bits(yes: Sequence[float], no: Sequence[float]) -> float:
    p, q = math.fsum(yes), math.fsum(no)
    if p <= 0.0 or q <= 0.0:
        return 0.0
    return information_bits([p, q], [[y / p for y in yes], [n / q for n in no]])


@cache
def outcome_chances(system_V: int, key: Key, *, capture: Capture) -> tuple[Chances, ...]:
    """For each way, the chance of finding zero, battery level, or anything else."""
    mixes = expected(system_V, key, capture=capture, loaded=False)
    return tuple(
        (
            math.fsum([share * _OUTCOME[level][0] for level, share in mix]),
            math.fsum([share * _OUTCOME[level][1] for level, share in mix]),
            math.fsum([share * _OUTCOME[level][2] for level, share in mix]),
        )
        for mix in mixes
    )


@cache
def _right(system_V: int, slot: SlotName) -> tuple[bool, ...]:
    """For each way, whether it is of the slot's role."""
    return tuple(way.role is ROLE_OF[slot] for way, _ in ways(system_V))
