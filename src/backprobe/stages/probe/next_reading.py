"""Which reading to take next: the most information about finding one proven pair, for its cost.

A reading's worth is what it tells about whether a wire ends as the proven wire of a slot (promise.py), weighted by how
promising the wire is beside the best one, divided by its cost. So the search follows the best wire until it is proven
or refuted, and only then spreads out. It stops at one proven pair, and where the best wire lacks only what the meter
at hand cannot give.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.findings import Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.probe.belief import Belief, answered
from backprobe.stages.probe.promise import Candidate, Promise, if_live
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import CRANK_LIMIT, ROLE_OF, Fitness, SlotName, better_capture_to_be_had, choosable
from backprobe.stages.probe.wording import share, words

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
STANDING = (Capture.DISPLAY, Capture.MIN, Capture.MAX, Capture.LOGGED)  # what is asked for, in this order
CRANKING = (Capture.LOGGED, Capture.MIN, Capture.DISPLAY, Capture.MAX)
MOST_ASKED = 2  # readings of one wire at one position with one capture; the same is never asked for a third time
LIKELY = 0.9  # from this probability of its role on a wire may stand for all others of its slot
ENOUGH_WIRES = 3  # so many wires in the crank show what the battery does there
FAR_BELOW_V = 0.5  # no wire stands so much higher than the best of these (12 V system); our own estimate
FOCUS = 1.5  # how much the most promising wire is preferred
NO_WORTH = 1e-6
STILL_LIKELY = 0.02  # a wire that somebody means is given up for others below this probability; our own estimate
TURNED = (Key.OFF, Key.ACCESSORY, Key.ON, Key.CRANK, Key.RUNNING, Key.AFTER, Key.CHARGING)
LIKELY_SUPPLY = 0.4  # from this probability on a wire whose circuit is known is read under a lamp; our own estimate
LOADED_AT = (Key.OFF, Key.RUNNING)  # the ends of the key's travel: what lies between them is then told as well
WHY_LOADED = "shows how far the feed gives way; what only rests at battery level goes dead under a lamp"
MENTIONED = 0.05  # a role is mentioned from this probability on


@dataclass(frozen=True, slots=True)
class Next:
    """The reading to take next; `wire` None means any wire not yet in the table."""

    wire: str | None
    key: Key
    capture: Capture
    why: str
    loaded: bool = False  # under a load of about 1 to 2 A


@dataclass(frozen=True, slots=True)
class Option:
    """A reading that could be taken, with its worth for its cost by slot."""

    candidate: Candidate
    key: Key
    capture: Capture
    worth: Mapping[SlotName, float]

    @property
    def total(self) -> float:
        """The worth for all slots together."""
        return math.fsum(self.worth.values())


@dataclass(frozen=True, slots=True)
class Search:
    """Everything the choice of the next reading rests on."""

    candidates: Sequence[Candidate]
    fresh: Candidate  # a wire nothing is known of yet
    open_slots: Sequence[SlotName]
    setup: Setup
    last_key: Key | None
    unread: Sequence[tuple[str, Key]] = ()  # places whose figure could not be read
    cranks_V: Sequence[float] = ()  # the highest minimum in the crank of each wire that stayed live there

    def next(self) -> Next | None:
        """The reading with the most information for its cost, or None when no reading helps."""
        again = self._repeat() or self._unread()
        return again or self._loaded() or self._confirming() or self._most_informative() or self._loaded(late=True)

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
        if answered(belief, doubtful) or doubtful.key in self.setup.absent_keys:
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
            owed = (key for wire, key in self.unread if wire == belief.wire and key not in self.setup.absent_keys)
            for key in owed:
                if not candidate.banned and not any(reading.key is key for reading in belief.readings):
                    why = f"the figure written down at {key} could not be taken: measure it again"
                    return Next(belief.wire, key, self._capture(candidate, key), why)
        return None

    def _loaded(self, *, late: bool = False) -> Next | None:
        """A likely supply under a lamp, where it was just read without one; `late`, wherever it was.

        It tells a feed from what only rests at battery level, and its drop is demanded of a supply anyway.
        """
        for candidate in self.candidates:
            belief = candidate.belief
            if belief.wire not in self.setup.loads or candidate.banned or any(r.load_A for r in belief.readings):
                continue
            bare = [r for r in belief.readings if self._may_be_loaded(belief, r) and (late or r.key is self.last_key)]
            if bare and belief.roles[Role.CONSTANT] >= LIKELY_SUPPLY:
                return Next(belief.wire, bare[-1].key, Capture.DISPLAY, WHY_LOADED, loaded=True)
        return None

    def _confirming(self) -> Next | None:
        """The wires that somebody means for the slots, read in the order in which the key is turned.

        Only while each of them may still be the one: a wire that is refuted leaves the choice to what tells most.
        """
        promise = Promise(self.setup, max(self.cranks_V, default=None))
        named = {self.setup.meant_for(slot): slot for slot in self.open_slots}
        meant = [(c, named[c.belief.wire]) for c in self.candidates if c.belief.wire in named]
        if len(meant) < len(self.open_slots) or any(promise.of(c, slot) < STILL_LIKELY for c, slot in meant):
            return None
        owed = [(key, c) for c, slot in meant for key in c.fits[slot].missing() if key in self._keys(c)]
        if not owed:
            return None
        key, candidate = min(owed, key=lambda each: self._turns_to(each[0]))
        capture = self._capture(candidate, key)
        return Next(candidate.belief.wire, key, capture, why(candidate, key, capture=capture))

    def _turns_to(self, key: Key) -> int:
        """How far the key is turned on for a position, from where it stands; round by off where it lies behind."""
        now = TURNED.index(self.last_key) if self.last_key in TURNED else 0
        return (TURNED.index(key) - now) % len(TURNED)

    def _may_be_loaded(self, belief: Belief, bare: Reading) -> bool:
        """Whether the drop from this reading can be asked for: live, at rest or running, and not asked for in vain."""
        live = limit("live", system_V=self.setup.system_V).allows(bare.volts)
        alike = [r for r in belief.readings if (r.key, r.capture) == (bare.key, Capture.DISPLAY)]
        sound = bare not in belief.doubtful and bare.source is None
        return live and sound and bare.key in LOADED_AT and bare in alike and len(alike) < MOST_ASKED

    def _most_informative(self) -> Next | None:
        options = [option for option in self._options() if option.total > NO_WORTH]
        if not options:
            return None
        known = [option for option in options if option.candidate is not self.fresh]
        # A wire not in the table is asked for only where no slot has better use for one that is: there may be none.
        wanted = [max(options, key=lambda option: option.worth[slot]) for slot in options[0].worth]
        if any(option.candidate is not self.fresh for option in wanted):
            options = known
        best = max(options, key=lambda option: option.total)
        said = why(best.candidate, best.key, capture=best.capture)
        return Next(best.candidate.belief.wire or None, best.key, best.capture, said)

    def _options(self) -> list[Option]:
        """Every reading that may still be taken."""
        promise = Promise(self.setup, max(self.cranks_V, default=None))
        waiting = any(not c.belief.readings and not c.banned for c in self.candidates)
        everyone = [*self.candidates] if waiting else [*self.candidates, self.fresh]
        hopes = {slot: [promise.of(candidate, slot) for candidate in everyone] for slot in self.hopeful_slots}
        hopes = {slot: hope for slot, hope in hopes.items() if max(hope, default=0.0) > 0.0}
        options = []
        for i, candidate in enumerate(everyone):
            focus = {slot: (hope[i] / max(hope)) ** FOCUS for slot, hope in hopes.items()}
            if any(focus.values()):
                options += [self._option(promise, candidate, key=key, focus=focus) for key in self._keys(candidate)]
        return options

    def _option(self, promise: Promise, candidate: Candidate, *, key: Key, focus: Mapping[SlotName, float]) -> Option:
        capture = self._capture(candidate, key)
        cost = COST[key] * (SAME_POSITION if key is self.last_key else 1.0)
        worth = {
            slot: share * promise.information_bits(candidate, slot, key=key, capture=capture) / cost
            for slot, share in focus.items()
        }
        return Option(candidate, key, capture, worth)

    @property
    def hopeful_slots(self) -> list[SlotName]:
        """The open slots that a further reading can still settle."""
        unprovable = [slot for c in self.candidates for slot in self.open_slots if self._only_unprovable(c, slot)]
        return [slot for slot in self.open_slots if slot not in unprovable and not self._drowned(slot)]

    def _drowned(self, slot: SlotName) -> bool:
        """Whether so many wires fell so far below the slot's limit in the crank that the battery must be to blame."""
        if not self.setup.has_crank or len(self.cranks_V) < ENOUGH_WIRES:
            return False
        least_V = limit(CRANK_LIMIT[slot], system_V=self.setup.system_V).value
        return max(self.cranks_V) < least_V - FAR_BELOW_V * self.setup.system_V / 12.0

    def _only_unprovable(self, candidate: Candidate, slot: SlotName) -> bool:
        """Whether a wire meets all that can be measured of a slot, and lacks what this meter or hand cannot give.

        Then no other wire would come further either. What is to come without the meter is taken to turn out well.
        """
        fit, belief = candidate.fits[slot], candidate.belief
        owed = fit.missing()
        if candidate.banned or belief.doubtful or not owed or any(key in self._keys(candidate) for key in owed):
            return False
        coming = [key for key in owed if key in self.setup.to_come_for(belief.wire)]
        if if_live(belief, coming, role=ROLE_OF[slot], system_V=self.setup.system_V) < LIKELY:
            return False
        rest = Fitness(slot, tuple(check for check in fit.checks if check.key not in owed))
        thin_will_do = len(coming) == len(owed) and choosable(rest, belief, setup=self.setup)
        return thin_will_do or all(check.verdict is Verdict.HOLDS for check in rest.checks)

    def _keys(self, candidate: Candidate) -> list[Key]:
        """The positions at which this wire may still be read."""
        setup = self.setup
        keys = [Key.OFF, Key.ON, Key.RUNNING, Key.AFTER]
        keys += [Key.ACCESSORY] if setup.has_accessory else []
        keys += [Key.CRANK] if setup.has_crank else [Key.CHARGING]
        left_out = setup.absent_keys | setup.to_come_for(candidate.belief.wire)
        return [key for key in keys if key not in left_out and self._wanted(candidate, key)]

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
        """The capture to ask for, never one that the meter lacks."""
        captures = self.setup.captures
        roles = candidate.belief.roles
        wish: Sequence[Capture] = CRANKING
        if key is not Key.CRANK:
            wish = STANDING
        elif roles[Role.START] > max(roles[Role.CONSTANT], roles[Role.IGNITION]):
            wish = (Capture.MAX, *CRANKING)
        return next((capture for capture in wish if capture in captures), Capture.DISPLAY)


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
    roles = sorted(candidate.belief.roles.items(), key=lambda item: -item[1])
    named = [f"{words(role)} ({share(p)})" for role, p in roles if p >= MENTIONED and role is not Role.UNKNOWN]
    likely = " or ".join(named[:2])
    return f"{reason}; so far it looks like {likely}" if candidate.belief.readings and likely else reason
