"""A job folder into the server's store: the same entries, the same files, as often as one likes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from backprobe.cases.content import TEXT, content_type
from backprobe.cases.hand_in_file import MOST_BYTES
from backprobe.cases.import_folder import Imported, import_folder
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Deed
from backprobe.cases.new_job import must_be_here
from backprobe.cases.sync import keep
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import JobError, JournalError, RefusedError
from backprobe.files.blobs import BLOBS, is_kept
from backprobe.job.entry import Entry
from backprobe.store import blobs, entries, jobs
from backprobe.store.entries import Held

OWNER = "folder"
CHUNK_BYTES = 1_048_576


@dataclass(frozen=True, slots=True, kw_only=True)
class HandedIn:
    """The job, how many of its entries and files are `new` to the store, and what the technician is to be told."""

    job: str
    new_entries: int
    new_files: int
    notes: tuple[str, ...]


def hand_in_folder(yard: Yard, caller: Caller, *, folder: Path, people_ids: Sequence[str] = ()) -> HandedIn:
    """Read a job folder as `judge` does, and give its journal and files to the store.

    The job is given to `people_ids` too where it is new. Raises InputError for a bad folder, JobError where a file
    cannot be read, RefusedError where the store holds another entry under the id of one of these.
    """
    caller.must(Deed.MAKE_JOBS)
    found = import_folder(folder)
    at = now()
    new_files = sum(_hand_in_blob(yard, folder, sha256=sha256, at=at) for sha256 in _named(found))
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        must_be_here(held, people_ids)
        fresh = _fresh(held, found.journal.entries)
        begun = jobs.row_of(connection, caller.organisation, job_id=found.job) is None
        keep(held, fresh, caller=caller, at=at)
        if begun:
            jobs.assign(connection, caller.organisation, job_id=found.job, people=people_ids)
        elif new_files:
            jobs.judge_again(connection, caller.organisation, jobs=[found.job])
    judge_again(yard, caller.organisation, job_id=found.job)
    return HandedIn(job=found.job, new_entries=len(fresh), new_files=new_files, notes=found.notes)


def _fresh(held: Held, journal: Sequence[Entry]) -> list[Entry]:
    """The entries that the store lacks, in the journal's order."""
    known = entries.known(held, [entry.id for entry in journal])
    for entry in journal:
        if known.get(entry.id, entry.digest) != entry.digest:
            raise RefusedError(f"{entry}: another entry bears this id; nothing was taken", code="id_taken")
    return [entry for entry in journal if entry.id not in known]


def _named(found: Imported) -> list[str]:
    """The blobs that the journal names and that are in the folder."""
    named = {sha256 for entry in found.journal.entries for sha256 in entry.blobs}
    return sorted(sha256 for sha256 in named if is_kept(found.folder.path, sha256))


def _hand_in_blob(yard: Yard, folder: Path, *, sha256: str, at: str) -> bool:
    """Whether a file was new. Raises JobError where it cannot be read, JournalError where it is not what it was."""
    source = folder / BLOBS / sha256
    is_new = yard.blobs.path(sha256) is None
    try:
        size_bytes = source.stat().st_size
        if is_new:
            _copy(yard, source, sha256=sha256)
    except OSError as fault:
        raise JobError(f"{source} cannot be read: {fault.strerror or fault}") from None
    row = {"organisation": yard.organisation, "sha256": sha256, "bytes": size_bytes, "type": _type(source)}
    with yard.store.writing() as connection:
        blobs.note(connection, {**row, "kept_at": at, "phone": None, "quarantined": False})
    return is_new


def _copy(yard: Yard, source: Path, *, sha256: str) -> None:
    if source.stat().st_size > MOST_BYTES:
        raise RefusedError(f"{source}: at most {MOST_BYTES // 1_000_000} MB", code="too_large")
    yard.blobs.drop(OWNER, sha256)
    offset = yard.blobs.append(OWNER, sha256, offset=0, piece=b"")
    with source.open("rb") as file:
        while piece := file.read(CHUNK_BYTES):
            offset = yard.blobs.append(OWNER, sha256, offset=offset, piece=piece)
    if not yard.blobs.matches(OWNER, sha256):
        yard.blobs.drop(OWNER, sha256)
        raise JournalError(f"{source}: its bytes are not those that bore this digest")
    yard.blobs.finish(OWNER, sha256)


def _type(source: Path) -> str:
    """The type of a file by its content; what is neither picture nor text is handed out as a plain file."""
    try:
        return content_type(source)
    except RefusedError:
        return "application/octet-stream" if source.stat().st_size else TEXT
