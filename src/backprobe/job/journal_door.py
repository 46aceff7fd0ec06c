"""The engine's door for a journal: its entries as JSON text in, its judgement as JSON text out.

A phone, the desk and a terminal that ask here with the same entries get the same bytes.

In: ``{"entries": [text, …], "blobs": {sha256: text}}``: each entry as it is stored, and the text of every file that the
entries name and that is to be read (sheets, recordings); beside them perhaps ``"corners.txt": text``, an index of
corners, and ``"signatures": {id: true, …}``, of each sign-off whether its signature holds, as whoever asks has found:
nothing here can check one. Out: the judgement as `backprobe judge --json` prints it, with ``journal`` (what is not
settled), ``setup`` (what can be measured on this vehicle with this meter), ``leads`` (how each lead of the
unit stands), ``body_builder`` (the wires that are at such a connector), ``ends`` (how the job can end) and ``signed``
(the sign-off that counts, null where there is none); or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

from backprobe.drawings.margin_bar import NARROWEST, margin_bar
from backprobe.errors import JobError
from backprobe.evidence.corner import CornerIndex
from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.job_sheet import JobSheet, NamedWire
from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.mount_sheet import MountSheet
from backprobe.evidence.recording import Recording
from backprobe.evidence.report import ReportsTable
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding
from backprobe.formats.corner_index import CORNERS, read_corner_index
from backprobe.formats.job_toml import read_job
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.parts import Parts, lines_in
from backprobe.formats.policy_toml import read_policy
from backprobe.formats.recording_csv import read_recording
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.formats.walkround_toml import read_walkround
from backprobe.job.answer import judgement_json
from backprobe.job.bus import buses_of
from backprobe.job.chain import Line
from backprobe.job.door import meter_for, recording_limits_V
from backprobe.job.ends import ends_json
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import JobState, fold, unique
from backprobe.job.joined import with_circuits
from backprobe.job.judge import JobEvidence, JobJudgement, judge_job
from backprobe.job.kinds import REPORTS, SIGN_OFF, text
from backprobe.job.lead_verdicts import standing_of_lead
from backprobe.job.pictures import pictures_of
from backprobe.job.proving import proving_of, together
from backprobe.job.receptions import receptions_of
from backprobe.job.sign_off import by_device
from backprobe.job.signed import finding_as_told, signed_as_told
from backprobe.job.told import finding_said, speaker_of, told
from backprobe.job.units import unit_findings
from backprobe.limits.meters import METERS
from backprobe.stages.join.order import at_body_builder
from backprobe.stages.probe.answer import without_absent

TAPS = {"tap_supply": "supply", "tap_ignition": "ignition"}  # slots of the journal and the unit's leads they mean
METER_SLOT = "meter"
JOURNAL = "the journal"
LAMP_SLOT, NO_LAMP = "lamp", "none"
PHONE_WIDTH = 360.0  # of a page on a phone
PLACES = ("connector", "cavity", "colour")


def judge_journal_text(asked: str) -> str:
    """Judge a journal given as JSON text; errors come back in the same shape as everywhere.

    >>> print(judge_journal_text("{}"))
    {"code": "job", "error": "entries: a list of texts is expected", "ok": false}
    """
    return told(asked, JOURNAL, answer_to=_answer)


def margin_bars_text(asked: str) -> str:
    """The margin bars of a journal's findings as JSON text: their SVG by the finding's place in the list.

    In: as for `judge_journal_text`. Out: ``{"ok": true, "bars": {"3": svg, …}}``; findings without a limit have none.
    """
    return told(asked, JOURNAL, answer_to=_bars)


def _bars(parts: Parts) -> dict[str, object]:
    say = speaker_of(parts)
    findings = [finding_said(each, say) for each in judge_job(evidence_of(asked_in(parts))).findings]
    bars = {str(at): margin_bar(each, width=NARROWEST) for at, each in enumerate(findings) if each.limit}
    return {"ok": True, "bars": bars}


def pictures_text(asked: str) -> str:
    """The pictures of a journal's job as JSON text: wiring, crank, turns, sky, parked, those that there are.

    In: as for `judge_journal_text`. Out: ``{"ok": true, "pictures": {"crank": {"svg", "caption", "alt"}, …}}``.
    """
    return told(asked, JOURNAL, answer_to=_pictures)


def _pictures(parts: Parts) -> dict[str, object]:
    return {"ok": True, "pictures": pictures_of(judge_job(evidence_of(asked_in(parts))), width=PHONE_WIDTH)}


@dataclass(frozen=True, slots=True)
class Asked:
    """What came in: the job as it stands, the texts of its files by their sha256, its entries.

    `signatures` says by the id of a sign-off whether its signature holds: the primitives to check one are not below the
    browser line.
    """

    state: JobState
    blobs: Mapping[str, str]
    entries: tuple[Entry, ...] = ()
    signatures: Mapping[str, bool] = field(default_factory=dict)
    corners: CornerIndex | None = None

    def text_of(self, kind: str) -> tuple[str, str] | None:
        """The text and the name of the one file of a kind; None where the journal names none.

        Raises JobError where the file itself is not there.
        """
        for one in self.state.of_kind(kind):
            sha256, file = text(one.body, "sha256") or "", text(one.body, "file") or kind
            if sha256 not in self.blobs:
                raise JobError(f"{file} is not on this device yet")
            return self.blobs[sha256], file
        return None

    def must(self, kind: str) -> tuple[str, str]:
        """The same; raises JobError where the journal names no such file."""
        found = self.text_of(kind)
        if found is None:
            raise JobError(f"the journal names no file of the kind {kind!r}")
        return found


def evidence_of(asked: Asked) -> JobEvidence:
    """The evidence that a journal holds. Raises JobError and UnreadableError."""
    sheet = sheet_of(asked)
    unit = read_unit_sheet(*asked.must("unit_sheet"))
    meter = asked.text_of("meter_sheet") if sheet.meter_file else None
    limits_V = recording_limits_V(sheet.vehicle.system_V, unit.supply.least_V)
    return JobEvidence(
        sheet=sheet,
        unit=unit,
        meter=meter_for(sheet, None if meter is None else meter[0]),
        table=asked.state.table,
        recordings=tuple(_recordings(asked, limits_V)),
        buses=buses_of(asked.state),
        walkround=_walkround(asked),
        mount=_mount(asked),
        policy=_policy(asked),
        proving=replace(proving_of(asked.state, _reports(asked, sheet)), corners=asked.corners),
        sign_off=_sign_off(asked, wanted=sheet.hand_over is not None),
        disputes=tuple(matters(asked.state)),
        has_lamp=NO_LAMP not in (asked.state.slots[LAMP_SLOT].values if LAMP_SLOT in asked.state.slots else ()),
        units=unit_findings(asked.state),
        receptions=receptions_of(asked.state),
    )


def _sign_off(asked: Asked, *, wanted: bool) -> Finding | None:
    return finding_as_told(_lines(asked), asked.signatures, wanted=wanted)


def _lines(asked: Asked) -> tuple[Line, ...]:
    """The journal's lines, where anybody has signed: else nothing is asked of them."""
    if not any(entry.kind == SIGN_OFF for entry in asked.entries):
        return ()
    return tuple(Line(number, entry) for number, entry in enumerate(by_device(asked.entries), 1))


