"""A job folder into its journal: what is new or changed since the last time, and nothing else."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from backprobe import __version__
from backprobe.cases.bus import listen_to
from backprobe.errors import JobError, JournalError, Skipped
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.mount_sheet import MountSheet
from backprobe.evidence.photo import NamedPhoto
from backprobe.evidence.reading import ReadingsTable
from backprobe.evidence.report import ReportsTable
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.evidence.walkround import Walkround
from backprobe.files.blobs import BLOBS, MOST_BLOB_BYTES, Blob, is_kept, put_bytes, put_file
from backprobe.files.folder import (
    MOUNT,
    PHOTOS,
    READINGS,
    RECEIVER_LOGS,
    RECORDINGS,
    WALKROUND,
    JobFolder,
    open_folder,
)
from backprobe.files.journal_file import JOURNAL, JournalFile, held_journal
from backprobe.files.log_lines import log_lines
from backprobe.files.open import small_text, text_lines
from backprobe.formats.job_toml import read_job
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.lights_csv import read_lights
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.policy_toml import POLICY
from backprobe.formats.readings_csv import read_readings
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.formats.walkround_toml import read_walkround
from backprobe.job.bus import known_logs, log_body
from backprobe.job.canonical import Body, canonical
from backprobe.job.changes import changes
from backprobe.job.entry import digest
from backprobe.job.fold import JobState, fold
from backprobe.job.ids import folder_id
from backprobe.job.journal import Draft, Journal, continued
from backprobe.job.kinds import LIGHTS, RECEPTION, REPORTS, SCRIPT
from backprobe.job.prove_rows import light_rows, script_rows
from backprobe.job.receptions import figures_of, known_figures
from backprobe.job.rows import Row, plain, rows_of, short_name
from backprobe.stages.mount.reception.listen import reception_of

UNIT_SHEET = "the unit's sheet"
WHAT_TO_DO = (
    f"nothing was written. Put {JOURNAL} back from a copy; or take it out of the folder and import again: what this "
    "folder says comes back, what phones have added does not"
)
LARGE = ("recording", "photo", "reports", RECEPTION)  # kinds of files that may be too large to keep
DEVICE = "folder"  # what imports from a folder call themselves in the journal


@dataclass(frozen=True, slots=True, kw_only=True)
class Imported:
    """A job folder as read, and its journal with everything in it.

    `walkround` and `mount` are None where nobody wrote one. `table` is the readings table as the file has it now,
    `prove` what the proof rests on as its files have it, `state` the fold of the whole journal, which may hold what
    phones have added. `added` counts the new entries by kind; `notes` are for the technician: what was mended, passed
    over, missing or too large.
    """

    folder: JobFolder
    job: str
    sheet: JobSheet
    unit: UnitSheet
    walkround: Walkround | None
    mount: MountSheet | None = None
    table: ReadingsTable
    prove: ProveFiles
    journal: Journal
    state: JobState
    added: Mapping[str, int]
    notes: tuple[str, ...]


def import_folder(folder: Path) -> Imported:
    """Read the job folder and add to its journal what the journal does not yet say.

    Bad input (InputError, with file and line) leaves the journal as it was; sheets and readings are read before
    anything is written. Files are kept in `blobs/` before an entry names them. Raises JournalError where the journal
    is damaged.
    """
    found = open_folder(folder)
    with held_journal(folder) as held:
        sheet = read_job(small_text(found.job_sheet), found.job_sheet.name)
        unit = read_unit_sheet(small_text(found.named(sheet.unit_sheet, UNIT_SHEET)), sheet.unit_sheet)
        walked = read_walkround(small_text(found.walkround), WALKROUND) if found.walkround else None
        places = read_mount(small_text(found.mount), MOUNT) if found.mount else None
        meter = found.named(sheet.meter_file, "the meter's figures") if sheet.meter_file else None
        table, prove = _table(found, sheet), _prove_files(found, sheet)
        said = (*rows_of(table, READINGS), *prove.rows())
        before = fold(_sound(held.journal).entries)
        job = _job_id(found, sheet, before=before)
        kept = {blob for entry in held.journal.entries for blob in entry.blobs}
        keeper = _Keeper(folder, before.erased, kept, heard=known_logs(before))
        files = tuple(_files(found, sheet, photos=named_photos(sheet, walked), meter=meter, job=job, keeper=keeper))
        logs = tuple(_receiver_logs(found, keeper=keeper, known=known_figures(before)))
        drafts = _appended(held, (*files, *logs, *said), job=job)
    state = fold(held.journal.entries) if drafts else before
    return Imported(
        folder=found,
        job=job,
        sheet=sheet,
        unit=unit,
        walkround=walked,
        mount=places,
        table=table,
        prove=prove,
        journal=held.journal,
        state=state,
        added=Counter(draft.kind for draft in drafts),
        notes=(*held.notes, *_passed_over(found), *keeper.notes, *_missing(folder, held.journal, erased=state.erased)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ProveFiles:
    """What was done with the key, what the unit reported, and what its lights showed, each as its file has it now.

    None where there is no such file. The first two may be unfinished.
    """

    script: KeyScript | None = None
    reports: ReportsTable | None = None
    lights: tuple[LightSeen, ...] = ()
    skipped: tuple[Skipped, ...] = ()  # of the lights

    def rows(self) -> Iterator[Row]:
        """What the journal is to say of them, row by row; reports are kept as a file."""
        if self.script is not None:
            yield from script_rows(self.script)
        yield from light_rows(self.lights, self.skipped)


@dataclass(slots=True)
class _Keeper:
    """Keeps files as blobs and says what each is; `erased` are not kept again, `known` are in the journal already."""

    folder: Path
    erased: frozenset[str]
    known: set[str]
    heard: Mapping[str, Body] = field(default_factory=dict)  # what bus logs came to, by their digests
    notes: list[str] = field(default_factory=list)

    def file(self, kind: str, path: Path, *, written: str, more: Body | None = None) -> Row:
        """The row of a file that the folder calls `written`."""
        blob = put_file(self.folder, path, without=self.erased)
        if blob.size_bytes > MOST_BLOB_BYTES:
            limit = f"{MOST_BLOB_BYTES // 1_000_000} MB"
            self.notes.append(f"{written} is larger than {limit}: the journal knows it by name and digest only")
        body: Body = {"file": plain(written), "sha256": blob.sha256, "bytes": blob.size_bytes, **(more or {})}
        return self._row(kind, body | ({"stored": blob.stored} if kind in LARGE else {}), blob=blob)

    def bus_log(self, path: Path, *, written: str) -> Row:
        """The row of a bus log with what it came to; one that the journal knows already is not listened to again."""
        row = self.file("bus_log", path, written=written)
        heard = self.heard.get(str(row.body["sha256"])) or log_body(listen_to(path).heard)
        return replace(row, body={**row.body, "stored": bool(row.blobs), "heard": heard})

    def person(self, name: str, job: str) -> Row:
        """The row of a person; the name itself stands in the blob alone, so that it can be erased."""
        blob = put_bytes(self.folder, canonical({"job": job, "name": name}), without=self.erased)
        return self._row("person", {"sha256": blob.sha256}, blob=blob)

    def _row(self, kind: str, body: Body, *, blob: Blob) -> Row:
        if blob.new and blob.sha256 in self.known:
            self.notes.append(f"{BLOBS}/{blob.sha256} was missing and is back ({body.get('file', kind)})")
        return Row(kind, body, (blob.sha256,) if blob.stored else ())


def named_photos(sheet: JobSheet, walked: Walkround | None) -> tuple[NamedPhoto, ...]:
    """What is said of photos: by the job sheet first, then by the walkround of those that the sheet does not name."""
    of_sheet = {photo.file for photo in sheet.photos}
    return (*sheet.photos, *(photo for photo in (walked.photos if walked else ()) if photo.file not in of_sheet))


def _files(
    found: JobFolder,
    sheet: JobSheet,
    *,
    photos: Sequence[NamedPhoto],
    meter: Path | None,
    job: str,
    keeper: _Keeper,
) -> Iterator[Row]:
    """The person, and each of the folder's files."""
    claims: Body = {"vin": short_name(sheet.vehicle.vin, "vin"), "serial": short_name(sheet.unit_serial, "serial")}
    if sheet.technician:
        yield keeper.person(sheet.technician, job)
    yield keeper.file("job", found.job_sheet, written=found.job_sheet.name, more=claims)
    unit = found.named(sheet.unit_sheet, UNIT_SHEET)
    yield keeper.file("unit_sheet", unit, written=sheet.unit_sheet)
    if meter and sheet.meter_file:
        yield keeper.file("meter_sheet", meter, written=sheet.meter_file)
    if found.walkround:
        yield keeper.file("walkround", found.walkround, written=WALKROUND)
    if found.mount:
        yield keeper.file("mount", found.mount, written=MOUNT)
    if (found.path / POLICY).is_file():
        yield keeper.file("policy", found.path / POLICY, written=POLICY)
    if found.readings:
        yield keeper.file("readings_file", found.readings, written=READINGS)
    if found.script:
        yield keeper.file("script_file", found.script, written=SCRIPT)
    if found.reports:
        yield keeper.file("reports", found.reports, written=REPORTS)
    if found.lights:
        yield keeper.file("lights_file", found.lights, written=LIGHTS)
    for path in found.recordings:
        yield keeper.file("recording", path, written=f"{RECORDINGS}/{path.name}")
    for path in found.buses:
        yield keeper.bus_log(path, written=path.relative_to(found.path).as_posix())
    shows = {photo.file: str(photo.shows) for photo in photos}
    for path in found.photos:
        written = f"{PHOTOS}/{path.name}"
        yield keeper.file("photo", path, written=written, more={"shows": shows.get(written)})


