"""What phones ask at the hand-over: to have their key known, and for the record on paper."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Response
from pydantic import Field

from backprobe.cases.held_record import held_record
from backprobe.cases.signing_keys import give_key
from backprobe.server.callers import Here, PhoneCaller
from backprobe.server.phone_calls import MOST_NAME, Strict, without_nul

router = APIRouter(prefix="/api", tags=["phone"])


class KeyBody(Strict):
    """A public key and a signature by it over the phone's name, both in hex."""

    key: str = Field(pattern="^[0-9a-f]{64}$")
    proof: str = Field(pattern="^[0-9a-f]{128}$")


@router.post("/key")
def key(body: KeyBody, here: Here, *, caller: PhoneCaller) -> dict[str, object]:
    """Say which key the phone signs with."""
    return {"fingerprint": give_key(here.yard, caller, key=body.key, proof=body.proof)}


@router.get("/jobs/{job_id:path}/record.pdf", response_class=Response)
def record(
    job_id: Annotated[str, Path(min_length=1, max_length=MOST_NAME)], here: Here, *, caller: PhoneCaller
) -> Response:
    """The record of a job of the phone's person, as a PDF."""
    content = held_record(here.yard, caller, job_id=without_nul(job_id) or "")
    return Response(content, media_type="application/pdf", headers={"Cache-Control": "no-store"})