def matters(state: JobState) -> Iterator[str]:
    """What a journal leaves open, in words."""
    yield from (f"entry {dispute.about} was corrected in two ways" for dispute in state.disputes)
    yield from (f"{slot.name}: {' or '.join(slot.values)}" for slot in state.open_slots)
    yield from (f"entry {odd.id} ({odd.kind}) is kept but not understood: {odd.why}" for odd in state.unknown)
    yield from (f"entry {name} is named by another and has not arrived" for name in state.awaited)


def asked_in(parts: Parts) -> Asked:
    """What a browser asks about, out of its JSON. Raises JobError and JournalError."""
    entries = tuple(unique(read_entry(raw.encode("utf-8")) for raw in _texts(parts, "entries")).values())
    return Asked(
        state=fold(entries),
        blobs=parts.texts("blobs"),
        entries=entries,
        signatures=_flags(parts, "signatures"),
        corners=_corners(parts.maybe(CORNERS)),
    )


def _corners(index: str | None) -> CornerIndex | None:
    return None if index is None else read_corner_index(index, file=CORNERS)


def _answer(parts: Parts) -> dict[str, object]:
    asked = asked_in(parts)
    judged = judge_job(evidence_of(asked))
    journal = {"settled": asked.state.settled, "open": list(matters(asked.state))}
    return {
        **judgement_json(judged),
        "journal": journal,
        "setup": _setup(judged),
        "leads": {lead.name: str(standing_of_lead(judged.findings, lead)) for lead in judged.evidence.unit.leads},
        "body_builder": _at_body_builder(judged.evidence),
        "ends": ends_json(judged.findings, judged.evidence.sheet.hand_over),
        "signed": signed_as_told(_lines(asked), asked.signatures),
    }


