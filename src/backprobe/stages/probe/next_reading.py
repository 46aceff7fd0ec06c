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
from backprobe.stages.probe.belief import Belief, expected
from backprobe.stages.probe.roles import Level, Role, ways
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import PROOF, ROLE_OF, Fitness, SlotName, better_capture_to_be_had, choosable

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
MOST_TRIES = 3  # readings of one wire at one position
GOOD_IN_CRANK = 0.75  # a wire of the right role holds in the crank; common practice, no source
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

    def next(self) -> Next | None:
        """The reading with the most information for its cost, or None when no reading helps."""
        return self._repeat() or self._unread() or self._most_informative()

    def _repeat(self) -> Next | None:
        """A figure that does not fit the rest is measured again before anything is built on it."""
        for candidate in self.candidates:
            belief = candidate.belief
            for reading in belief.doubtful:
                if not _settled(belief, reading) and not candidate.banned:
                    why = f"{reading.typed} V at {reading.key} does not fit the rest of this wire: measure it again"
                    return Next(belief.wire, reading.key, reading.capture, why)
        return None

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
        best = {slot: max((self.promise(c, slot) for c in everyone), default=0.0) for slot in self.open_slots}
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
            return GOOD_IN_CRANK
        if crank.verdict is Verdict.THIN and better_capture_to_be_had(candidate.belief, self.setup):
            return 0.5
        only_crank = Fitness(slot, (crank,))
        return 1.0 if choosable(only_crank, candidate.belief, setup=self.setup) else 0.0

    def _keys(self, candidate: Candidate) -> list[Key]:
        """The positions at which this wire may still be read."""
        setup = self.setup
        keys = [Key.OFF, Key.ON, Key.RUNNING, Key.AFTER]
        keys += [Key.ACCESSORY] if setup.has_accessory else []
        keys += [Key.CRANK] if setup.has_crank else [Key.CHARGING]
        return [key for key in keys if key not in setup.absent_keys and self._wanted(candidate, key)]

    def _wanted(self, candidate: Candidate, key: Key) -> bool:
        belief = candidate.belief
        tries = [reading for reading in belief.readings if reading.key is key]
        if len(tries) >= MOST_TRIES:
            return False
        if key is not Key.CRANK:
            return not belief.at(key) and not any(reading in belief.doubtful for reading in tries)
        if not tries:
            return True
        proven = any(reading.capture in PROOF for reading in belief.at(key))
        dead = any(fit.crank and fit.crank.verdict is Verdict.FAILS for fit in candidate.fits.values())
        if not proven and not dead:
            return Capture.MIN in self.setup.captures or Capture.LOGGED in self.setup.captures
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
            for slot in self.open_slots
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


def _settled(belief: Belief, doubtful: Reading) -> bool:
    """Whether a doubtful reading was outvoted by a later one, or repeated often enough."""
    same = [r for r in belief.readings if r.key is doubtful.key and r.capture is doubtful.capture]
    later = same[same.index(doubtful) + 1 :] if doubtful in same else []
    return any(reading not in belief.doubtful for reading in later) or len(same) >= MOST_TRIES


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
