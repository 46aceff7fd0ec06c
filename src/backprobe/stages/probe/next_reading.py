"""Which reading to take next: the most information about finding one proven pair, for its cost.

The question for each wire and slot is whether it will end as *the proven wire*: of the right role and good in the
crank. A reading's worth is the information about that question (bits), weighted by how promising the wire is
beside the best one, divided by its cost. So the search follows the best wire until it is proven or refuted, and
only then spreads out.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.findings import Verdict
from backprobe.inference.bayes import information_bits
from backprobe.stages.probe.belief import Belief, answered, expected
from backprobe.stages.probe.roles import Level, Role, ways
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import ROLE_OF, Check, Fitness, SlotName, better_capture_to_be_had, choosable

# What a reading costs beside a look at a wire already under the probe: a crank wants a second person, a warm-up of
# the starter and a clear yard; 'after' wants ten minutes. Common practice, no source.
COST = {
    Key.OFF: 1.0,
    Key.ACCESSORY: 1.0,
    Key.ON: 1.0,
    Key.RUNNING: 1.5,
    Key.CRANK: 2.0,
    Key.AFTER: 2.0,
    Key.CHARGING: 3.0,
}
SAME_POSITION = 0.7  # the next wire at the key position that stands anyway
MOST_ASKED = 2  # readings of one wire at one position with one capture; the same is never asked for a third time
GOOD_IN_CRANK = 0.75  # a wire of the right role holds in the crank; common practice, no source
# All wires hang on one battery, so that what one of them showed in the crank speaks for the others: the chance that
# another wire holds, by how far the best so far stood above the limit (V in a 12 V system); our own estimate.
GOOD_BESIDE = ((1.5, 0.9), (0.0, 0.6), (-0.5, 0.3), (-99.0, 0.1))
LIKELY = 0.9  # from this probability of its role on a wire may stand for all others of its slot
OWED_BITS = 1.0  # what the last requirement of a sure wire is worth: the search ends there
FOCUS = 1.5  # how much the most promising wire is preferred

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
class Next:
    """The reading to take next; `wire` None means any wire not yet in the table."""

    wire: str | None
    key: Key
    capture: Capture
    why: str


@dataclass(frozen=True, slots=True)
class Candidate:
    """One wire under consideration: what is believed of it and how it stands to each slot."""

    belief: Belief
    fits: Mapping[SlotName, Fitness]
    banned: bool = False


@dataclass(frozen=True, slots=True)
class Search:
    """Everything the choice of the next reading rests on."""

    candidates: Sequence[Candidate]
    fresh: Candidate  # a wire nothing is known of yet
    open_slots: Sequence[SlotName]
    setup: Setup
    last_key: Key | None
    unread: Sequence[tuple[str, Key]] = ()  # places whose figure could not be read
    best_crank_V: float | None = None  # the highest minimum that any wire which stayed live showed in the crank

    @property
    def hopeful_slots(self) -> list[SlotName]:
        """The open slots that a further reading can still settle."""
        return [slot for slot in self.open_slots if not any(self._only_unprovable(c, slot) for c in self.candidates)]

    def _only_unprovable(self, candidate: Candidate, slot: SlotName) -> bool:
        """Whether a wire meets all that can be measured of a slot, and lacks what this meter or hand cannot give.

        Then no other wire would come further either.
        """
        fit, belief = candidate.fits[slot], candidate.belief
        owed = fit.missing()
        if candidate.banned or belief.doubtful or not owed or belief.roles[ROLE_OF[slot]] < LIKELY:
            return False
        met = all(check.verdict is Verdict.HOLDS for check in fit.checks if check.key not in owed)
        return met and not any(key in self._keys(candidate) for key in owed)

    def next(self) -> Next | None:
        """The reading with the most information for its cost, or None when no reading helps."""
        return self._repeat() or self._unread() or self._most_informative()

    def _repeat(self) -> Next | None:
        """A figure that does not fit the rest is measured again before anything is built on it."""
        for candidate in self.candidates:
            belief = candidate.belief
            for reading in () if candidate.banned else belief.doubtful:
                capture = self._again(belief, reading)
                if capture is not None:
                    return Next(belief.wire, reading.key, capture, why_again(reading, capture))
        return None

    def _again(self, belief: Belief, doubtful: Reading) -> Capture | None:
        """How to measure a doubtful figure again; None when it is outvoted or was asked for often enough.

        The last means at a standing position is a MAX hold: it keeps the best of an unsteady touch.
        """
        if answered(belief, doubtful):
            return None
        given = [reading.capture for reading in belief.readings if reading.key is doubtful.key]
        if given.count(doubtful.capture) < MOST_ASKED and doubtful.capture in self.setup.captures:
            return doubtful.capture
        standing = doubtful.key is not Key.CRANK
        return Capture.MAX if standing and Capture.MAX in self.setup.captures and Capture.MAX not in given else None

    def _unread(self) -> Next | None:
        """A figure that was written down but could not be taken is measured again."""
        for candidate in self.candidates:
            belief = candidate.belief
            for key in (key for wire, key in self.unread if wire == belief.wire):
                if not candidate.banned and not any(reading.key is key for reading in belief.readings):
                    why = f"the figure written down at {key} could not be taken: measure it again"
                    return Next(belief.wire, key, self._capture(candidate, key), why)
        return None

    def _most_informative(self) -> Next | None:
        everyone = [*self.candidates, *self._fresh()]
        hopeful = self.hopeful_slots
        best = {slot: max((self.promise(c, slot) for c in everyone), default=0.0) for slot in hopeful}
        scored = [
            (self._worth(candidate, key, best=best) / self._cost(key), -i, candidate, key)
            for i, candidate in enumerate(everyone)
            for key in self._keys(candidate)
        ]
        scored = [entry for entry in scored if entry[0] > 1e-6]
        if not scored:
            return None
        _, _, candidate, key = max(scored, key=lambda entry: entry[:2])
        capture = self._capture(candidate, key)
        return Next(candidate.belief.wire or None, key, capture, why(candidate, key, capture=capture))

    def _fresh(self) -> Iterable[Candidate]:
        """A wire not yet in the table, unless one that was declared still waits."""
        waiting = any(not c.belief.readings and not c.banned for c in self.candidates)
        return () if waiting else (self.fresh,)

    def promise(self, candidate: Candidate, slot: SlotName) -> float:
        """The probability that this wire ends as the proven wire of the slot."""
        if candidate.banned:
            return 0.0
        return candidate.belief.roles[ROLE_OF[slot]] * self._crank_promise(candidate, slot)

    def _crank_promise(self, candidate: Candidate, slot: SlotName) -> float:
        """The probability that the wire is good in the crank, given what was measured there."""
        fit = candidate.fits[slot]
        crank = fit.crank
        if crank is None:
            return 1.0
        if crank.verdict is Verdict.OPEN:
            return self._good_in_crank(crank)
        if crank.verdict is Verdict.THIN and better_capture_to_be_had(candidate.belief, self.setup):
            return 0.5
        only_crank = Fitness(slot, (crank,))
        return 1.0 if choosable(only_crank, candidate.belief, setup=self.setup) else 0.0

    def _good_in_crank(self, crank: Check) -> float:
        """The chance that a wire not yet measured in the crank holds its limit there."""
        if self.best_crank_V is None:
            return GOOD_IN_CRANK
        room_V = (self.best_crank_V - crank.limit.value) / (self.setup.system_V / 12.0)
        return next(good for from_V, good in GOOD_BESIDE if room_V >= from_V)

    def _keys(self, candidate: Candidate) -> list[Key]:
        """The positions at which this wire may still be read."""
        setup = self.setup
        keys = [Key.OFF, Key.ON, Key.RUNNING, Key.AFTER]
        keys += [Key.ACCESSORY] if setup.has_accessory else []
        keys += [Key.CRANK] if setup.has_crank else [Key.CHARGING]
        return [key for key in keys if key not in setup.absent_keys and self._wanted(candidate, key)]

    def _wanted(self, candidate: Candidate, key: Key) -> bool:
        belief = candidate.belief
        given = [reading.capture for reading in belief.readings if reading.key is key]
        if key is not Key.CRANK:
            doubted = any(reading.key is key for reading in belief.doubtful)
            return len(given) < MOST_ASKED and not belief.at(key) and not doubted
        asked = self._capture(candidate, key)
        if not given or (Capture.DISPLAY in given and given.count(Capture.DISPLAY) == len(given) < MOST_ASKED):
            return not given or asked is not Capture.DISPLAY
        thin = any(fit.crank and fit.crank.verdict is Verdict.THIN for fit in candidate.fits.values())
        return thin and better_capture_to_be_had(belief, self.setup)

    def _capture(self, candidate: Candidate, key: Key) -> Capture:
        """The capture to ask for, never more than the meter can do."""
        captures = self.setup.captures
        if key is not Key.CRANK:
            return Capture.DISPLAY
        roles = candidate.belief.roles
        if roles[Role.START] > max(roles[Role.CONSTANT], roles[Role.IGNITION]) and Capture.MAX in captures:
            return Capture.MAX
        had_min = any(reading.capture is Capture.MIN for reading in candidate.belief.at(key))
        wish = (Capture.LOGGED, Capture.MIN) if had_min else (Capture.MIN, Capture.LOGGED)
        return next((capture for capture in wish if capture in captures), Capture.DISPLAY)

    def _cost(self, key: Key) -> float:
        return COST[key] * (SAME_POSITION if key is self.last_key else 1.0)

    def _worth(self, candidate: Candidate, key: Key, *, best: Mapping[SlotName, float]) -> float:
        worth = [
            (self.promise(candidate, slot) / best[slot]) ** FOCUS * self._information(candidate, key, slot=slot)
            for slot in best
            if best[slot] > 0.0
        ]
        return math.fsum(worth)

    def _information(self, candidate: Candidate, key: Key, *, slot: SlotName) -> float:
        """Bits about whether this wire ends as the proven wire of the slot.

        A requirement of the slot that is still open is worth at least a little, however sure the role seems.
        """
        good = self._crank_promise(candidate, slot)
        yes, no = [0.0] * 4, [0.0] * 4
        chances = outcome_chances(self.setup.system_V, key, capture=self._capture(candidate, key))
        for right, p, (zero, live, other) in zip(
            _right(self.setup.system_V, slot), candidate.belief.ways, chances, strict=True
        ):
            if not right:
                seen, proven = (zero, live, other, 0.0), 0.0
            elif key is Key.CRANK:  # the crank itself tells good from bad
                seen, proven = (zero, live * good, other, live * (1.0 - good)), 1.0
            else:
                seen, proven = (zero, live, other, 0.0), good
            for j, chance in enumerate(seen):
                part = 0.0 if key is Key.CRANK and j == 3 else proven
                yes[j] += p * chance * part
                no[j] += p * chance * (1.0 - part)
        missing = candidate.fits[slot].missing()
        step = OWED_BITS * self.promise(candidate, slot) / len(missing) if key in missing else 0.0
        return _bits(yes, no) + step


@cache
def outcome_chances(system_V: int, key: Key, *, capture: Capture) -> tuple[tuple[float, float, float], ...]:
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


def _bits(yes: Sequence[float], no: Sequence[float]) -> float:
    p, q = math.fsum(yes), math.fsum(no)
    if p <= 0.0 or q <= 0.0:
        return 0.0
    return information_bits([p, q], [[y / p for y in yes], [n / q for n in no]])


def why_again(doubtful: Reading, capture: Capture) -> str:
    """Why a figure is asked for again, in one sentence."""
    odd = f"{doubtful.typed} V at {doubtful.key} does not fit the rest of this wire"
    if capture is Capture.MAX and doubtful.capture is not Capture.MAX:
        return f"{odd}: clean the spot and press the probe on while MAX holds; a poor touch reads low"
    return f"{odd}: measure it again"


def why(candidate: Candidate, key: Key, *, capture: Capture) -> str:
    """Why this reading, in one sentence."""
    reason = {
        Key.OFF: "tells wires that are live with the key out from switched ones",
        Key.ACCESSORY: "a true ignition is dead in accessory",
        Key.ON: "shows whether the key switches it",
        Key.CRANK: "shows whether it stays live while the engine cranks, and how low it goes",
        Key.RUNNING: "shows whether it follows the charging battery",
        Key.AFTER: "tells a constant from a wire that is held live for some minutes: key off 10 minutes, doors shut",
        Key.CHARGING: "an ignition is dead on the charger",
    }[key]
    if key is Key.CRANK and capture is Capture.MAX:
        reason = "shows whether it is live only in the crank: a start wire, never to be tapped"
    roles = sorted(candidate.belief.roles.items(), key=lambda item: -item[1])[:2]
    if not candidate.belief.readings:
        return reason
    likely = " or ".join(f"{str(role).replace('_', ' ')} ({p:.0%})" for role, p in roles if p >= 0.05)
    return f"looks like {likely}: {reason}"