def _at_body_builder(evidence: JobEvidence) -> list[str]:
    """The wires that are known to be at a body-builder connector: of a joint there nobody asks why it was made so."""
    return [wire.name for wire in with_circuits(evidence.sheet, evidence.table.facts).wires if at_body_builder(wire)]


def _setup(judged: JobJudgement) -> dict[str, object]:
    """The key positions that this vehicle has, in the order of the key, and what the meter can hold."""
    setup = without_absent(judged.probe.result.setup, judged.evidence.table.absent_keys)
    lacking = {*setup.absent_keys}
    lacking |= {Key.CHARGING} if setup.has_crank else {Key.CRANK}
    lacking |= set() if setup.has_accessory else {Key.ACCESSORY}
    lacking |= set() if judged.evidence.sheet.vehicle.battery_switch else {Key.ISOLATED}
    return {
        "system_V": setup.system_V,
        "keys": [str(key) for key in Key if key not in lacking],
        "captures": [str(capture) for capture in Capture if capture in setup.captures],
        "meter": judged.evidence.meter.name,
    }


def sheet_of(asked: Asked) -> JobSheet:
    """The job sheet with what the journal has added since: where wires stand, what they are meant for, the meter."""
    sheet = read_job(*asked.must("job"))
    slots = {name: slot.value for name, slot in asked.state.slots.items() if slot.value is not None}
    vehicle = replace(sheet.vehicle, vin=slots.get("vin", sheet.vehicle.vin))
    meter = slots.get(METER_SLOT)
    if meter in METERS:
        sheet = replace(sheet, meter_class=meter, meter_file=None)
    serial = slots.get("serial", sheet.unit_serial)
    return replace(sheet, vehicle=vehicle, unit_serial=serial, wires=tuple(_wires(sheet, asked.state, slots=slots)))


def _wires(sheet: JobSheet, state: JobState, *, slots: Mapping[str, str]) -> Iterator[NamedWire]:
    meant = {wire: TAPS[slot] for slot, wire in slots.items() if slot in TAPS}
    decided = set(meant.values())
    named = {wire.name: wire for wire in sheet.wires}
    for one in state.of_kind("wire_declared"):
        name = text(one.body, "wire") or ""
        known = named.get(name, NamedWire(name=name))
        connector, cavity, colour = (text(one.body, place) for place in PLACES)
        named[name] = replace(
            known,
            connector=connector or known.connector,
            cavity=cavity or known.cavity,
            colour=colour or known.colour,
        )
    for name, wire in named.items():
        lead = meant.get(name, None if wire.lead in decided else wire.lead)
        yield replace(wire, lead=lead)


def _mount(asked: Asked) -> MountSheet | None:
    found = asked.text_of("mount")
    return None if found is None else read_mount(*found)


def _policy(asked: Asked) -> FleetPolicy | None:
    found = asked.text_of("policy")
    return None if found is None else read_policy(*found)


def _walkround(asked: Asked) -> Walkround | None:
    found = asked.text_of("walkround")
    return None if found is None else read_walkround(*found)


def _reports(asked: Asked, sheet: JobSheet) -> ReportsTable | None:
    """The unit's reports, of all files that the journal names; None where none of them is on this device."""
    texts = [asked.blobs.get(text(one.body, "sha256") or "") for one in asked.state.of_kind("reports")]
    return together(
        [
            read_reports(lines_in(held), file=REPORTS, names=sheet.report_names, may_be_empty=True)
            for held in dict.fromkeys(texts)
            if held is not None
        ]
    )


def _recordings(asked: Asked, limits_V: tuple[float, ...]) -> Iterator[Recording]:
    for one in asked.state.of_kind("recording"):
        held = asked.blobs.get(text(one.body, "sha256") or "")
        if held is not None:
            name = (text(one.body, "file") or "").rpartition("/")[2]
            yield read_recording(partial(lines_in, held), file=name, thresholds_V=limits_V)


def _texts(parts: Parts, name: str) -> list[str]:
    found = parts.values.get(name)
    if not isinstance(found, list) or not all(isinstance(each, str) for each in found):
        raise JobError(f"{name}: a list of texts is expected")
    return found


def _flags(parts: Parts, name: str) -> dict[str, bool]:
    found = parts.values.get(name) or {}
    if not isinstance(found, dict) or not all(isinstance(each, bool) for each in found.values()):
        raise JobError(f"{name}: an object of ids and true or false is expected")
    return found
