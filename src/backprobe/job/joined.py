"""The wiring of a job judged: its joints with what was recorded on the tapped wires in the worst crank."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from backprobe.evidence.job_sheet import JobSheet, NamedWire
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import WireFacts
from backprobe.evidence.recording import Recording
from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding
from backprobe.physics.meter import accuracy_V
from backprobe.stages.join.as_built import as_built
from backprobe.stages.join.crank_low import crank_low_of
from backprobe.stages.join.join import join_findings
from backprobe.stages.join.level_waveform import level_waveform
from backprobe.stages.join.tap_bound import tap_bound
from backprobe.stages.join.wiring_case import CrankLow, Waveform, WiringCase
from backprobe.stages.probe.recording.cranks import LIKELY
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.supply_findings import loaded_pairs
from backprobe.stages.probe.wires import Wire

if TYPE_CHECKING:
    from backprobe.job.judge import HeardRecording, JobEvidence

AROUND_S = 1.0  # seen before and after the crank, so that no dip is cut off


def joined(
    evidence: JobEvidence,
    *,
    heard: Sequence[HeardRecording],
    chosen: Mapping[Purpose, str | None],
    probed: Sequence[Wire],
) -> tuple[Finding, ...]:
    """The findings on the joints; none while there is none.

    `chosen` are the proven wires for supply and ignition, `probed` all wires with what was read on them.
    """
    if not evidence.sheet.joints:
        return ()
    sheet, unit, meter = with_circuits(evidence.sheet, evidence.table.facts), evidence.unit, evidence.meter
    case = WiringCase(sheet=sheet, unit=unit, meter=meter, policy=evidence.policy)
    wires = {lead.purpose: joint.wire for lead, joint in case.joined(Purpose.SUPPLY, Purpose.IGNITION)}
    supply = worst_crank(heard, wires.get(Purpose.SUPPLY), meter=meter)
    if supply is None and sheet.join.crank_level is not None:
        supply = level_waveform(sheet.join.crank_level, system_V=sheet.vehicle.system_V)
    ignition = worst_crank(heard, wires.get(Purpose.IGNITION), meter=meter)
    case = replace(case, supply_crank=supply, ignition_crank=ignition)
    found = join_findings(_as_read(case, wires, probed=probed))
    return (*as_built(sheet.joints, unit, chosen=chosen), *found)


def _as_read(case: WiringCase, wires: Mapping[Purpose, str | None], *, probed: Sequence[Wire]) -> WiringCase:
    """The case with what was read of the joined wires at the probe: the way up to the tap, the lowest in a crank."""
    by_name = {wire.name: wire for wire in probed}
    supply, ignition = (by_name.get(wires.get(lead) or "") for lead in (Purpose.SUPPLY, Purpose.IGNITION))
    return replace(
        case,
        tap_read=None if supply is None else tap_bound(loaded_pairs(supply), meter=case.meter),
        supply_low=_low(supply, SlotName.SUPPLY, meter=case.meter),
        ignition_low=_low(ignition, SlotName.IGNITION, meter=case.meter),
    )


def _low(wire: Wire | None, slot: SlotName, *, meter: Meter) -> CrankLow | None:
    if wire is None:
        return None
    return crank_low_of(wire.fits[slot].crank, wire=wire.name, hold_ms=meter.min_capture_ms)


def with_circuits(sheet: JobSheet, facts: Mapping[str, WireFacts]) -> JobSheet:
    """The sheet with the circuits that wires were identified as beside it, at the probe or in a readings table.

    >>> from backprobe.evidence.job_sheet import Vehicle
    >>> sheet = JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="unit.toml", wires=(NamedWire(name="Red"),))
    >>> with_circuits(sheet, {"Red": WireFacts(circuits=("fuse F12",))}).wires[0].circuits
    ('fuse F12',)
    """
    named = {wire.name: wire for wire in sheet.wires}
    for name, known in facts.items():
        wire = named.get(name, NamedWire(name=name))
        if known.circuits:
            named[name] = replace(wire, circuits=tuple(dict.fromkeys([*wire.circuits, *known.circuits])))
    return replace(sheet, wires=tuple(named.values()))


def worst_crank(heard: Sequence[HeardRecording], wire: str | None, *, meter: Meter) -> Waveform | None:
    """The crank in which a wire fell lowest, sample by sample; None where no recording shows it in one."""
    if wire is None:
        return None
    return min(_cranks(heard, wire, meter=meter), key=lambda crank: min(crank.volts), default=None)


def _cranks(heard: Sequence[HeardRecording], wire: str, *, meter: Meter) -> Iterator[Waveform]:
    for each in heard:
        view, recording = each.answer.view, each.recording
        name = next((ch.name for ch in recording.voltages if _plain(ch.name) == _plain(wire)), None)
        if view is None or name is None or not recording.time_known:
            continue
        for crank in view.cranks:
            if crank.sure >= LIKELY:
                span_s = (crank.start_s - AROUND_S, crank.end_s + AROUND_S)
                found = _window(recording, name, span_s=span_s, meter=meter)
                if found is not None:
                    yield found


def _window(recording: Recording, name: str, *, span_s: tuple[float, float], meter: Meter) -> Waveform | None:
    raw = recording.fine(*span_s)
    samples = [(t, v) for t, v in zip(raw.time_s, raw.values[name], strict=True) if v == v]  # a gap is not a number
    channel = recording.channel(name)
    if not samples or channel is None:
        return None
    lowest_V = min(volts for _, volts in samples)
    half_V = accuracy_V(lowest_V, percent=meter.percent, counts=meter.counts, count_V=10.0**-channel.digits)
    return Waveform(
        time_s=tuple(time_s for time_s, _ in samples),
        volts=tuple(volts for _, volts in samples),
        half_width_V=half_V,
        source=f"{recording.name}, the worst crank: '{name}' down to {lowest_V:g} V, read to ±{half_V:.2f} V",
    )


def _plain(name: str) -> str:
    return "".join(name.split()).casefold()
