"""The whole job judged: what was given, every finding, the pair of wires, the one thing to do next.

Pure: sheets, a readings table and recordings come in as typed evidence; the same call serves server, terminal and
phone.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.keys import Capture
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.evidence.recording import Quantity, Recording
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.findings import Finding, Stage, Verdict, worst
from backprobe.stages.probe.answer import Answer, answer_recording, answer_table
from backprobe.stages.probe.findings import Demand, next_sentence, probe_findings
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.walkround.vin import check_vin

NO_VIN = Finding(
    id="vin_form",
    stage=Stage.WALKROUND,
    what="VIN",
    verdict=Verdict.OPEN,
    because="the job sheet holds no VIN",
    next="write the VIN from the plate into the job sheet",
)
URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobEvidence:
    """Everything a job is judged by."""

    sheet: JobSheet
    unit: UnitSheet
    meter: Meter
    table: ReadingsTable
    recordings: tuple[Recording, ...] = ()
    disputes: tuple[str, ...] = ()  # what the journal leaves open, in words


@dataclass(frozen=True, slots=True, kw_only=True)
class HeardRecording:
    """One recording and what it came to."""

    recording: Recording
    answer: Answer


@dataclass(frozen=True, slots=True, kw_only=True)
class JobJudgement:
    """The answer to a job: `probe` is the answer over all readings, those of recordings among them."""

    evidence: JobEvidence
    findings: tuple[Finding, ...]
    probe: Answer
    heard: tuple[HeardRecording, ...]

    @property
    def verdict(self) -> Verdict:
        """The worst of all findings."""
        return worst(finding.verdict for finding in self.findings)

    @property
    def next(self) -> str | None:
        """The one thing to do next: what fails comes first, then what is open, then what is thin."""
        for verdict in URGENCY:
            for finding in self.findings:
                if finding.verdict is verdict and finding.next:
                    return finding.next
        return next_sentence(self.probe.result.next)

    def chosen(self, slot: SlotName) -> str | None:
        """The wire chosen for a slot; None while any finding on the slot fails or is open."""
        result = self.probe.result
        wire = result.supply if slot is SlotName.SUPPLY else result.ignition
        on_slot = [finding.verdict for finding in self.findings if finding.id.startswith(f"{slot}_")]
        return None if {Verdict.FAILS, Verdict.OPEN} & set(on_slot) else wire


def judge_job(evidence: JobEvidence) -> JobJudgement:
    """Judge everything that a job holds."""
    setup = setup_of(evidence)
    heard = tuple(HeardRecording(recording=r, answer=answer_recording(r, setup)) for r in evidence.recordings)
    table = with_recordings(evidence.table, evidence.sheet, heard=heard)
    probe = answer_table(table, _as_slow_as(setup, heard))
    findings = (*_vehicle(evidence.sheet), *_probe(evidence, probe), *_recorded(heard), *_disputed(evidence))
    return JobJudgement(evidence=evidence, findings=findings, probe=probe, heard=heard)


def setup_of(evidence: JobEvidence) -> Setup:
    """The probe stage's setup out of the sheets."""
    vehicle, supply = evidence.sheet.vehicle, evidence.unit.supply
    return Setup(
        system_V=vehicle.system_V,
        meter=evidence.meter,
        captures=evidence.meter.captures,
        has_crank=vehicle.has_crank,
        has_accessory=vehicle.has_accessory,
        unit_least_V=supply.least_V,
        cylinders=vehicle.cylinders,
    )


def _as_slow_as(setup: Setup, heard: Sequence[HeardRecording]) -> Setup:
    """The setup with the slower of the meter's own MIN hold and that of a slow recording that counts as one."""
    slow = (each for each in heard if any(r.capture is Capture.MIN for r in readings_of(each)))
    hold_ms = max((each.answer.result.setup.meter.min_capture_ms for each in slow), default=0.0)
    return replace(setup, meter=replace(setup.meter, min_capture_ms=max(hold_ms, setup.meter.min_capture_ms)))


def with_recordings(table: ReadingsTable, sheet: JobSheet, *, heard: Sequence[HeardRecording]) -> ReadingsTable:
    """The readings table with the readings that recordings hold, and with every wire and fact that was declared.

    A recording's channels are wires by name; the battery and what a vehicle reports of itself are not.
    """
    found = [reading for each in heard if not _is_bus_log(each.recording) for reading in readings_of(each)]
    names = {name.casefold(): name for name in (*table.wires, *(wire.name for wire in sheet.wires))}
    placed = tuple(replace(r, wire=names.setdefault(r.wire.casefold(), r.wire)) for r in found)
    wires = tuple(dict.fromkeys([*table.wires, *(wire.name for wire in sheet.wires), *(r.wire for r in placed)]))
    return replace(
        table, readings=(*table.readings, *placed), wires=wires, facts=joined_facts(table.facts, sheet.facts)
    )


def readings_of(each: HeardRecording) -> tuple[Reading, ...]:
    """The readings that a recording came to."""
    return tuple(reading for wire in each.answer.result.wires for reading in wire.belief.readings)


def _is_bus_log(recording: Recording) -> bool:
    """Whether the recording is what the vehicle says of itself: then its channel is no wire under the probe."""
    return any(channel.quantity is Quantity.ENGINE_SPEED for channel in recording.channels)


def joined_facts(first: Mapping[str, WireFacts], second: Mapping[str, WireFacts]) -> dict[str, WireFacts]:
    """What two sources declared of each wire, together."""
    none = WireFacts()
    joined: dict[str, WireFacts] = {}
    for wire in dict.fromkeys([*first, *second]):
        a, b = first.get(wire, none), second.get(wire, none)
        joined[wire] = WireFacts(circuits=_both(a.circuits, b.circuits), marks=_both(a.marks, b.marks))
    return joined


def _both(a: tuple[str, ...], b: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys([*a, *b]))


def _vehicle(sheet: JobSheet) -> tuple[Finding, ...]:
    vehicle = sheet.vehicle
    if vehicle.vin is None:
        return (NO_VIN,)
    return check_vin(vehicle.vin, heavy=vehicle.heavy, stated_year=vehicle.model_year, job_year=sheet.year).findings


def _probe(evidence: JobEvidence, probe: Answer) -> tuple[Finding, ...]:
    meant = {SlotName(wire.lead): wire.name for wire in evidence.sheet.wires if wire.lead}
    supply = evidence.unit.supply
    return probe_findings(probe.result, dict(probe.facts), meant=meant, demand=Demand(supply.least_V, supply.most_V))


def _recorded(heard: Sequence[HeardRecording]) -> tuple[Finding, ...]:
    """The battery's own dip where a recording shows no wire beside it; wires have theirs among the slots' findings."""
    return tuple(
        replace(channel.dip, what=f"{each.recording.name}: {channel.dip.what}")
        for each in heard
        for channel in (each.answer.view.channels if each.answer.view else ())
        if _is_bus_log(each.recording) or not each.answer.result.wires
    )


def _disputed(evidence: JobEvidence) -> tuple[Finding, ...]:
    """What the journal leaves open, one finding each."""
    return tuple(
        Finding(
            id="journal_open",
            stage=Stage.HAND_OVER,
            what="Journal",
            verdict=Verdict.OPEN,
            because=text,
            next="decide which of the two is right and write it down",
        )
        for text in evidence.disputes
    )
