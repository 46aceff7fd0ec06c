"""Readings in, safe answers out: the role of every wire, one pair to tap, and the reading to take next.

`choice` is null rather than unsafe. A wire is chosen only with the evidence its slot requires (slots.py), when its
role is sure, nothing that was declared forbids it, and no reading contradicts it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.findings import Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.probe.belief import Belief, believe
from backprobe.stages.probe.crank_outliers import LIVE_IN_CRANK_V, set_outliers_aside
from backprobe.stages.probe.next_reading import Next, Search
from backprobe.stages.probe.permission import bans
from backprobe.stages.probe.promise import Candidate
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import ENOUGH_TRIES, PROOF, ROLE_OF, Fitness, SlotName, fitness
from backprobe.stages.probe.tapping import obstacle

NAMED = 0.80  # a role is named from this probability on
UNFIT = (Role.START, Role.SIGNAL)  # never tapped: start circuits, bus and sensor lines


@dataclass(frozen=True, slots=True)
class Wire:
    """What the readings say of one wire.

    `tap` is supply, ignition, never or no; `verdict` its fitness for its slot; `fits` how it stands to both.
    """

    belief: Belief
    role: Role
    probability: float
    verdict: Verdict
    tap: str
    bans: tuple[str, ...]
    fits: Mapping[SlotName, Fitness]

    @property
    def name(self) -> str:
        """The wire's name in the table."""
        return self.belief.wire


@dataclass(frozen=True, slots=True)
class ProbeResult:
    """Every wire, the chosen pair (wire names or None) and the next reading (None when there is none to ask)."""

    setup: Setup
    wires: tuple[Wire, ...]
    supply: str | None
    ignition: str | None
    next: Next | None

    def wire(self, name: str | None) -> Wire | None:
        """The wire of that name, or None."""
        return next((wire for wire in self.wires if wire.name == name), None)


def judge_wires(table: ReadingsTable, setup: Setup) -> ProbeResult:
    """The whole answer to a readings table."""
    return replace(_judged(table, at_hand(table, setup)), setup=setup)


def at_hand(table: ReadingsTable, setup: Setup) -> Setup:
    """The setup without a recorder that is not to be had: one wire's MIN came back for it time and again."""
    cranks = [r for r in table.readings if r.key is Key.CRANK]
    holds = Counter(r.wire for r in cranks if r.capture is Capture.MIN)
    logged = any(r.capture is Capture.LOGGED for r in cranks)
    if logged or max(holds.values(), default=0) < ENOUGH_TRIES:
        return setup
    return replace(setup, captures=setup.captures - {Capture.LOGGED})


def _judged(table: ReadingsTable, setup: Setup) -> ProbeResult:
    by_wire = {name: tuple(r for r in table.readings if r.wire == name) for name in table.wires}
    rest_V = _rest_V(table.readings, setup)
    alone = [believe(name, own, others=_others(table, name), setup=setup) for name, own in by_wire.items()]
    beliefs = set_outliers_aside(alone, setup)
    wires = [_judge(belief, bans(table.facts.get(belief.wire)), setup=setup, rest_V=rest_V) for belief in beliefs]
    chosen = {slot: _best(wires, slot) for slot in SlotName}
    nothing = believe("", (), others=table.readings, setup=setup)
    search = Search(
        candidates=[Candidate(wire.belief, wire.fits, bool(wire.bans)) for wire in wires],
        fresh=Candidate(nothing, _fits(nothing, setup, rest_V=rest_V)),
        open_slots=[slot for slot in SlotName if chosen[slot] is None],
        setup=setup,
        last_key=table.readings[-1].key if table.readings else None,
        unread=table.unread,
        cranks_V=cranks_V(wires, setup),
    )
    return ProbeResult(
        setup,
        tuple(wires),
        chosen[SlotName.SUPPLY],
        chosen[SlotName.IGNITION],
        search.next() if search.open_slots else None,
    )


def _others(table: ReadingsTable, name: str) -> tuple[Reading, ...]:
    return tuple(reading for reading in table.readings if reading.wire != name)


