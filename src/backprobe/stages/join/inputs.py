"""The unit's inputs against the signals' real levels, and their proof by a report."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.unit_sheet import Purpose, UnitInput
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.physics.meter import accuracy_V
from backprobe.physics.span import Span
from backprobe.stages.join.input_sources import DIODE_V, RELAY, active, circuit, follows_diode
from backprobe.stages.join.matter import plain
from backprobe.stages.join.wiring_case import WiringCase, ground_ohm

SHEET = "the unit's sheet"
COUNT_V = 0.01
DRIVE = "drive the input through a relay, or take a signal whose levels lie beyond the input's thresholds"
WORK_IT = "switch the signal on and off, look for the unit's report of each, write down reported_on and reported_off"


def inputs(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on each joined input, or what is missing for them."""
    entries = {entry.name: entry for entry in case.unit.inputs}
    levels = {level.lead: level for level in case.told.levels}
    strange = [name for name in levels if name not in entries]
    if strange:
        yield f"[[input]] of {', '.join(strange)}: no input of the unit's sheet, which has: {', '.join(entries)}"
    for lead, _ in case.joined(Purpose.IGNITION):
        if lead.name in levels and lead.name in entries:
            yield from _of_input(case, entries[lead.name], level=levels[lead.name])
    for lead, _ in case.joined(Purpose.INPUT):
        entry, level = entries.get(lead.name), levels.get(lead.name)
        if entry is None:
            yield f"thresholds of '{lead.name}', in the unit's sheet"
            continue
        if level is None:
            yield f"[[input]] of '{lead.name}': on_V and off_V"
        else:
            yield from _of_input(case, entry, level=level)
        yield proof(lead.name, level)


def _of_input(case: WiringCase, entry: UnitInput, *, level: SignalLevels) -> Iterator[Finding | str]:
    yield from _levels(case, entry, level=level)
    yield from circuit(entry, level)


def _levels(case: WiringCase, entry: UnitInput, *, level: SignalLevels) -> Iterator[Finding | str]:
    """Both levels against their thresholds; only that of 'on' where the wire is open when off."""
    on_V, off_V = level.on_V, level.off_V
    if on_V is None:
        yield f"of '{entry.name}' on_V"
        return
    sense = active(entry, level)
    kind = "open when off" if sense is None else f"active {sense}"
    if level.isolation == RELAY:
        kind = f"{kind}, behind the relay"
    if level.floats_off or follows_diode(level):
        high = on_V >= entry.high_least_V
        taken_V = DIODE_V if follows_diode(level) else Span(0.0, 0.0, 0.0)
        through = f"{kind}; {taken_V.low:g} to {taken_V.high:g} V go in the diode" if follows_diode(level) else kind
        yield _level(case, entry, seen_V=_behind(on_V, taken_V, high=high), high=high, kind=through)
    elif off_V is None:
        yield f"of '{entry.name}' off_V, or floats_off"
    else:
        for volts, high in ((max(on_V, off_V), True), (min(on_V, off_V), False)):
            yield _level(case, entry, seen_V=Span(volts, volts, volts), high=high, kind=kind)


def _behind(volts: float, taken_V: Span, *, high: bool) -> Span:
    """The level behind a diode: a high one is lower there, a low one higher."""
    if high:
        return Span(volts - taken_V.high, volts - taken_V.likely, volts - taken_V.low)
    return Span(volts + taken_V.low, volts + taken_V.likely, volts + taken_V.high)


def _level(case: WiringCase, entry: UnitInput, *, seen_V: Span, high: bool, kind: str) -> Finding:
    """A level against its threshold [V]; the unit's ground lifts what the input takes for nothing."""
    shift_V = ground_ohm(case).high * (case.unit.supply.peak_A or 0.0)
    meter = case.meter
    half_V = accuracy_V(seen_V.likely, percent=meter.percent, counts=meter.counts, count_V=COUNT_V)
    low, shown, top = (
        round(volts, 2) for volts in (seen_V.low - half_V - shift_V, seen_V.likely, seen_V.high + half_V)
    )
    side, least = (Side.AT_LEAST, entry.high_least_V) if high else (Side.AT_MOST, entry.low_most_V)
    name = f"join_{entry.name}_{'high' if high else 'low'}"
    limit = Limit(name, least, "V", side, SHEET, Standing.PUBLISHED)
    verdict = judge(limit, shown, low=low, high=top)
    return Finding(
        id=name,
        stage=Stage.JOIN,
        what=f"'{entry.name}' when it is {'high' if high else 'low'}",
        verdict=verdict,
        because=f"{kind}; the unit's ground can take up to {shift_V:.2f} V off",
        next=None if verdict is Verdict.HOLDS else DRIVE,
        value=shown,
        low=low,
        high=top,
        unit="V",
        limit=limit,
    )


def proof(name: str, level: SignalLevels | None) -> Finding:
    """Whether the unit reported the input on, and off again: a meter at the wire does not show what the unit sees."""
    on, off = (None, None) if level is None else (level.reported_on, level.reported_off)
    what, identity = f"The proof of '{name}' by a report", f"join_{name}_proof"
    if on is None or off is None:
        seen = "its change was not seen in a report" if on is None and off is None else "seen one way only"
        return plain(identity, what, verdict=Verdict.OPEN, because=seen, then=WORK_IT)
    if on == off:
        because = f"on and off cannot both be of {on}"
        return plain(identity, what, verdict=Verdict.OPEN, because=because, then=WORK_IT)
    return plain(identity, what, verdict=Verdict.HOLDS, because=f"reported on at {on}, off at {off}")
