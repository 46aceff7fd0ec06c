"""What the probe stage finds for one job: the unit's two slots, each against its limits.

For a job it is not enough that the volts are right. A slot stays `open` until its circuit was named, and the supply
until one loaded reading was given, because a corroded or thin feed shows battery level to a meter and fails the unit.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import WireFacts
from backprobe.findings import Finding, Side, Stage, Verdict
from backprobe.stages.probe.next_reading import Next
from backprobe.stages.probe.permission import bans, identified
from backprobe.stages.probe.reasons import HALF, UNFIT
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import PROOF, ROLE_OF, Check, SlotName, choosable, worst_of
from backprobe.stages.probe.supply_findings import RECORD_IT, loaded_drop, unit_range
from backprobe.stages.probe.wires import ProbeResult, Wire
from backprobe.stages.probe.wording import share as share
from backprobe.stages.probe.wording import words as words

STATE = {Side.AT_LEAST: "live", Side.AT_MOST: "dead"}
ALONE = (Key.AFTER, Key.CRANK)  # positions whose figure stands by itself; the others are shown together
POSITION = {
    Key.OFF: "at key off",
    Key.ACCESSORY: "in accessory",
    Key.ON: "at key on",
    Key.CRANK: "while the engine cranks",
    Key.RUNNING: "while running",
    Key.AFTER: "10 minutes after key-off",
    Key.ISOLATED: "with the battery switch open",
    Key.CHARGING: "on the charger",
}
HOLD = {
    Capture.DISPLAY: "the display",
    Capture.MIN: "a MIN hold",
    Capture.MAX: "a MAX hold",
    Capture.LOGGED: "a fast recorder",
}
CARE = {
    Key.CRANK: "out of gear, parking brake on, nobody near the engine",
    Key.CHARGING: "low-voltage wires only; orange cables are for licensed people",
}
UNDER_LOAD = ", under a load of about 1 to 2 A (a test lamp)"
REPORTS_CLOSE = "the unit's reports close this: key on, off, and 10 minutes of key off after that"
LIKELY = 0.5  # from this probability on it is said what a wire looks like
WORTH_NAMING = 0.3  # how likely a wire must be fit for a slot to be named as the one at stake


@dataclass(frozen=True, slots=True)
class Demand:
    """What the unit at hand demands of its supply [V]; None where its sheet does not say."""

    least_V: float | None = None
    most_V: float | None = None


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot of the unit in one job: the wire at stake, None where none was found; `facts` were declared of it.

    `then` is the next reading as a sentence; `rival` another wire that is fit for the slot by its volts.
    """

    name: SlotName
    wire: Wire | None
    facts: WireFacts | None
    setup: Setup
    then: str | None
    rival: str | None = None

    def findings(self) -> Iterator[Finding]:
        """What was found on the slot's wire, its role first."""
        if self.wire is None:
            because = "no wire was found for it yet"
            yield self._said("wire", f"{self._title} wire", verdict=Verdict.OPEN, because=because, then=self.then)
            return
        yield self._role(self.wire)
        fit = self.wire.role in (Role.UNKNOWN, ROLE_OF[self.name])
        for group in groups(self.wire.fits[self.name].checks):
            if fit or worst_of(group).verdict is Verdict.FAILS:
                yield self._check(self.wire, group)
        yield self._circuit(self.wire)

    @property
    def _title(self) -> str:
        return str(self.name).capitalize()

    def _said(self, name: str, what: str, *, verdict: Verdict, because: str, then: str | None) -> Finding:
        return Finding(
            id=f"{self.name}_{name}", stage=Stage.PROBE, what=what, verdict=verdict, because=because, next=then
        )

    def _role(self, wire: Wire) -> Finding:
        """Is it the kind of wire that the slot needs?"""
        what = f"{self._title} wire: {wire.name}"
        if wire.belief.half_voltage > 0.5:
            return self._said("wire", what, verdict=Verdict.FAILS, because=HALF, then=self._another(wire))
        if wire.role is Role.UNKNOWN:
            return self._said("wire", what, verdict=Verdict.OPEN, because=looks_like(wire), then=self.then)
        reads = f"reads as {words(wire.role)} ({share(wire.probability)} by its volts)"
        if wire.role is not ROLE_OF[self.name]:
            why = UNFIT.get(wire.role, f"that is no {self.name}")
            then = self._another(wire)
            return self._said("wire", what, verdict=Verdict.FAILS, because=f"{reads}: {why}", then=then)
        doubt = self._doubt(wire)
        if doubt is not None:
            return self._said("wire", what, verdict=Verdict.OPEN, because=f"{reads}: {doubt[0]}", then=doubt[1])
        return self._said("wire", what, verdict=Verdict.HOLDS, because=reads, then=None)

    def _doubt(self, wire: Wire) -> tuple[str, str | None] | None:
        """Why a wire that meets every limit of the slot is still not to be tapped, and what to do; None where it may.

        Without this a wire could pass all its checks and yet not be chosen, and nothing would say why.
        """
        if wire.bans or wire.tap == self.name or not choosable(wire.fits[self.name], wire.belief, setup=self.setup):
            return None
        for odd in wire.belief.doubtful[:1]:
            again = measure(wire.name, odd.key, capture=odd.capture, setup=self.setup)
            return f"{odd.typed} V {where(odd.key, self.setup)} contradicts the others", f"{again} once more"
        return "not sure enough to tap it", self.then

    def _another(self, wire: Wire) -> str:
        """What to do about a wire that is not to be used."""
        if self.rival is not None:
            found = f'{self.rival} is fit by its volts: name its circuit, and give it lead = "{self.name}"'
            return f"do not use {wire.name}; {found} in the job sheet"
        return f"do not use {wire.name}; {self.then or 'find another wire'}"

    def _check(self, wire: Wire, group: tuple[Check, ...]) -> Finding:
        """One requirement of the slot, at one key position or several: the figure with the least room counts."""
        check = worst_of(group)
        name = str(check.key) if check.key in ALONE else STATE[check.limit.side]
        return Finding(
            id=f"{self.name}_{name}",
            stage=Stage.PROBE,
            what=f"{wire.name}: {described(group, self.setup)}",
            verdict=check.verdict,
            because=because(check, self.setup),
            next=self._what_next(wire, check),
            value=check.value_V,
            low=check.low_V,
            high=check.high_V,
            unit="V",
            limit=check.limit,
        )

    def _what_next(self, wire: Wire, check: Check) -> str | None:
        if check.verdict is Verdict.HOLDS:
            return None
        if check.verdict is Verdict.OPEN:
            return self._ask(wire, check.key)
        if check.verdict is Verdict.FAILS:
            told = wire.role not in (Role.UNKNOWN, ROLE_OF[self.name])  # with the role, which stands before this
            return f"do not use {wire.name}" if told else self._another(wire)
        if check.key is Key.CRANK:
            return RECORD_IT.format(wire=wire.name)
        return f"measure {wire.name} {where(check.key, self.setup)} again, with a more exact meter if one can be had"

    def _ask(self, wire: Wire, key: Key) -> str:
        """The reading that is missing, asked of what the meter at hand can do."""
        if key in self.setup.to_come_for(wire.name):
            return REPORTS_CLOSE
        if key is not Key.CRANK:
            doors = ", doors shut" if key is Key.AFTER else ""
            return measure(wire.name, key, capture=Capture.DISPLAY, setup=self.setup) + doors
        capture = next((hold for hold in PROOF if hold in self.setup.captures), None)
        if capture is None:
            return f"bring a meter with a MIN hold, or a fast recorder: a display cannot prove {wire.name} in the crank"
        return measure(wire.name, key, capture=capture, setup=self.setup)

    def _circuit(self, wire: Wire) -> Finding:
        """What the wire feeds: a label, a diagram or a connector can say, never the meter."""
        what = f"{wire.name}: what it feeds"
        if forbidden := bans(self.facts):
            why = f"never tapped: {'; '.join(forbidden)}"
            return self._said("circuit", what, verdict=Verdict.FAILS, because=why, then=self._another(wire))
        if self.facts is None or not identified(self.facts):
            why = "circuit not identified: volts cannot show what a wire feeds"
            then = f"name the circuit of {wire.name}: fuse label, the maker's diagram or the body-builder connector"
            return self._said("circuit", what, verdict=Verdict.OPEN, because=why, then=then)
        why = f"identified as {'; '.join(self.facts.circuits)}"
        return self._said("circuit", what, verdict=Verdict.HOLDS, because=why, then=None)


