"""Lists in and out: records on paper, exports, rosters."""

from __future__ import annotations

import base64
from datetime import date
from typing import Annotated, Literal

from anyio import to_thread
from fastapi import APIRouter, Path, Query, Request, Response
from pydantic import Field

from backprobe.cases.desk_roster import (
    RosterFile,
    import_roster_file,
    import_with_jobs,
    kept_roster,
    preview_roster_file,
)
from backprobe.cases.export_jobs import TYPES, Form, exported
from backprobe.cases.held_record import held_record
from backprobe.cases.roster_jobs import JobPlan
from backprobe.errors import RefusedError
from backprobe.evidence.roster import RosterKind
from backprobe.server.callers import Desk, Here
from backprobe.server.phone_calls import MOST_NAME, Strict, without_nul
from backprobe.server.spoken import say_of

MOST_MAP = 2_000
FILE: dict[str, object] = {"requestBody": {"content": {"application/octet-stream": {}}}}

MOST_SHEET = 1_000_000

router = APIRouter(prefix="/api/desk", tags=["desk"])
FileName = Annotated[str, Query(max_length=MOST_NAME)]
Columns = Annotated[str | None, Query(max_length=MOST_MAP)]


@router.get("/jobs/{job_id:path}/record.pdf", response_class=Response)
def record(job_id: Annotated[str, Path(min_length=1, max_length=MOST_NAME)], here: Here, *, desk: Desk) -> Response:
    """A job's record as a PDF, with the journal inside."""
    content = held_record(here.yard, desk.caller, job_id=without_nul(job_id) or "")
    headers = {"Content-Disposition": 'inline; filename="record.pdf"'}
    return Response(content, media_type="application/pdf", headers=headers)


@router.get("/export.{form}", response_class=Response)
def export(form: Form, here: Here, *, desk: Desk) -> Response:
    """All jobs."""
    headers = {"Content-Disposition": f'attachment; filename="jobs.{form}"'}
    return Response(exported(here.yard, desk.caller, form=form), media_type=TYPES[form], headers=headers)


@router.get("/rosters/{kind}")
def roster(kind: RosterKind, here: Here, *, desk: Desk) -> dict[str, object]:
    """The vehicles or units that were taken in."""
    return {"kind": str(kind), "rows": kept_roster(here.yard, desk.caller, kind=kind)}


@router.post("/rosters/preview", openapi_extra=FILE)
async def preview(
    request: Request, here: Here, *, desk: Desk, file: FileName = "roster.csv", columns: Columns = None
) -> dict[str, object]:
    """What a roster would change: new rows, changed ones, each cell that cannot be taken."""
    sent = RosterFile(await request.body(), file, columns)
    say = say_of(request.headers)
    return await to_thread.run_sync(lambda: preview_roster_file(here.yard, desk.caller, file=sent, say=say))


class RosterWithJobs(Strict):
    """A roster, its file as base64, and what the jobs of its vehicles have in common."""

    file: str = Field(default="roster.csv", max_length=MOST_NAME)
    columns: str | None = Field(default=None, max_length=MOST_MAP)
    doubts_are_right: bool = False
    content: str
    unit_toml: str = Field(alias="unit.toml", max_length=MOST_SHEET)
    system_V: Literal[12, 24]
    people: list[Annotated[str, Field(max_length=MOST_NAME)]] = Field(default=[], max_length=50)
    day: date | None = Field(default=None, strict=False)


@router.post("/rosters/import-with-jobs")
def take_with_jobs(body: RosterWithJobs, here: Here, *, desk: Desk) -> dict[str, object]:
    """Take a roster of vehicles and make a job for each that has none: all of it, or nothing."""
    try:
        content = base64.b64decode(body.content, validate=True)
    except ValueError:
        raise RefusedError("content: the file in base64 is expected", code="request") from None
    plan = JobPlan(
        unit_sheet=body.unit_toml,
        system_V=body.system_V,
        people=tuple(without_nul(who) or "" for who in body.people),
        day=None if body.day is None else body.day.isoformat(),
    )
    sent = RosterFile(content, body.file, body.columns)
    return import_with_jobs(here.yard, desk.caller, file=sent, plan=plan, doubts_are_right=body.doubts_are_right)


@router.post("/rosters/import", openapi_extra=FILE)
async def take(
    request: Request,
    here: Here,
    *,
    desk: Desk,
    file: FileName = "roster.csv",
    columns: Columns = None,
    doubts_are_right: bool = False,
) -> dict[str, object]:
    """Take a roster, whole or not at all."""
    sent = RosterFile(await request.body(), file, columns)
    return await to_thread.run_sync(
        lambda: import_roster_file(here.yard, desk.caller, file=sent, doubts_are_right=doubts_are_right)
    )
