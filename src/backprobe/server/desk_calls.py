"""What the desk asks of jobs and of quarantine."""

from __future__ import annotations

from typing import Annotated, Literal

from fastapi import APIRouter, Depends, Path, Query, Request
from fastapi.responses import FileResponse
from pydantic import Field

from backprobe.cases.decide import DisputeDecision, SlotDecision, release
from backprobe.cases.decide import decide as decide_job
from backprobe.cases.desk_jobs import list_jobs, one_job
from backprobe.cases.erase import Erasing, erase
from backprobe.cases.new_job import NewJob, assign, make_job
from backprobe.cases.quarantined import decide, list_quarantine
from backprobe.errors import RefusedError
from backprobe.server.blob_calls import Sha256, Size, handed_out
from backprobe.server.callers import Desk, Here
from backprobe.server.phone_calls import MOST_NAME, Strict, without_nul
from backprobe.server.spoken import say_of
from backprobe.store.jobs import Wanted
from backprobe.tongues.speaker import DESK, speaker

MOST_SHEET = 200_000  # letters
MOST_PEOPLE, MOST_FILES = 50, 100
MOST_ROWS = 200
MOST_NUMBER = 2**31 - 1

router = APIRouter(prefix="/api/desk", tags=["desk"])
JobId = Annotated[str, Path(min_length=1, max_length=MOST_NAME)]
Name = Annotated[str, Field(max_length=MOST_NAME)]
Language = Annotated[Literal["en", "es"] | None, Query()]  # of what the engine says
States = Literal["new", "in_work", "proven", "provisional", "abandoned"]


class JobBody(Strict):
    """The sheets of a new job, and who is to work on it."""

    job_toml: str = Field(alias="job.toml", max_length=MOST_SHEET)
    unit_toml: str = Field(alias="unit.toml", max_length=MOST_SHEET)
    people: list[Name] = Field(default=[], max_length=MOST_PEOPLE)


class PeopleBody(Strict):
    """Who is to work on a job."""

    people: list[Name] = Field(max_length=MOST_PEOPLE)


class EraseBody(Strict):
    """Files to delete, and why."""

    blobs: list[Annotated[str, Field(pattern="^[0-9a-f]{64}$")]] = Field(min_length=1, max_length=MOST_FILES)
    why: str = Field(min_length=1, max_length=MOST_NAME)


class MatterBody(Strict):
    """What is decided in a job: the one value of a slot, or which of two corrections stands."""

    slot: Name | None = None
    value: Name | None = None
    about: Name | None = None
    stands: Name | None = None


class UnitBody(Strict):
    """A unit, by its serial number."""

    serial: str = Field(min_length=1, max_length=MOST_NAME)


class DecisionBody(Strict):
    """What is decided on an item in quarantine."""

    decision: Literal["take", "leave"]


def wanted_jobs(
    *,
    state: Annotated[States | None, Query()] = None,
    q: Annotated[str | None, Query(max_length=MOST_NAME)] = None,
    after: Annotated[str | None, Query(max_length=2 * MOST_NAME)] = None,
    limit: Annotated[int, Query(ge=1, le=MOST_ROWS)] = 50,
) -> Wanted:
    """Which page of the list."""
    return Wanted(state=state, q=without_nul(q), after=after, limit=limit)


@router.get("/jobs")
def jobs(
    here: Here, desk: Desk, *, wanted: Annotated[Wanted, Depends(wanted_jobs)], language: Language = None
) -> dict[str, object]:
    """A page of the list of jobs: what fails first."""
    return list_jobs(here.yard, desk.caller, wanted=wanted, say=speaker(language, voice=DESK))


@router.post("/jobs", status_code=201)
def new_job(body: JobBody, here: Here, *, desk: Desk) -> dict[str, object]:
    """Make a job of its sheets."""
    people = tuple(filter(None, map(without_nul, body.people)))
    new = NewJob(job_sheet=body.job_toml, unit_sheet=body.unit_toml, people=people)
    return {"id": make_job(here.yard, desk.caller, new=new)}


@router.post("/jobs/{job_id:path}/assign")
def assign_job(job_id: JobId, body: PeopleBody, *, here: Here, desk: Desk) -> dict[str, object]:
    """Say who works on a job."""
    people = [name for name in map(without_nul, body.people) if name is not None]
    assign(here.yard, desk.caller, job_id=without_nul(job_id) or "", people_ids=people)
    return {"people": people}


@router.get("/jobs/{job_id:path}")
def job(job_id: JobId, here: Here, *, desk: Desk, language: Language = None) -> dict[str, object]:
    """One job with everything in it."""
    return one_job(here.yard, desk.caller, job_id=without_nul(job_id) or "", say=speaker(language, voice=DESK))


@router.post("/jobs/{job_id:path}/decide")
def decide_matter(job_id: JobId, body: MatterBody, *, here: Here, desk: Desk) -> dict[str, object]:
    """Decide between what two have said of a job."""
    name = without_nul(job_id) or ""
    if body.slot is not None and body.value is not None:
        slot = SlotDecision(body.slot, body.value)
        return {"entries": decide_job(here.yard, desk.caller, job_id=name, decision=slot)}
    if body.about is not None and body.stands is not None:
        dispute = DisputeDecision(body.about, body.stands)
        return {"entries": decide_job(here.yard, desk.caller, job_id=name, decision=dispute)}
    raise RefusedError("slot and value, or about and stands, are expected", code="request")


@router.post("/units/release")
def release_unit(body: UnitBody, here: Here, *, desk: Desk) -> dict[str, object]:
    """Let go of a unit that has left its vehicle, so that another may have it."""
    return {"job": release(here.yard, desk.caller, serial=body.serial)}


@router.post("/jobs/{job_id:path}/erase")
def erase_files(job_id: JobId, body: EraseBody, *, here: Here, desk: Desk) -> dict[str, object]:
    """Delete files of a job that hold a person's data."""
    wanted = Erasing(without_nul(job_id) or "", tuple(body.blobs), body.why)
    return {"erased": erase(here.yard, desk.caller, wanted=wanted)}


@router.get("/blobs/{sha256}", response_class=FileResponse)
def file(sha256: Sha256, here: Here, *, desk: Desk, size: Size = None) -> FileResponse:
    """A file that is kept; of a picture, if asked for, a small one."""
    return handed_out(here.yard, desk.caller, sha256=sha256, size=size)


@router.get("/quarantine")
def quarantine(request: Request, here: Here, *, desk: Desk) -> dict[str, object]:
    """What is in quarantine."""
    return {"items": list_quarantine(here.yard, desk.caller, say=say_of(request.headers))}


@router.post("/quarantine/{number}")
def decide_on(
    number: Annotated[int, Path(ge=1, le=MOST_NUMBER)], body: DecisionBody, *, here: Here, desk: Desk
) -> dict[str, object]:
    """Decide on an item in quarantine."""
    decide(here.yard, desk.caller, number=number, decision=body.decision)
    return {"number": number, "decision": body.decision}
