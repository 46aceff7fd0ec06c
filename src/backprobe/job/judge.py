"""The whole job judged: what was given, every finding, the pair of wires, the one thing to do next.

Pure: sheets, a readings table and recordings come in as typed evidence; the same call serves server, terminal and
phone.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.job_sheet import JobSheet, NamedWire
from backprobe.evidence.keys import Capture
from backprobe.evidence.meter import Meter
from backprobe.evidence.mount_sheet import MountSheet
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.evidence.reception import Reception
from backprobe.evidence.recording import Quantity, Recording
from backprobe.evidence.unit_sheet import Purpose, UnitSheet
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding, Stage, Verdict, worst
from backprobe.job.bus import bus_findings, listened
from backprobe.job.disputed import disputed
from backprobe.job.ended import closing
from backprobe.job.joined import joined
from backprobe.job.mounted import Mounted, heard_there, judged_mount
from backprobe.job.next_step import answer_without_crank, crank_withheld, with_care, without_crank
from backprobe.job.proving import Proving, proved
from backprobe.job.received import received
from backprobe.job.signed import is_due
from backprobe.job.to_come import joined_supply, planned, positions_to_come, reported_readings, without_asking
from backprobe.job.vehicle import vehicle_findings
from backprobe.job.walked import Walked
from backprobe.stages.bus.heard import Heard
from backprobe.stages.hand_over.ending import ending_finding, obstacles
from backprobe.stages.join.idle_transmit import STEP_ID
from backprobe.stages.parked.findings import parked_findings
from backprobe.stages.parked.parked import ParkedCase
from backprobe.stages.probe.answer import Answer, answer_table
from backprobe.stages.probe.findings import REPORTS_CLOSE, Demand, at_stake, next_sentence, probe_findings
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import Wire
from backprobe.stages.prove.prove import Answer as Proof
from backprobe.stages.prove.unit_findings import SUPPLY_CHANGE

LEAD_OF = {SlotName.SUPPLY: Purpose.SUPPLY, SlotName.IGNITION: Purpose.IGNITION}
URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN)
WEAK_BATTERY = (
    "have the battery, its terminals and the starter looked at before anything is fitted; then record a start again"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobEvidence:
    """Everything a job is judged by."""

    sheet: JobSheet
    unit: UnitSheet
    meter: Meter
    table: ReadingsTable
    recordings: tuple[Recording, ...] = ()
    buses: tuple[Heard, ...] = ()  # what logs of the vehicle's bus came to
    walkround: Walkround | None = None
    mount: MountSheet | None = None
    proving: Proving = field(default_factory=Proving)
    missing_photos: tuple[str, ...] = ()  # those that the walkround names and that are not there
    refused_photos: tuple[str, ...] = ()  # and those that are no pictures, with what was expected
    disputes: tuple[str, ...] = ()  # what the journal leaves open, in words
    units: tuple[Finding, ...] = ()  # on units that are in another vehicle
    policy: FleetPolicy | None = None
    has_lamp: bool = True  # a test lamp, to load a wire with
    receptions: tuple[Reception, ...] = ()  # receivers' logs, in figures
    sign_off: Finding | None = None  # on the sign-offs in the journal; None where none is there and none is due


@dataclass(frozen=True, slots=True, kw_only=True)
class HeardRecording:
    """One recording and what it came to."""

    recording: Recording
    answer: Answer


@dataclass(frozen=True, slots=True, kw_only=True)
class JobJudgement:
    """The answer to a job: `probe` is the answer over all readings, those of recordings among them.

    `proof` is the answer to script and reports, None where there is not yet enough for one.
    """

    evidence: JobEvidence
    findings: tuple[Finding, ...]
    probe: Answer
    heard: tuple[HeardRecording, ...]
    mounted: Mounted | None = None
    proof: Proof | None = None

    @property
    def verdict(self) -> Verdict:
        """The worst of all findings, but for one that only asks for a signature: it is the verdict that is signed."""
        return worst(finding.verdict for finding in self.findings if not is_due(finding))

    @property
    def closing(self) -> Finding | None:
        """The finding that alone says what is left of a job that has ended; None while there is work to do."""
        return closing(self.evidence.sheet.hand_over, self.findings)

    @property
    def next(self) -> str | None:
        """The one thing to do next: what fails, is open, is thin, what reports settle; of an ended job what it owes."""
        if self.closing is not None:
            return self.closing.next
        urgent = self._urgent()
        result = self.probe.result
        sentence = urgent.next if urgent else next_sentence(result.next, result.setup)
        return self._with_care(sentence) if sentence else next(self._awaited(), None)

    @property
    def next_stage(self) -> Stage | None:
        """The stage that the one thing to do next belongs to; None where there is nothing to do."""
        if self.closing is not None:
            return self.closing.stage if self.closing.next else None
        urgent = self._urgent()
        return urgent.stage if urgent else Stage.PROBE if self.next else None

    def _urgent(self) -> Finding | None:
        asking = [each for each in self.findings if each.next not in (None, REPORTS_CLOSE) and each.verdict in URGENCY]
        return min(asking, key=lambda finding: URGENCY.index(finding.verdict), default=None)

    def _awaited(self) -> Iterator[str]:
        return (finding.next for finding in self.findings if finding.next == REPORTS_CLOSE)

    def _with_care(self, sentence: str) -> str:
        return with_care(sentence, self.evidence.walkround, has_crank=self.evidence.sheet.vehicle.has_crank)

    def chosen(self, slot: SlotName) -> str | None:
        """The wire chosen for a slot; None while any finding on the slot fails or is open.

        It is the wire that the findings are about, never another that reads as well: of that one nobody has said
        what it feeds.
        """
        wire = wires_at_stake(self.probe, self.evidence.sheet)[slot]
        on_slot = {finding.verdict for finding in self.findings if finding.id.startswith(f"{slot}_")}
        if wire is None or wire.tap != slot or {Verdict.FAILS, Verdict.OPEN} & on_slot:
            return None
        return wire.name


def judge_job(evidence: JobEvidence) -> JobJudgement:
    """Judge everything that a job holds."""
    leads = [lead.name for lead in evidence.unit.leads]
    evidence = replace(evidence, sheet=spelled_alike(evidence.sheet, evidence.table.wires, leads=leads))
    setup = setup_of(evidence)
    own = listened(evidence.recordings, setup, buses=evidence.buses)
    heard = tuple(HeardRecording(recording=recording, answer=answer) for recording, answer in own)
    table = with_recordings(evidence.table, evidence.sheet, heard=heard)
    withheld = crank_withheld(evidence.walkround, has_crank=evidence.sheet.vehicle.has_crank)
    answered = answer_without_crank if withheld else answer_table
    proof = proved(evidence.proving, evidence.sheet, unit=evidence.unit)
    reported = reported_readings(proof.answer, evidence.sheet, unit=evidence.unit)
    come = positions_to_come(evidence.unit, evidence.proving.reports, proof=proof.answer)
    plan = planned(_as_slow_as(setup, heard), table, sheet=evidence.sheet, to_come=come, has_lamp=evidence.has_lamp)
    probe = answered(replace(table, readings=(*reported, *table.readings)), plan)
    walked = _walked(evidence, table)
    staked = wires_at_stake(probe, evidence.sheet)
    probed = (
        *vehicle_findings(evidence.sheet, evidence.walkround),
        *evidence.units,
        *walked.before(),
        *bus_findings(evidence.buses, evidence.sheet, script=evidence.proving.script),
        *_probe(evidence, probe),
        *walked.at_wires(staked),
        *_recorded(heard, {wire.name for wire in staked.values() if wire is not None}),
    )
    judged = JobJudgement(evidence=evidence, findings=probed, probe=probe, heard=heard)
    joints = (*_joined(judged), *_parked(evidence))
    heard_by = heard_there(evidence.receptions, evidence.proving.reports, proof=proof.answer)
    seat = judged_mount(evidence.mount, evidence.sheet, heard=heard_by)
    heading_deg = None if evidence.mount is None else evidence.mount.heading_deg
    mounted = (*(seat.findings if seat else ()), *received(evidence.receptions, heading_deg=heading_deg))
    proofs = (*_said_once(proof.findings, joints), *disputed(evidence.disputes))
    findings = (*probed, *joints, *mounted, *proofs, *walked.after())
    findings = tuple(without_crank(each) for each in findings) if withheld else findings
    findings = (*findings, *_handed_over(evidence, findings))
    return replace(judged, findings=findings, proof=proof.answer, mounted=seat)


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


def spelled_alike(sheet: JobSheet, wires: Sequence[str], *, leads: Sequence[str] = ()) -> JobSheet:
    """The sheet with its wires spelled as among `wires`, where they differ in capitals and spaces alone.

    Otherwise what the sheet says of a wire, that it must not be tapped for one, would be said of another. The leads of
    its joints are spelled as among `leads` in the same way.
    """
    names = {_plain(name): name for name in wires}
    named = tuple(replace(wire, name=names.setdefault(_plain(wire.name), wire.name)) for wire in sheet.wires)
    of_unit = {_plain(name): name for name in leads}
    joints = (
        replace(
            joint,
            lead=of_unit.get(_plain(joint.lead), joint.lead),
            wire=None if joint.wire is None else names.get(_plain(joint.wire), joint.wire),
        )
        for joint in sheet.joints
    )
    return replace(sheet, wires=named, joints=tuple(joints))


def _plain(name: str) -> str:
    return "".join(name.split()).casefold()


def with_recordings(table: ReadingsTable, sheet: JobSheet, *, heard: Sequence[HeardRecording]) -> ReadingsTable:
    """The readings table with the readings that recordings hold, and with every wire and fact that was declared.

    A recording's channels are wires by name; the battery and what a vehicle reports of itself are not, unless the
    table or the sheet names a wire so.
    """
    declared = tuple(dict.fromkeys([*table.wires, *(wire.name for wire in sheet.wires)]))
    names = {_plain(name): name for name in declared}
    found = [
        reading
        for each in heard
        for reading in readings_of(each)
        if _plain(reading.wire) in names or not _is_bus_log(each.recording)
    ]
    placed = tuple(replace(r, wire=names.setdefault(_plain(r.wire), r.wire)) for r in found)
    return replace(
        table,
        readings=(*table.readings, *placed),
        wires=tuple(dict.fromkeys([*declared, *(r.wire for r in placed)])),
        facts=joined_facts(table.facts, sheet.wires),
    )


def readings_of(each: HeardRecording) -> tuple[Reading, ...]:
    """The readings that a recording came to."""
    return tuple(reading for wire in each.answer.result.wires for reading in wire.belief.readings)


def _is_bus_log(recording: Recording) -> bool:
    """Whether the recording is what the vehicle says of itself: then its channel is no wire under the probe."""
    return any(channel.quantity is Quantity.ENGINE_SPEED for channel in recording.channels)


def joined_facts(facts: Mapping[str, WireFacts], wires: Sequence[NamedWire]) -> dict[str, WireFacts]:
    """What the readings table and the sheet declared of each wire, together."""
    joined = dict(facts)
    for wire in wires:
        known = joined.get(wire.name, WireFacts())
        joined[wire.name] = WireFacts(
            circuits=_both(known.circuits, wire.circuits), marks=_both(known.marks, wire.marks)
        )
    return joined


def _both(a: tuple[str, ...], b: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys([*a, *b]))


def _walked(evidence: JobEvidence, table: ReadingsTable) -> Walked:
    return Walked(
        walkround=evidence.walkround,
        sheet=evidence.sheet,
        unit=evidence.unit,
        meter=evidence.meter,
        missing=evidence.missing_photos,
        refused=evidence.refused_photos,
        readings=table.readings,
    )


def meant_wires(sheet: JobSheet) -> dict[SlotName, tuple[str, ...]]:
    """The wires that the sheet means for each lead of the unit; more than one is a matter to be decided."""
    return {
        slot: tuple(dict.fromkeys(wire.name for wire in sheet.wires if wire.lead == slot))
        for slot in SlotName
        if any(wire.lead == slot for wire in sheet.wires)
    }


def wires_at_stake(probe: Answer, sheet: JobSheet) -> dict[SlotName, Wire | None]:
    """The wire that each slot's findings are about; None where there is none yet."""
    meant = meant_wires(sheet)
    return {slot: at_stake(probe.result, slot, meant=next(iter(meant.get(slot, ())), None)) for slot in SlotName}


