"""Why a wire was judged as it was, in sentences a technician can check against the meter."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import WireFacts
from backprobe.findings import Side, Verdict
from backprobe.stages.probe.belief import Belief
from backprobe.stages.probe.permission import identified
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import PROOF, ROLE_OF, Check, Fitness, SlotName
from backprobe.stages.probe.wires import Wire

MENTIONED = 0.05  # a role is mentioned from this probability on

UNFIT = {
    Role.IGNITION_NOT_IN_CRANK: "live with the key on, dead in the crank: the unit would lose ignition at every start",
    Role.ACCESSORY: "live in accessory: the unit would count trips while somebody listens to the radio",
    Role.START: "live only in the crank: a start circuit is never tapped",
    Role.RETAINED: "held live for some minutes after key-off, then dead: neither a supply nor an ignition",
    Role.RUNNING_ONLY: "live only with the engine running: no use for a unit that must see the key",
    Role.LIGHTING: "follows the lamps or is dimmed: not a feed to rely on",
    Role.SIGNAL: "a sensor or bus level: a level at rest is no proof of a supply, and such a line is never tapped",
    Role.NO_SUPPLY: "no supply on it: a ground, a spare or an open end",
}
HALF = "near 12 V in a 24 V system: a converter or the tap between two batteries; no tap"


def reasons(wire: Wire, facts: WireFacts | None, *, setup: Setup) -> tuple[str, ...]:
    """Everything the judgement of `wire` rests on, most telling first."""
    return tuple(_all(wire, facts, setup=setup))


def _all(wire: Wire, facts: WireFacts | None, *, setup: Setup) -> Iterator[str]:
    yield from wire.bans
    if not wire.belief.readings:
        yield "not measured yet"
        return
    if wire.belief.half_voltage > 0.5:
        yield HALF
        return
    yield _role_sentence(wire)
    if wire.role in UNFIT:
        yield UNFIT[wire.role]
    for reading in wire.belief.doubtful:
        yield f"{reading.typed} V at {reading.key} fits nothing the other readings allow: set aside, measure it again"
    yield from (check_sentence(check, setup) for check in _relevant(wire))
    yield from _switch_sentence(wire.belief)
    if not identified(facts):
        yield "circuit not identified: volts cannot show what a wire feeds"


def _role_sentence(wire: Wire) -> str:
    ranked = sorted(wire.belief.roles.items(), key=lambda item: -item[1])
    named = [f"{_words(role)} {p:.0%}" for role, p in ranked if p >= MENTIONED and role is not Role.UNKNOWN]
    if wire.role is Role.UNKNOWN:
        return f"role open: {', '.join(named)}" if named else "role open: fits no kind of wire"
    return f"by its volts: {', '.join(named)}"


def _words(role: Role) -> str:
    return str(role).replace("_", " ")


def likeliest_slot(belief: Belief) -> SlotName:
    """The slot that the wire is likelier to be fit for."""
    return max(SlotName, key=lambda slot: belief.roles[ROLE_OF[slot]])


def _relevant(wire: Wire) -> tuple[Check, ...]:
    """The checks of the slot at stake; none for a role that is fit for neither."""
    lookalikes = (Role.IGNITION_NOT_IN_CRANK, Role.ACCESSORY)
    if wire.role in UNFIT and wire.role not in lookalikes:
        return ()
    slot = SlotName.IGNITION if wire.role in lookalikes else likeliest_slot(wire.belief)
    found: Fitness = wire.fits[slot]
    if wire.role in lookalikes:
        return tuple(check for check in found.checks if check.verdict is not Verdict.OPEN)
    return found.checks


def check_sentence(check: Check, setup: Setup) -> str:
    """One requirement in words: what was seen, what it allows, and how it stands to the limit."""
    wanted = f"{check.limit.side} {check.limit.value:g} V, {check.limit.standing}"
    if check.value_V is None:
        return f"{check.key}: not measured yet ({wanted})"
    shown = f"{check.key}: {check.value_V:.2f} V"
    if check.key is Key.CRANK:
        return f"{shown} by {check.capture}{_crank_range(check, setup)}; limit {wanted}: {check.verdict}"
    proven = ""
    if check.key is Key.AFTER and check.verdict in (Verdict.HOLDS, Verdict.THIN):
        proven = f"; proven for {check.minutes or 10.0:g} minutes"
    state = "dead" if check.limit.side is Side.AT_MOST else "live"
    return f"{shown}, {state if check.verdict is not Verdict.FAILS else 'not ' + state} ({wanted}){proven}"


def _crank_range(check: Check, setup: Setup) -> str:
    if check.capture not in PROOF:
        return ": a display can have missed the dip, it proves nothing" if check.verdict is not Verdict.FAILS else ""
    low, high = check.low_V or 0.0, check.high_V or 0.0
    if check.capture is Capture.LOGGED:
        return f", true minimum {low:.2f} to {high:.2f} V"
    hold = f"a hold of {setup.meter.min_capture_ms:g} ms"
    return f", true minimum {low:.2f} to {high:.2f} V ({hold} averages the inrush away: our own model)"


def _switch_sentence(belief: Belief) -> Iterator[str]:
    level = belief.volts(Key.ISOLATED)
    if level is None:
        return
    if level < 1.0:
        yield f"isolated: {level:.2f} V, dead with the battery switch open: the unit falls back on its own battery then"
    else:
        yield f"isolated: {level:.2f} V, live with the battery switch open: it hangs before the switch, ask first"
