"""The unit's inputs against the signals' real levels, and the leads that were not used."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.unit_sheet import Pull, Purpose, UnitInput
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.physics.meter import accuracy_V
from backprobe.stages.join.matter import either
from backprobe.stages.join.wiring_case import WiringCase, ground_ohm

SHEET = "the unit's sheet"
COUNT_V = 0.01
RELAY = "drive the input through a relay, or take a signal whose levels lie beyond the input's thresholds"
_DONE = ("cap", "cut", "insulat", "tape", "tied", "sleeve", "shrink", "seal")


def inputs(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on each joined input, or what is missing for them."""
    entries = {entry.name: entry for entry in case.unit.inputs}
    levels = {level.lead: level for level in case.told.levels}
    strange = [name for name in levels if name not in entries]
    if strange:
        yield f"[[input]] of {', '.join(strange)}: no input of the unit's sheet, which has: {', '.join(entries)}"
    for lead, _ in case.joined(Purpose.INPUT):
        entry, level = entries.get(lead.name), levels.get(lead.name)
        if entry is None:
            yield f"thresholds of '{lead.name}', in the unit's sheet"
        elif level is None:
            yield f"[[input]] of '{lead.name}': on_V and off_V"
        else:
            yield from _levels(case, entry, level=level)


def _levels(case: WiringCase, entry: UnitInput, *, level: SignalLevels) -> Iterator[Finding | str]:
    given = [volts for volts in (level.on_V, level.off_V) if volts is not None]
    if level.on_V is None or (level.off_V is None and not level.floats_off):
        yield f"of '{entry.name}' {'on_V' if level.on_V is None else 'off_V, or floats_off'}"
    if len(given) == 2 and level.on_V is not None and level.off_V is not None:
        high, low = max(given), min(given)
        kind = "active high" if level.on_V > level.off_V else "active low"
        yield _level(case, entry, volts=high, high=True, kind=kind)
        yield _level(case, entry, volts=low, high=False, kind=kind)
    elif level.on_V is not None and level.floats_off:
        yield _level(case, entry, volts=level.on_V, high=level.on_V >= entry.high_least_V, kind="open when off")
    yield either(
        f"join_{entry.name}_circuit",
        f"What hangs on '{entry.name}'",
        faults=tuple(_faults(entry, level)),
        fine="nothing that was written of it speaks against it (common practice, no source)",
        then="put in what is named, then prove the input by a report of the unit",
    )


def _faults(entry: UnitInput, level: SignalLevels) -> Iterator[str]:
    if level.floats_off:
        wanted = Pull.UP if level.on_V is not None and level.on_V < entry.high_least_V else Pull.DOWN
        if entry.pull is not wanted:
            yield f"the wire is open when off and the input is not pulled {wanted}: it floats"
    if level.coil and not level.diode and not level.isolated:
        yield "a coil without a flyback diode hangs on it: hundreds of volts when it lets go"


def _level(case: WiringCase, entry: UnitInput, *, volts: float, high: bool, kind: str) -> Finding:
    """A level against its threshold [V]; the unit's ground lifts what the input takes for nothing."""
    shift_V = ground_ohm(case).high * (case.unit.supply.peak_A or 0.0)
    half_V = accuracy_V(volts, percent=case.meter.percent, counts=case.meter.counts, count_V=COUNT_V)
    low_V, high_V = volts - half_V - shift_V, volts + half_V
    side, least = (Side.AT_LEAST, entry.high_least_V) if high else (Side.AT_MOST, entry.low_most_V)
    name = f"join_{entry.name}_{'high' if high else 'low'}"
    limit = Limit(name, least, "V", side, SHEET, Standing.PUBLISHED)
    shown, low, top = round(volts, 2), round(low_V, 2), round(high_V, 2)
    verdict = judge(limit, shown, low=low, high=top)
    return Finding(
        id=name,
        stage=Stage.JOIN,
        what=f"'{entry.name}' when it is {'high' if high else 'low'}",
        verdict=verdict,
        because=f"{kind}; the unit's ground can take up to {shift_V:.2f} V off",
        next=None if verdict is Verdict.HOLDS else RELAY,
        value=shown,
        low=low,
        high=top,
        unit="V",
        limit=limit,
    )


def unused(case: WiringCase) -> Iterator[Finding]:
    """Whether the leads that were not used are insulated and tied back."""
    ends = [joint for joint in case.sheet.joints if joint.end and not joint.wire and not joint.place]
    bare = [joint for joint in ends if not any(word in (joint.end or "").lower() for word in _DONE)]
    if ends:
        yield either(
            "join_unused",
            "The leads that were not used",
            faults=tuple(f"'{joint.lead}' is '{joint.end}'" for joint in bare),
            fine=", ".join(f"'{joint.lead}' {joint.end}" for joint in ends) + " (common practice, no source)",
            then="cut each to another length, insulate its end and tie it back",
        )
