"""Lists in and out: records on paper, exports, rosters."""

from __future__ import annotations

from typing import Annotated

from anyio import to_thread
from fastapi import APIRouter, Path, Query, Request, Response

from backprobe.cases.desk_roster import RosterFile, import_roster_file, kept_roster, preview_roster_file
from backprobe.cases.export_jobs import TYPES, Form, exported
from backprobe.cases.held_record import held_record
from backprobe.evidence.roster import RosterKind
from backprobe.server.callers import Desk, Here
from backprobe.server.phone_calls import MOST_NAME, without_nul

MOST_MAP = 2_000
FILE: dict[str, object] = {"requestBody": {"content": {"application/octet-stream": {}}}}

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
    return await to_thread.run_sync(lambda: preview_roster_file(here.yard, desk.caller, file=sent))


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
