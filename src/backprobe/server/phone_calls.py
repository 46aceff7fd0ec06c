"""What phones ask: to be enrolled, for their day, to hand in entries and to fetch them."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query, Request, Response
from fastapi.responses import JSONResponse
from pydantic import BaseModel, ConfigDict, Field

from backprobe.cases.day import day_of
from backprobe.cases.enrol import enrol
from backprobe.cases.sync import MOST_AT_ONCE, pull_page, take_batch
from backprobe.cases.tokens import now
from backprobe.server.callers import Here, PhoneCaller
from backprobe.server.packed import packed
from backprobe.server.unchanged import unless_known

MOST_CURSOR = 2**53 - 1
MOST_TEXT = 70_000  # letters of one entry's text: the 64 kB of an entry, and a little to be told so
MOST_NAME = 200

Mark = Annotated[str | None, Query(max_length=MOST_NAME)]
router = APIRouter(prefix="/api", tags=["phone"])


class Strict(BaseModel):
    """A body that has what is asked for and nothing else."""

    model_config = ConfigDict(extra="forbid", strict=True)


class EnrolmentBody(Strict):
    """A code from the desk's QR, the name of the phone's chain of entries, and what people call the phone."""

    code: str = Field(min_length=1, max_length=100)
    device: str = Field(min_length=1, max_length=64)
    label: str = Field(default="", max_length=MOST_NAME)


class BatchBody(Strict):
    """Entries, each as its exact text."""

    entries: list[Annotated[str, Field(max_length=MOST_TEXT)]] = Field(max_length=MOST_AT_ONCE)


@router.post("/enrol")
def enrol_phone(body: EnrolmentBody, here: Here, *, request: Request) -> dict[str, object]:
    """Enrol a phone by a code that is good once."""
    here.enrolments.must_wait(address_of(request))
    done = enrol(here.yard, body.code, device=body.device, label=body.label)
    person = {name: getattr(done.person, name) for name in ("id", "name", "language", "units")}
    return {
        "token": done.token,
        "device": done.device,
        "organisation": {"id": done.person.organisation, "name": done.organisation_name},
        "person": person,
        "server_time": now(),
    }


@router.get("/day", response_class=JSONResponse)
def day(
    request: Request,
    here: Here,
    *,
    caller: PhoneCaller,
    serials: Mark = None,
    usual: Mark = None,
    corners: Mark = None,
) -> Response:
    """The jobs of the phone's person that have not ended, and which unit is in which vehicle, as far as it is new."""
    known = {"serials": serials, "usual": usual, "corners": corners}
    return unless_known(request, day_of(here.yard, caller), known=known, always={"server_time": now()})


@router.post("/entries")
def hand_in(body: BatchBody, here: Here, *, caller: PhoneCaller) -> dict[str, object]:
    """Hand in entries; idempotent, in any order."""
    taken = take_batch(here.yard, body.entries, caller=caller, at=now())
    results = [{"id": r.id, "state": r.state, "code": r.code, "error": r.error} for r in taken.results]
    return {"results": results, "received_at": taken.received_at, "cursor": taken.cursor}


@router.get("/entries", response_class=JSONResponse)
def fetch(
    request: Request,
    here: Here,
    *,
    caller: PhoneCaller,
    after: Annotated[int, Query(ge=0, le=MOST_CURSOR)] = 0,
    limit: Annotated[int, Query(ge=1, le=MOST_AT_ONCE)] = MOST_AT_ONCE,
    job: Annotated[str | None, Query(max_length=MOST_NAME)] = None,
) -> Response:
    """Entries after a cursor, oldest first."""
    page = pull_page(here.yard, caller, after=after, limit=limit, job_id=without_nul(job))
    found = [
        {"cursor": each.cursor, "received_at": each.received_at, "text": each.raw.decode("utf-8")}
        for each in page.entries
    ]
    return packed(request, {"entries": found, "cursor": page.cursor, "more": page.more})


def address_of(request: Request) -> str:
    """Where a call comes from, as far as it can be told."""
    return "" if request.client is None else request.client.host


def without_nul(text: str | None) -> str | None:
    """A text without the letter that no database takes: there is nothing of such a name."""
    return None if text is None else text.replace("\0", "\N{REPLACEMENT CHARACTER}")