def _receiver_logs(found: JobFolder, *, keeper: _Keeper, known: Mapping[str, Body]) -> Iterator[Row]:
    """Each receiver's log with its figures; one that the journal knows already is not listened to again."""
    for path in found.receiver_logs:
        written = path.name if path.parent == found.path else f"{RECEIVER_LOGS}/{path.name}"
        row = keeper.file(RECEPTION, path, written=written)
        figures = known.get(str(row.body["sha256"])) or figures_of(reception_of(log_lines(path)(), file=path.name))
        yield replace(row, body={**row.body, "figures": figures})


def _appended(held: JournalFile, rows: Sequence[Row], *, job: str) -> tuple[Draft, ...]:
    """What was added to the journal to make it say `rows`."""
    own = (entry for entry in held.journal.entries if entry.device == DEVICE)
    drafts = changes(own, rows, job=job)
    held.append(continued(held.journal, drafts, job=job, device=DEVICE, engine=__version__))
    return drafts


def _job_id(found: JobFolder, sheet: JobSheet, *, before: JobState) -> str:
    """The job's id: as the sheet gives it, else as the journal has it, else made of the folder's name and the sheet."""
    if before.job and sheet.id and sheet.id != before.job:
        raise JobError(
            f"{JOURNAL} is that of job {before.job!r}, {found.job_sheet.name} says {sheet.id!r}\n"
            f"expected: the same id; if this folder began as a copy of another job's, take {JOURNAL} and {BLOBS} out"
        )
    name = plain(found.path.resolve().name)
    return sheet.id or before.job or folder_id(name, digest(found.job_sheet.read_bytes()))


