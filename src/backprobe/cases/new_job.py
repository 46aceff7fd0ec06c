"""A new job from the desk: its sheets become files, and entries that the server writes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.cases.arrivals import MOST_NAME
from backprobe.cases.hand_in_file import keep_bytes
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Deed
from backprobe.cases.server_words import say
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.unit_claims import settle_units
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.formats.job_toml import read_job
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.job.canonical import Body
from backprobe.job.journal import Draft
from backprobe.job.rows import short_name
from backprobe.store import entries, jobs, people
from backprobe.store.entries import Held

JOB_SHEET = "job.toml"


@dataclass(frozen=True, slots=True)
class NewJob:
    """The texts of a job's sheets, and who is to work on it."""

    job_sheet: str
    unit_sheet: str
    people: tuple[str, ...] = ()


def make_job(yard: Yard, caller: Caller, *, new: NewJob) -> str:
    """Make a job and judge it; its id: the sheet's own, else a fresh one.

    Raises UnreadableError where a sheet cannot be read, RefusedError where the job or a person makes no sense.
    """
    caller.must(Deed.MAKE_JOBS)
    drafts, wanted = drafts_of(yard, new)
    job_id = wanted or fresh_id()
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        begin_job(held, job_id, drafts=drafts, people_ids=new.people, at=now())
    judge_again(yard, caller.organisation, job_id=job_id)
    return job_id


def begin_job(held: Held, job_id: str, *, drafts: Sequence[Draft], people_ids: Sequence[str], at: str) -> None:
    """Write a job's first entries and give it to people. Raises RefusedError where there is such a job."""
    if jobs.row_of(held.connection, held.organisation, job_id=job_id) is not None:
        raise RefusedError(f"there is a job {job_id!r} already", code="exists")
    must_be_here(held, people_ids)
    say(held, drafts, job_id=job_id, at=at)
    jobs.assign(held.connection, held.organisation, job_id=job_id, people=people_ids)
    settle_units(held, job_id, at=at)


def must_be_here(held: Held, people_ids: Sequence[str]) -> None:
    """Raise RefusedError where somebody does not work here."""
    for who in people_ids:
        if people.person_of(held.connection, held.organisation, person_id=who) is None:
            raise RefusedError("there is no such person", code="not_found")


def drafts_of(yard: Yard, new: NewJob) -> tuple[list[Draft], str | None]:
    """What the server says of a new job, and the id that its sheet gives it."""
    sheet = read_job(new.job_sheet, JOB_SHEET)
    read_unit_sheet(new.unit_sheet, sheet.unit_sheet)
    if sheet.id is not None and (len(sheet.id) > MOST_NAME or not sheet.id.isprintable()):
        raise RefusedError(f"job.id: at most {MOST_NAME} printable letters are expected", code="request")
    vehicle = sheet.vehicle
    names: Body = {"vin": short_name(vehicle.vin, "vin"), "serial": short_name(sheet.unit_serial, "serial")}
    return [
        sheet_draft(yard, "job", file=JOB_SHEET, content=new.job_sheet, more=names),
        sheet_draft(yard, "unit_sheet", file=sheet.unit_sheet, content=new.unit_sheet),
    ], sheet.id


def sheet_draft(yard: Yard, kind: str, *, file: str, content: str, more: Body | None = None) -> Draft:
    """The entry that says which file a sheet is; the file is kept before."""
    raw = content.encode("utf-8")
    sha256 = keep_bytes(yard, raw, at=now())
    body: Body = {"file": file, "sha256": sha256, "bytes": len(raw), **(more or {})}
    return Draft(id=fresh_id(), kind=kind, body=body, blobs=(sha256,))


def assign(yard: Yard, caller: Caller, *, job_id: str, people_ids: Sequence[str]) -> None:
    """Give a job to people, and to nobody else. Raises RefusedError."""
    caller.must(Deed.MAKE_JOBS)
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        if jobs.row_of(connection, caller.organisation, job_id=job_id) is None:
            raise RefusedError("there is no such job", code="not_found")
        must_be_here(held, people_ids)
        jobs.assign(connection, caller.organisation, job_id=job_id, people=people_ids)
