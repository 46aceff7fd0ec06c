"""The record of a job that the server holds: set by the same hands as that of a folder, over the entries themselves.

A passing folder is laid out with the journal and the files, under names that are ours: nothing that a sheet names is
ever opened.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from backprobe.cases.held_job import HeldJob
from backprobe.cases.import_folder import Imported, ProveFiles
from backprobe.cases.judge import JudgedFolder
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Deed
from backprobe.cases.photos import photos_of
from backprobe.cases.record import record_of
from backprobe.cases.signing_keys import signers
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.files.blobs import BLOBS
from backprobe.files.folder import JOB_SHEET, PHOTOS, JobFolder
from backprobe.files.journal_file import JOURNAL
from backprobe.job.entry import is_sha256
from backprobe.job.judge import JobJudgement
from backprobe.job.kinds import text
from backprobe.store import jobs

MOST_PHOTOS = 60  # more are not looked at; the record shows a dozen and says how many there are


def held_record(yard: Yard, caller: Caller, *, job_id: str) -> bytes:
    """The record as a PDF; a phone gets that of a job of its person.

    Raises RefusedError where there is no such job, or none that can be judged yet.
    """
    _must_read(yard, caller, job_id=job_id)
    held = judge_again(yard, caller.organisation, job_id=job_id)
    if held is None:
        raise RefusedError("there is no such job", code="not_found")
    if held.judged is None:
        raise RefusedError(f"there is no record yet: {held.fault}", code="unreadable")
    with yard.store.reading() as connection:
        known = signers(connection, caller.organisation)
    with TemporaryDirectory(prefix="backprobe-record-") as folder:
        job = _laid_out(yard, held, judged=held.judged, folder=Path(folder))
        return record_of(replace(job, signers=known), made_at=now())


def _must_read(yard: Yard, caller: Caller, *, job_id: str) -> None:
    """Raise RefusedError where the caller may not see the job; of a job of others it is not said that there is one."""
    if caller.may(Deed.READ_ALL_JOBS):
        return
    caller.must(Deed.READ_OWN_JOBS)
    with yard.store.reading() as connection:
        if not jobs.works_on(connection, caller.organisation, person_id=caller.person or "", jobs=[job_id]):
            raise RefusedError("there is no such job", code="not_found")


def _laid_out(yard: Yard, held: HeldJob, *, judged: JobJudgement, folder: Path) -> JudgedFolder:
    """The job as a judged folder."""
    (folder / JOURNAL).write_bytes(b"".join(entry.raw + b"\n" for entry in held.entries))
    (folder / BLOBS).mkdir()
    (folder / PHOTOS).mkdir()
    for sha256 in {blob for entry in held.entries for blob in entry.blobs}:
        _linked(yard, sha256, to=folder / BLOBS / sha256)
    evidence = judged.evidence
    found = JobFolder(
        path=folder,
        job_sheet=folder / JOB_SHEET,
        readings=None,
        walkround=None,
        recordings=(),
        photos=tuple(_photos(yard, held, folder=folder)),
    )
    imported = Imported(
        folder=found,
        job=held.id,
        sheet=evidence.sheet,
        unit=evidence.unit,
        walkround=evidence.walkround,
        table=held.state.table,
        prove=ProveFiles(),
        journal=held.journal,
        state=held.state,
        added={},
        notes=tuple(str(fault) for fault in held.journal.faults),
    )
    return JudgedFolder(imported=imported, judged=judged, photos=photos_of(imported))


def _photos(yard: Yard, held: HeldJob, *, folder: Path) -> Iterator[Path]:
    """The photos that are kept, each under its own name as far as that is a plain one."""
    for one in held.state.of_kind("photo")[:MOST_PHOTOS]:
        name, sha256 = (text(one.body, "file") or "").removeprefix(f"{PHOTOS}/"), text(one.body, "sha256") or ""
        path = folder / PHOTOS / name
        plain = name.isprintable() and "/" not in name and not name.startswith(".") and 0 < len(name.encode()) < 200
        if plain and not path.exists() and _linked(yard, sha256, to=path):
            yield path


def _linked(yard: Yard, sha256: str, *, to: Path) -> bool:
    """Lay a kept file out; whether there is one."""
    kept = yard.blobs.path(sha256) if is_sha256(sha256) else None
    if kept is None:
        return False
    to.symlink_to(kept.resolve())
    return True
