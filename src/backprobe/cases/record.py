"""The record of a judged job folder: what stands on the page, with the journal inside."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from backprobe import __version__
from backprobe.cases.import_folder import Imported
from backprobe.cases.judge import JudgedFolder, journal_bytes
from backprobe.cases.record_built import joined_rows, more_photos, not_covered, owed_rows, shown_photos, told_driver
from backprobe.cases.record_bus import bus_pictures
from backprobe.cases.record_proof import elsewhere, reported_block
from backprobe.cases.record_reception import together
from backprobe.cases.signed_job import blob_bytes, sign_offs_of, signer_name, standing
from backprobe.evidence.hand_over import End
from backprobe.evidence.job_sheet import NamedWire
from backprobe.evidence.meter import Meter
from backprobe.files.journal_file import JOURNAL
from backprobe.findings import Finding, Verdict
from backprobe.job.entry import digest
from backprobe.job.judge import JobJudgement
from backprobe.job.mount_picture import SKY, job_sky
from backprobe.job.parked_picture import parked_picture
from backprobe.job.picture import crank_picture
from backprobe.job.readings_grid import readings_grid
from backprobe.job.sign_off import SignOff, grouped
from backprobe.job.signed import FINDING, is_due
from backprobe.job.wiring import wiring_picture
from backprobe.paper.content import Attachment, ChoiceRow, IdentityRow, Picture, RecordContent, SignOffBlock
from backprobe.paper.record import write_record
from backprobe.stages.hand_over.ending import DRIVER, ENDING, MISSING, told
from backprobe.stages.probe.slots import SlotName

SENTENCE = {
    Verdict.HOLDS: "Everything that was measured is inside its limits.",
    Verdict.THIN: "Everything shown is inside its limits, but not all that the evidence allows.",
    Verdict.FAILS: "Something is outside its limit: do not hand this vehicle over as it is.",
    Verdict.OPEN: "Evidence is still missing.",
}
NOT_SIGNED = "Nobody has signed this record."
TITLE, TITLE_SO_FAR = "Installation record: handed over as {end}", "Installation record so far"
TITLE_ABANDONED = "Record of an installation that was abandoned"
ABANDONED = "The work was abandoned: use nothing of what was found for a unit."
URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN, Verdict.HOLDS)
CRANK = "The crank, as it was recorded"
BESIDE = 460.0  # of a picture with a narrow one beside it
STANDING = "How long it can stand"
HEARD = "What the receiver heard"
CAUTIONS = (
    "The vehicle maker's instructions, local rules and licensed practice come before anything written here.",
    "Never tap restraint (airbag), brake, steering, engine-control, start, bus or high-voltage wiring.",
)


def record_of(job: JudgedFolder, *, made_at: str | None = None) -> bytes:
    """The record as a PDF, with the journal inside; `made_at` is when it is made (ISO 8601), None where not known."""
    judged = job.judged
    journal = journal_bytes(job.imported)
    sign_off = standing(job.imported)
    return write_record(
        RecordContent(
            title=TITLE_SO_FAR if sign_off is None else title_of(sign_off.judged.end),
            verdict=judged.verdict,
            sentence=f"{sentence_of(judged)} {tally(judged.findings)}",
            next_step=judged.next,
            identity=identity_of(job),
            choices=tuple(choice_row(judged, slot) for slot in SlotName),
            findings=_on_page(together(elsewhere(judged.findings, judged)), signed=sign_off is not None),
            reported=reported_block(judged),
            wiring=_picture(wiring_picture(judged)),
            readings=readings_grid(judged),
            pictures=(*_pictures(judged), *bus_pictures(job.imported)),
            photos=shown_photos(job.photos),
            joined=joined_rows(judged),
            owed=owed_rows(judged.evidence.sheet.hand_over),
            driver_told=told_driver(judged.evidence.sheet.hand_over),
            notes=tuple(notes_of(job, signed=sign_off is not None)),
            journal=journal,
            journal_name=JOURNAL,
            journal_digest=digest(journal),
            engine_version=__version__,
            sign_off=None if sign_off is None else sign_off_block(job.imported, sign_off, signers=job.signers),
            attached=tuple(_attached(job.imported)),
            made_at=made_at,
        )
    )


def title_of(end: str) -> str:
    """The title of a signed record.

    >>> title_of("proven")
    'Installation record: handed over as proven'
    """
    return TITLE_ABANDONED if end == End.ABANDONED else TITLE.format(end=end)


def sentence_of(judged: JobJudgement) -> str:
    """What the verdict means for whoever takes the vehicle back; of a job that was given up, that it was."""
    hand_over = judged.evidence.sheet.hand_over
    given_up = hand_over is not None and hand_over.end is End.ABANDONED
    return ABANDONED if given_up else SENTENCE[judged.verdict]


def tally(findings: Sequence[Finding]) -> str:
    """How many findings come to which verdict, in one sentence; nothing where there is none.

    The finding on the sign-off is not counted, so that the figures are those that were signed.

    >>> tally([])
    ''
    """
    findings = [each for each in findings if each.id != FINDING]
    counts = Counter(each.verdict for each in findings)
    if not counts:
        return ""
    if len(counts) == 1:
        return f"All {len(findings)} findings {_COUNTED[min(counts)][1]}."
    parts = [f"{counts[each]} {_COUNTED[each][counts[each] > 1]}" for each in URGENCY if counts[each]]
    return f"Of {len(findings)} findings {', '.join(parts)}."


_COUNTED = {
    Verdict.FAILS: ("fails", "fail"),
    Verdict.OPEN: ("is open", "are open"),
    Verdict.THIN: ("is thin", "are thin"),
    Verdict.HOLDS: ("holds", "hold"),
}


def _pictures(judged: JobJudgement) -> Iterator[Picture]:
    """The pictures beside the wiring: the crank that was recorded, how long the vehicle can stand, the unit's sky.

    One sky alone is narrow: then the others stand beside it, and are narrower too.
    """
    sky = _picture(job_sky(judged.mounted, judged.evidence.receptions))
    predicted = judged.mounted is not None and judged.mounted.chosen is not None
    both = predicted and any(log.bins for log in judged.evidence.receptions)
    half = sky is not None and not both
    crank = _picture(crank_picture(judged, width=BESIDE) if half else crank_picture(judged))
    parked = _picture(parked_picture(judged, width=BESIDE) if half else parked_picture(judged))
    titled = ((crank, CRANK), (parked, STANDING), (sky, SKY if predicted else HEARD))
    yield from (replace(shown, title=title, half=half) for shown, title in titled if shown is not None)


def _picture(found: tuple[str, str, str] | None) -> Picture | None:
    return None if found is None else Picture(svg=found[0], caption=found[1], alt=found[2])


def notes_of(job: JudgedFolder, *, signed: bool) -> list[str]:
    """What the record does not cover, cautions, and what could not be read or shown."""
    unsigned = [] if signed else [NOT_SIGNED]
    said = [*not_covered(job.judged.findings), *unsigned, *CAUTIONS, *left_out(job.judged)]
    return [*said, *more_photos(job.photos), *job.notes]


def _on_page(findings: tuple[Finding, ...], *, signed: bool) -> tuple[Finding, ...]:
    """The findings on the page, what fails first; what the sign-off, or its lack, says does not stand there twice."""
    shown = [each for each in findings if not is_due(each) and (not signed or each.id not in (ENDING, FINDING))]
    return tuple(sorted(shown, key=lambda each: URGENCY.index(each.verdict)))


def sign_off_block(imported: Imported, sign_off: SignOff, *, signers: Mapping[str, str]) -> SignOffBlock:
    """The sign-off on the page: how the job ended, who signed, when, with which key, and who vouches for that."""
    ended = imported.sheet.hand_over
    entry = sign_off.entry
    said = {} if ended is None else told(ended)
    lines = [f"{name}: {', '.join(items)}" for name, items in said.items() if items and name not in (DRIVER, MISSING)]
    at = None if entry.at is None else entry.at.replace("T", " ").replace("Z", " UTC")
    known = signers.get(sign_off.key)
    when = "at a time not known" if at is None else f"{at} by the signing device's clock"
    return SignOffBlock(
        end=sign_off.judged.end,
        lines=tuple(lines),
        signed=f"Signed by {signer_name(imported, sign_off)}, {when}, over {sign_off.entries} entries of the journal."
        + (f" By the yard's list of keys it is {known}'s key." if known else ""),
        key=grouped(sign_off.fingerprint),
    )


def _attached(imported: Imported) -> Iterator[Attachment]:
    """What the last sign-off was made over, as far as it is at hand."""
    for last in sign_offs_of(imported)[-1:]:
        for (name, sha256), what in zip(last.sign_off.blobs.items(), WHAT_WAS_SIGNED, strict=True):
            content = blob_bytes(imported, sha256)
            if content is not None:
                yield Attachment(name, content, what)


WHAT_WAS_SIGNED = (
    "The findings that were signed",
    "How the job ended, as it was signed",
    "The digests of the entries that were signed, one a line",
)


def identity_of(job: JudgedFolder) -> tuple[IdentityRow, ...]:
    """Who, what and where, as far as it is known."""
    sheet = job.judged.evidence.sheet
    vehicle = sheet.vehicle
    named = " ".join(part for part in (vehicle.maker, vehicle.model, str(vehicle.model_year or "")) if part)
    unit = " ".join(part for part in (job.judged.evidence.unit.name, sheet.unit_serial) if part)
    rows = (
        ("Job", job.imported.job),
        ("VIN", vehicle.vin),
        ("Fleet number", vehicle.fleet_number),
        ("Plate", vehicle.plate),
        ("Vehicle", ", ".join(part for part in (named, f"{vehicle.system_V} V") if part)),
        ("Unit", unit),
        ("Yard", sheet.yard),
        ("Technician", sheet.technician),
        ("Date of the work", sheet.date),
        ("Meter", meter_text(job.judged.evidence.meter)),
    )
    return tuple(IdentityRow(label, value) for label, value in rows if value)


def meter_text(meter: Meter) -> str:
    """The meter with its accuracy on direct voltage, in percent of the reading and counts.

    >>> meter_text(Meter(name="basic", percent=0.5, counts=2))
    'basic ±(0.5 % + 2)'
    """
    return f"{meter.name} ±({meter.percent:g} % + {meter.counts:g})"


def left_out(judged: JobJudgement) -> list[str]:
    """What could not be read, in numbers: the journal keeps what was written there."""
    counts = [("readings.csv", len(judged.probe.skipped))]
    counts += [(each.recording.name, each.recording.skipped_count) for each in judged.heard]
    return [f"{file}: {count} of its lines could not be read" for file, count in counts if count]


def choice_row(judged: JobJudgement, slot: SlotName) -> ChoiceRow:
    """The wire for one lead of the unit, where it runs, and what must be said beside it."""
    name = judged.chosen(slot)
    if name is None:
        return ChoiceRow(lead=str(slot), wire=None, note=_why_none(judged.findings, slot))
    known = next((wire for wire in judged.evidence.sheet.wires if wire.name == name), None)
    return ChoiceRow(lead=str(slot), wire=name, place=None if known is None else _place(known))


def _place(wire: NamedWire) -> str | None:
    """Where a wire runs: connector, cavity, colour and size, as far as they are known."""
    cavity = f"cavity {wire.cavity}" if wire.cavity else None
    return ", ".join(part for part in (wire.connector, cavity, wire.colour, wire.size) if part) or None


def _why_none(findings: tuple[Finding, ...], slot: SlotName) -> str | None:
    """The first thing that keeps a slot from being filled."""
    on_slot = [finding for finding in findings if finding.id.startswith(f"{slot}_")]
    for verdict in (Verdict.FAILS, Verdict.OPEN, Verdict.THIN):
        for finding in on_slot:
            if finding.verdict is verdict:
                return f"{finding.what}: {finding.because}"
    return None