def _rest_V(readings: Sequence[Reading], setup: Setup) -> float:
    """The battery's level with the engine off by all live readings [V], or a charged battery's where there is none."""
    floor = limit("live", system_V=setup.system_V).value
    live = [r.volts for r in readings if r.key in (Key.OFF, Key.ACCESSORY, Key.ON, Key.AFTER) and r.volts >= floor]
    return median(live) if live else 12.6 * setup.system_V / 12.0


def cranks_V(wires: Sequence[Wire], setup: Setup) -> tuple[float, ...]:
    """For each wire that stayed live in the crank the highest proven minimum there [V]."""
    live_V = LIVE_IN_CRANK_V * setup.system_V / 12.0
    shown = [[r.volts for r in wire.belief.at(Key.CRANK) if r.capture in PROOF] for wire in wires]
    return tuple(max(volts) for volts in shown if max(volts, default=0.0) > live_V)


def _fits(belief: Belief, setup: Setup, *, rest_V: float) -> dict[SlotName, Fitness]:
    return {slot: fitness(belief, slot, setup=setup, rest_V=rest_V) for slot in SlotName}


def _judge(belief: Belief, forbidden: tuple[str, ...], *, setup: Setup, rest_V: float) -> Wire:
    fits = _fits(belief, setup, rest_V=rest_V)
    role, probability = name_role(belief, fits)
    verdict = _verdict(belief, role, fits=fits)
    return Wire(
        belief,
        role,
        probability,
        verdict,
        _tap(role, forbidden, belief=belief, fits=fits, setup=setup),
        forbidden,
        fits,
    )


def name_role(belief: Belief, fits: Mapping[SlotName, Fitness]) -> tuple[Role, float]:
    """The role to name and its probability.

    `unknown` unless one role is likely enough; a role that could be tapped is named only when each of its
    slot's requirements was measured at all, because its look-alikes differ from it at just those.
    """
    role = max(belief.roles, key=lambda r: belief.roles[r])
    if belief.roles[role] < NAMED or not belief.readings:
        return Role.UNKNOWN, belief.roles[Role.UNKNOWN]
    slot = next((slot for slot, tapped in ROLE_OF.items() if tapped is role), None)
    if slot is not None and not _measured(fits[slot]):
        return Role.UNKNOWN, belief.roles[Role.UNKNOWN]
    return role, belief.roles[role]


def _measured(fit: Fitness) -> bool:
    """Whether each requirement has a reading; in the crank a display counts here, though it proves nothing."""
    return all(check.value_V is not None for check in fit.checks)


def _verdict(belief: Belief, role: Role, *, fits: Mapping[SlotName, Fitness]) -> Verdict:
    if belief.half_voltage > 0.5:
        return Verdict.FAILS
    if role is Role.UNKNOWN:
        return _undetermined(belief, fits)
    slot = next((slot for slot, tapped in ROLE_OF.items() if tapped is role), None)
    if slot is None:
        return Verdict.FAILS
    return fits[slot].verdict


def _undetermined(belief: Belief, fits: Mapping[SlotName, Fitness]) -> Verdict:
    """Open, unless the crank already went outside the limits of both slots: then it fits neither, whatever it is."""
    cranks = [fit.crank for fit in fits.values()]
    out = [crank is not None and crank.verdict is Verdict.FAILS for crank in cranks]
    return Verdict.FAILS if all(out) and not belief.doubtful else Verdict.OPEN


def _tap(
    role: Role, forbidden: tuple[str, ...], *, belief: Belief, fits: Mapping[SlotName, Fitness], setup: Setup
) -> str:
    if forbidden or role in UNFIT:
        return "never"
    for slot, tapped in ROLE_OF.items():
        if role is tapped and obstacle(belief, fits[slot], setup=setup) is None:
            return str(slot)
    return "no"


def _best(wires: Sequence[Wire], slot: SlotName) -> str | None:
    """The wire to tap for a slot: `holds` before `thin`, then the most room in the crank."""
    fit = [wire for wire in wires if wire.tap == slot]
    return max(fit, key=lambda wire: _rank(wire, slot)).name if fit else None


def _rank(wire: Wire, slot: SlotName) -> tuple[bool, float]:
    crank = wire.fits[slot].crank
    room = 0.0 if crank is None or crank.low_V is None else crank.limit.margin(crank.low_V)
    return wire.verdict is Verdict.HOLDS, room