def probe_findings(
    result: ProbeResult, facts: dict[str, WireFacts], *, meant: dict[SlotName, str], demand: Demand
) -> tuple[Finding, ...]:
    """Everything found on the unit's supply and ignition; `meant` names the wires that somebody chose for them."""
    found: list[Finding] = []
    then = next_sentence(result.next, result.setup)
    for name in SlotName:
        wire = at_stake(result, name, meant=meant.get(name))
        known = facts.get(wire.name) if wire else None
        rival = chosen_by_volts(result, name)
        if wire is not None and rival == wire.name:
            rival = None
        found += Slot(name, wire, known, result.setup, then, rival).findings()
        if name is SlotName.SUPPLY and wire is not None and wire.role in (Role.UNKNOWN, Role.CONSTANT):
            if not bans(known):
                found.append(loaded_drop(wire, result.setup, named=identified(known)))
            found += unit_range(wire, result.setup, least_V=demand.least_V, most_V=demand.most_V)
    return tuple(found)


def at_stake(result: ProbeResult, slot: SlotName, *, meant: str | None) -> Wire | None:
    """The wire that a slot's findings are about: the one somebody means, else the chosen one, else the likeliest."""
    named = result.wire(meant) or result.wire(chosen_by_volts(result, slot))
    if named is not None:
        return named
    likely = [w for w in result.wires if w.belief.roles[ROLE_OF[slot]] >= WORTH_NAMING and w.belief.readings]
    return max(likely, key=lambda wire: wire.belief.roles[ROLE_OF[slot]], default=None)


