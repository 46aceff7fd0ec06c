"""Why a wire was judged as it was, in sentences a technician can check against the meter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, WireFacts
from backprobe.findings import Limit, Side, Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.probe.belief import Belief
from backprobe.stages.probe.crank_range import WHOLE_TROUGH_MS
from backprobe.stages.probe.levels import STRAY_V
from backprobe.stages.probe.permission import identified
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import PROOF, ROLE_OF, Check, SlotName
from backprobe.stages.probe.tapping import obstacle
from backprobe.stages.probe.wires import Wire
from backprobe.stages.probe.wording import share, words

MENTIONED = 0.05  # a role is mentioned from this probability on
MOST_MENTIONED = 3
STATE = {Side.AT_LEAST: "live", Side.AT_MOST: "dead"}
SHOWN_BY = {Capture.DISPLAY: "display", Capture.MIN: "MIN", Capture.MAX: "MAX", Capture.LOGGED: "recorded low"}
LOOKALIKES = (Role.IGNITION_NOT_IN_CRANK, Role.ACCESSORY)  # of an ignition: what speaks against them is shown

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
    if wire.bans:
        yield from wire.bans
        yield "never tapped, whatever its volts"
        return
    if not wire.belief.readings:
        yield "not measured yet"
        return
    if wire.belief.half_voltage > 0.5:
        yield HALF
    else:
        yield _role_sentence(wire)
        if wire.role in UNFIT:
            yield UNFIT[wire.role]
        yield from _doubt_sentences(wire.belief.doubtful)
        yield from _check_sentences(wire, setup, named=identified(facts))
        yield from _obstacle_sentence(wire, setup)
    yield from _switch_sentence(wire.belief, setup)
    if not identified(facts):
        yield "circuit not identified: volts cannot show what a wire feeds"


def _role_sentence(wire: Wire) -> str:
    ranked = sorted(wire.belief.roles.items(), key=lambda item: -item[1])
    likely = [(role, p) for role, p in ranked if p >= MENTIONED and role is not Role.UNKNOWN][:MOST_MENTIONED]
    said = ", ".join(f"{words(role)} {share(p)}" for role, p in likely)
    if wire.role is not Role.UNKNOWN:
        return f"by its volts: {said}"
    return f"so far: {said}" if said else "fits no kind of wire: measure it again"


def _doubt_sentences(doubtful: Sequence[Reading]) -> Iterator[str]:
    for reading in doubtful:
        yield f"{reading.typed} V at {reading.key} does not fit the other readings: set aside, measure it again"


def likeliest_slot(belief: Belief) -> SlotName:
    """The slot that the wire is likelier to be fit for."""
    return max(SlotName, key=lambda slot: belief.roles[ROLE_OF[slot]])


def _check_sentences(wire: Wire, setup: Setup, *, named: bool) -> Iterator[str]:
    """The requirements of the slot at stake: what is met, what is not, what is owed; of what fails that alone."""
    if wire.role in UNFIT and wire.role not in LOOKALIKES:
        return
    slot = SlotName.IGNITION if wire.role in LOOKALIKES else likeliest_slot(wire.belief)
    checks = wire.fits[slot].checks
    if wire.verdict is Verdict.FAILS:
        failing = [check for check in checks if check.verdict is Verdict.FAILS]
        yield from (check_sentence(check, setup, named=named) for check in failing)
        return
    for side in (Side.AT_MOST, Side.AT_LEAST):
        met = [c for c in checks if c.limit.side is side and _is_plain(c)]
        if met:
            yield met_sentence(met)
    for check in checks:
        if check.value_V is not None and not _is_plain(check):
            yield check_sentence(check, setup, named=named)
    owed = [check for check in checks if check.value_V is None]
    if owed:
        yield owed_sentence(owed, slot)


def _obstacle_sentence(wire: Wire, setup: Setup) -> Iterator[str]:
    """Why a wire of the right role that meets its limits is not to be tapped all the same."""
    slot = likeliest_slot(wire.belief)
    if wire.role is ROLE_OF[slot] and wire.verdict in (Verdict.HOLDS, Verdict.THIN):
        against = obstacle(wire.belief, wire.fits[slot], setup=setup)
        if against is not None:
            yield str(against)


def _is_plain(check: Check) -> bool:
    """Whether a check holds at a standing position of which nothing more is to be said."""
    return check.verdict is Verdict.HOLDS and check.key not in (Key.CRANK, Key.AFTER)


def wanted(against: Limit) -> str:
    """A limit with its standing: 'at least 9 V, common practice, no source'."""
    return f"{against.side} {against.value:g} V, {against.standing}"


def met_sentence(checks: Sequence[Check]) -> str:
    """Standing positions that hold, in one sentence: they share their limit."""
    shared = checks[0].limit
    shown = ", ".join(f"{check.key} {check.value_V:.2f} V" for check in checks)
    return f"{STATE[shared.side]}: {shown} ({wanted(shared)})"


def owed_sentence(checks: Sequence[Check], slot: SlotName) -> str:
    """What is still to be measured, with the limits it will be held against."""
    against = dict.fromkeys(check.limit for check in checks)
    parts = [f"{', '.join(check.key for check in checks if check.limit == each)} ({wanted(each)})" for each in against]
    return f"not measured yet for the {slot}: {'; '.join(parts)}"


def check_sentence(check: Check, setup: Setup, *, named: bool = False) -> str:
    """One requirement in words: what was seen, what it allows, and how it stands to the limit.

    `named` says whether the circuit was identified: only then may a load be put on the wire.
    """
    if check.key is Key.CRANK:
        return _crank_sentence(check, setup)
    state = STATE[check.limit.side]
    shown = f"{check.key}: {check.value_V:.2f} V"
    if check.verdict is Verdict.FAILS:
        return f"{shown}, must be {state} ({wanted(check.limit)}){_stray(check, setup, named=named)}"
    if check.verdict is Verdict.THIN:
        return f"{shown}, {state}, but the meter's error reaches past the limit ({wanted(check.limit)})"
    proven = f": proven for {check.minutes or 10.0:g} minutes, no longer" if state == "live" else ""
    return f"{shown}, {state}{proven} ({wanted(check.limit)})"


def _stray(check: Check, setup: Setup, *, named: bool) -> str:
    """What may be behind a volt or two on a wire that should be dead."""
    if check.limit.side is not Side.AT_MOST or (check.value_V or 0.0) > STRAY_V * setup.system_V / 12.0:
        return ""
    if named:
        return "; stray volts vanish under a test lamp: measure it so and write load_A"
    return "; may be stray volts: a test lamp tells, but only once its circuit is identified"


def _crank_sentence(check: Check, setup: Setup) -> str:
    shown = f"crank: {SHOWN_BY[check.capture or Capture.DISPLAY]} {check.value_V:.2f} V"
    if check.verdict is Verdict.OPEN:
        shown += ", which can have missed the dip: it proves nothing"
    elif check.verdict is not Verdict.FAILS and check.capture in PROOF:
        shown += _crank_range(check, setup)
    thin = ", part of the range is below it" if check.verdict is Verdict.THIN else ""
    return f"{shown}; limit {wanted(check.limit)}: {check.verdict}{thin}"


def _crank_range(check: Check, setup: Setup) -> str:
    true = f", true lowest {check.low_V or 0.0:.2f} to {check.high_V or 0.0:.2f} V"
    if check.capture is Capture.LOGGED or setup.meter.min_capture_ms <= WHOLE_TROUGH_MS:
        return true
    return f"{true} as a hold of {setup.meter.min_capture_ms:g} ms averages the inrush away (our own model)"


def _switch_sentence(belief: Belief, setup: Setup) -> Iterator[str]:
    level = belief.volts(Key.ISOLATED)
    if level is None:
        return
    if limit("dead", system_V=setup.system_V).allows(level):
        yield f"isolated: {level:.2f} V, dead with the battery switch open: the unit falls back on its own battery then"
    else:
        yield f"isolated: {level:.2f} V, live with the battery switch open: it hangs before the switch, ask first"
