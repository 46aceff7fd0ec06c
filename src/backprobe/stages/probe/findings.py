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
from backprobe.stages.probe.slots import PROOF, ROLE_OF, Check, SlotName, worst_of
from backprobe.stages.probe.supply_findings import loaded_drop, unit_range
from backprobe.stages.probe.wires import ProbeResult, Wire

STATE = {Side.AT_LEAST: "live", Side.AT_MOST: "dead"}
ALONE = (Key.AFTER, Key.CRANK)  # positions whose figure stands by itself; the others are shown together
POSITION = {
    Key.OFF: "key off",
    Key.ACCESSORY: "in accessory",
    Key.ON: "key on",
    Key.CRANK: "while the engine cranks",
    Key.RUNNING: "engine running",
    Key.AFTER: "10 minutes after key-off",
    Key.ISOLATED: "battery switch open",
    Key.CHARGING: "on the charger",
}
WORTH_NAMING = 0.3  # how likely a wire must be fit for a slot to be named as the one at stake


@dataclass(frozen=True, slots=True)
class Demand:
    """What the unit at hand demands of its supply [V]; None where its sheet does not say."""

    least_V: float | None = None
    most_V: float | None = None


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot of the unit in one job: the wire at stake, None where none was found; `facts` were declared of it."""

    name: SlotName
    wire: Wire | None
    facts: WireFacts | None
    setup: Setup
    then: str | None  # the next reading, as a sentence

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
            return self._said("wire", what, verdict=Verdict.FAILS, because=HALF, then="find another wire")
        if wire.role is Role.UNKNOWN:
            because = "what kind of wire it is, is not certain yet"
            return self._said("wire", what, verdict=Verdict.OPEN, because=because, then=self.then)
        reads = f"reads as {words(wire.role)} ({wire.probability:.0%} by its volts)"
        if wire.role is ROLE_OF[self.name]:
            return self._said("wire", what, verdict=Verdict.HOLDS, because=reads, then=None)
        why = UNFIT.get(wire.role, f"that is no {self.name}")
        then = f"do not use {wire.name}; {self.then or 'find another wire'}"
        return self._said("wire", what, verdict=Verdict.FAILS, because=f"{reads}: {why}", then=then)

    def _check(self, wire: Wire, group: tuple[Check, ...]) -> Finding:
        """One requirement of the slot, at one key position or several: the figure with the least room counts."""
        check = worst_of(group)
        name = "_".join(dict.fromkeys(STATE[each.limit.side] if len(group) > 1 else str(each.key) for each in group))
        return Finding(
            id=f"{self.name}_{name}",
            stage=Stage.PROBE,
            what=f"{wire.name}: {described(group)}",
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
            return measure(wire.name, check.key, capture=Capture.MIN if check.key is Key.CRANK else Capture.DISPLAY)
        if check.verdict is Verdict.FAILS:
            return f"do not use {wire.name}; {self.then or 'find another wire'}"
        return f"record {wire.name} through a crank with a fast recorder" if check.key is Key.CRANK else "measure again"

    def _circuit(self, wire: Wire) -> Finding:
        """What the wire feeds: a label, a diagram or a connector can say, never the meter."""
        what = f"{wire.name}: what it feeds"
        if forbidden := bans(self.facts):
            why = f"never tapped: {'; '.join(forbidden)}"
            return self._said("circuit", what, verdict=Verdict.FAILS, because=why, then="find another wire")
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
    for name in SlotName:
        wire = at_stake(result, name, meant=meant.get(name))
        known = facts.get(wire.name) if wire else None
        found += Slot(name, wire, known, result.setup, next_sentence(result.next)).findings()
        if name is SlotName.SUPPLY and wire is not None and wire.role in (Role.UNKNOWN, Role.CONSTANT):
            found.append(loaded_drop(wire, result.setup))
            found += unit_range(wire, result.setup, least_V=demand.least_V, most_V=demand.most_V)
    return tuple(found)


def at_stake(result: ProbeResult, slot: SlotName, *, meant: str | None) -> Wire | None:
    """The wire that a slot's findings are about: the one somebody means, else the chosen one, else the likeliest."""
    chosen = result.supply if slot is SlotName.SUPPLY else result.ignition
    named = result.wire(meant) or result.wire(chosen)
    if named is not None:
        return named
    likely = [w for w in result.wires if w.belief.roles[ROLE_OF[slot]] >= WORTH_NAMING and w.belief.readings]
    return max(likely, key=lambda wire: wire.belief.roles[ROLE_OF[slot]], default=None)


def groups(checks: Sequence[Check]) -> list[tuple[Check, ...]]:
    """The checks as they are shown: dead positions together, live ones together, `after` and the crank alone."""
    standing = [check for check in checks if check.key not in ALONE]
    together = [tuple(c for c in standing if c.limit.side is side) for side in (Side.AT_MOST, Side.AT_LEAST)]
    return [group for group in together if group] + [(check,) for check in checks if check.key in ALONE]


def described(group: Sequence[Check]) -> str:
    """What a group of checks is about: 'live in accessory, key on, engine running'."""
    places = ", ".join(POSITION[check.key] for check in group)
    return places if group[0].key is Key.CRANK else f"{STATE[group[0].limit.side]} {places}"


def because(check: Check, setup: Setup) -> str:
    """What stands behind a figure, in a few words."""
    if check.value_V is None:
        return f"{POSITION[check.key]}: not measured yet"
    wanted = STATE[check.limit.side]
    if check.key is Key.CRANK and check.verdict is Verdict.FAILS:
        return f"too low, by {check.capture}"
    if check.verdict is Verdict.FAILS:
        return f"{POSITION[check.key]} it must be {wanted}"
    if check.key is Key.AFTER:
        return f"proven for {check.minutes or 10.0:g} minutes, not for a night"
    if check.key is not Key.CRANK:
        return f"{'lowest' if wanted == 'live' else 'highest'}: {POSITION[check.key]}"
    if check.capture not in PROOF:
        return "by display: it can have missed the dip"
    if check.capture is Capture.LOGGED:
        return "lowest value of a fast recording"
    hold = f"MIN hold of {setup.meter.min_capture_ms:g} ms"
    return f"{hold}: the starter's inrush may hide a deeper dip (range by our own model)"


def words(role: Role) -> str:
    """A role in words."""
    return str(role).replace("_", " ")


def measure(wire: str, key: Key, *, capture: Capture) -> str:
    """The sentence that asks for a reading."""
    hold = "" if capture is Capture.DISPLAY else f", {capture} capture"
    return f"measure {wire} with key {key}{hold}"


def next_sentence(upcoming: Next | None) -> str | None:
    """The next reading as one sentence; None where there is none."""
    if upcoming is None:
        return None
    asked = measure(upcoming.wire or "a wire not yet measured", upcoming.key, capture=upcoming.capture)
    return f"{asked}: {upcoming.why}"