def chosen_by_volts(result: ProbeResult, slot: SlotName) -> str | None:
    """The wire that the readings alone would have for a slot."""
    return result.supply if slot is SlotName.SUPPLY else result.ignition


def groups(checks: Sequence[Check]) -> list[tuple[Check, ...]]:
    """The checks as they are shown: dead positions together, live ones together, `after` and the crank alone."""
    standing = [check for check in checks if check.key not in ALONE]
    together = [tuple(c for c in standing if c.limit.side is side) for side in (Side.AT_MOST, Side.AT_LEAST)]
    return [group for group in together if group] + [(check,) for check in checks if check.key in ALONE]


def where(key: Key, setup: Setup) -> str:
    """A key position in words: 'at key on', 'in accessory'."""
    return "in READY" if key is Key.RUNNING and not setup.has_crank else POSITION[key]


def described(group: Sequence[Check], setup: Setup) -> str:
    """What a group of checks is about: 'live in accessory, at key on, while running'."""
    places = ", ".join(where(check.key, setup) for check in group)
    return places if group[0].key is Key.CRANK else f"{STATE[group[0].limit.side]} {places}"


def because(check: Check, setup: Setup) -> str:
    """What stands behind a figure, in a few words."""
    place, wanted = where(check.key, setup), STATE[check.limit.side]
    if check.value_V is None:
        return f"not measured yet {place}"
    if check.key is Key.CRANK:
        return _because_of_crank(check, setup)
    if check.verdict is Verdict.FAILS:
        return f"{place} it must be {wanted}"
    if check.source is not None:
        lasted = "" if check.minutes is None else f", over {check.minutes:.0f} minutes of key off"
        return f"lowest {place} by {check.source}{lasted}"
    if check.key is Key.AFTER and check.limit.side is Side.AT_LEAST:
        return f"proven for {check.minutes or 10.0:g} minutes, not for a night"
    return f"{'lowest' if wanted == 'live' else 'highest'} {place}"


def _because_of_crank(check: Check, setup: Setup) -> str:
    if check.verdict is Verdict.FAILS:
        return f"too low, by {HOLD[check.capture or Capture.DISPLAY]}"
    if check.capture not in PROOF:
        return "by the display: it can have missed the dip"
    if check.capture is Capture.LOGGED:
        return "lowest value of a fast recording"
    hold = f"MIN hold of {setup.meter.min_capture_ms:g} ms"
    return f"{hold}: the starter's inrush may hide a deeper dip (range by our own model)"


def looks_like(wire: Wire) -> str:
    """What a wire of unknown role looks like so far."""
    if not wire.belief.readings:
        return "not measured yet"
    role, probability = max(wire.belief.roles.items(), key=lambda item: item[1])
    if probability < LIKELY or role is Role.UNKNOWN:
        return "what kind of wire it is, is not certain yet"
    return f"looks like {words(role)} ({share(probability)} by its volts), not proven yet"


def measure(wire: str, key: Key, *, capture: Capture, setup: Setup) -> str:
    """The sentence that asks for a reading, with the care that its key position wants."""
    hold = "" if capture is Capture.DISPLAY else f", with {HOLD[capture]}"
    care = f" ({CARE[key]})" if key in CARE else ""
    return f"measure {wire} {where(key, setup)}{hold}{care}"


def next_sentence(upcoming: Next | None, setup: Setup) -> str | None:
    """The next reading as one sentence; None where there is none."""
    if upcoming is None:
        return None
    asked = measure(upcoming.wire or "a wire not yet measured", upcoming.key, capture=upcoming.capture, setup=setup)
    asked += UNDER_LOAD if upcoming.loaded else ""
    return f"{asked}: {upcoming.why}"