def _probe(evidence: JobEvidence, probe: Answer) -> tuple[Finding, ...]:
    meant = meant_wires(evidence.sheet)
    supply = evidence.unit.supply
    found = probe_findings(
        probe.result,
        dict(probe.facts),
        meant={slot: names[0] for slot, names in meant.items()},
        demand=Demand(supply.least_V, supply.most_V),
    )
    return (*(_two_meant(slot, names) for slot, names in meant.items() if len(names) > 1), *found)


def _two_meant(slot: SlotName, names: Sequence[str]) -> Finding:
    return Finding(
        id=f"{slot}_meant",
        stage=Stage.PROBE,
        what=f"{str(slot).capitalize()} wire: {' or '.join(names)}",
        verdict=Verdict.OPEN,
        because=f"the job sheet means {len(names)} wires for one lead; what follows is about the first",
        next=f'decide which of them is the {slot}, and give lead = "{slot}" to that one alone',
    )


def _recorded(heard: Sequence[HeardRecording], staked: Collection[str]) -> tuple[Finding, ...]:
    """The battery's own dip where a recording shows no wire at stake; such wires have theirs among the slots' findings.

    Of a vehicle's own log it is the dip of each voltage in it.
    """
    names = {_plain(name) for name in staked}
    return tuple(
        _dip(each.recording, channel.dip)
        for each in heard
        for channel in (each.answer.view.channels if each.answer.view else ())
        if not _wires_in(each) & names and _plain(channel.channel) not in _wires_in(each)
    )