def _table(found: JobFolder, sheet: JobSheet) -> ReadingsTable:
    if found.readings is None:
        return ReadingsTable()
    return read_readings(text_lines(found.readings)(), file=READINGS, system_V=sheet.vehicle.system_V)


def _prove_files(found: JobFolder, sheet: JobSheet) -> ProveFiles:
    """Reads what the proof rests on, in any state of the work. Raises UnreadableError where a file is no such table."""
    script = reports = None
    lights, skipped = read_lights(text_lines(found.lights)(), file=LIGHTS) if found.lights else ((), ())
    if found.script:
        script = read_key_script(text_lines(found.script)(), file=SCRIPT, finished=False)
    if found.reports:
        lines = text_lines(found.reports)()
        reports = read_reports(lines, file=REPORTS, names=sheet.report_names, may_be_empty=True)
    return ProveFiles(script=script, reports=reports, lights=lights, skipped=skipped)


def _sound(journal: Journal) -> Journal:
    try:
        return journal.sound()
    except JournalError as damage:
        raise JournalError(f"{damage.message}\n{WHAT_TO_DO}") from None


def _passed_over(found: JobFolder) -> Iterator[str]:
    yield from (f"{name} was passed over: not a plain file" for name in found.passed_over)


def _missing(folder: Path, journal: Journal, *, erased: Collection[str]) -> Iterator[str]:
    """The blobs that entries name and that are neither there nor erased on purpose."""
    for entry in journal.entries:
        for blob in entry.blobs:
            if blob not in erased and not is_kept(folder, blob):
                yield f"{BLOBS}/{blob} is missing; {entry} names it"