def _wires_in(each: HeardRecording) -> set[str]:
    """The wires under the probe that a recording shows, plainly spelled."""
    return set() if _is_bus_log(each.recording) else {_plain(wire.name) for wire in each.answer.result.wires}


def _dip(recording: Recording, dip: Finding) -> Finding:
    then = WEAK_BATTERY if dip.verdict is Verdict.FAILS else dip.next
    return replace(dip, what=f"{recording.name}: {dip.what}", next=then)


def _parked(evidence: JobEvidence) -> tuple[Finding, ...]:
    """How long the vehicle can stand; nothing where the sheet says nothing of it, or no crank is there to fail."""
    case = parked_case(evidence)
    return () if case is None else parked_findings(case)


def parked_case(evidence: JobEvidence) -> ParkedCase | None:
    """The parked vehicle; None where the sheet says nothing of it, or no crank is there to fail."""
    sheet = evidence.sheet
    if sheet.parked is None or not sheet.vehicle.has_crank:
        return None
    system_V = sheet.vehicle.system_V
    return ParkedCase(
        sheet=sheet.parked, unit=evidence.unit, meter=evidence.meter, system_V=system_V, policy=evidence.policy
    )


def _said_once(proof: Sequence[Finding], joints: Sequence[Finding]) -> Iterator[Finding]:
    """The findings of the proof, but for the supply's change where the joints are judged by it already."""
    known = any(each.id == STEP_ID for each in joints)
    yield from (each for each in proof if not (known and each.id == SUPPLY_CHANGE))


def _joined(judged: JobJudgement) -> tuple[Finding, ...]:
    """The joints against the unit's sheet, the wires chosen so far and what wiring must stand; nothing without any."""
    evidence = judged.evidence
    chosen = {LEAD_OF[slot]: judged.chosen(slot) for slot in SlotName}
    found = joined(evidence, heard=judged.heard, chosen=chosen, probed=judged.probe.result.wires)
    supply = wires_at_stake(judged.probe, evidence.sheet)[SlotName.SUPPLY]
    return without_asking(found, supply, joined_to=joined_supply(evidence.sheet, evidence.unit))


def _handed_over(evidence: JobEvidence, findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """How the job ends, in view of all other findings, and its sign-off; nothing while nobody has said how it ends.

    A job that cannot end so yet is not signed either, so its end comes first; else the sign-off does.
    """
    ended = evidence.sheet.hand_over
    signed = () if evidence.sign_off is None else (evidence.sign_off,)
    if ended is None:
        return signed
    ending = ending_finding(ended, findings)
    return (ending, *signed) if obstacles(ended, findings) else (*signed, ending)
