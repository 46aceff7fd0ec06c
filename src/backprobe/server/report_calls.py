"""Reports that collectors push."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Annotated

from anyio import to_thread
from fastapi import APIRouter, Query, Request

from backprobe.cases.reports_in import MOST_BYTES_A_DAY, MOST_PUSHES_A_DAY, Push, over_quota_s, push_reports
from backprobe.errors import RefusedError
from backprobe.server.callers import FeedCaller, Here
from backprobe.server.rates import TooManyError

MOST_BYTES = 8_000_000
JSON_TYPES = ("application/x-ndjson", "application/jsonl", "application/json")
CSV_TYPE = "text/csv"
MOST_MAP = 2_000
SPENT = (
    f"this token has pushed what it may on one day: {MOST_PUSHES_A_DAY:,} times or {MOST_BYTES_A_DAY // 1_000_000} MB;"
    " push more reports at a time"
)

router = APIRouter(prefix="/api", tags=["reports"])
BODY: dict[str, object] = {"requestBody": {"content": {name: {} for name in (JSON_TYPES[0], CSV_TYPE)}}}


@router.post("/reports", openapi_extra=BODY)
async def push(
    request: Request,
    here: Here,
    *,
    found: FeedCaller,
    columns: Annotated[str | None, Query(max_length=MOST_MAP)] = None,
) -> dict[str, object]:
    """Push what units reported: JSON lines or CSV."""
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind not in (*JSON_TYPES, CSV_TYPE):
        raise RefusedError(f"Content-Type: {JSON_TYPES[0]} or {CSV_TYPE} is expected", code="request")
    content = await _body(request)
    caller, feed = found

    def take() -> dict[str, object]:
        wait_s = over_quota_s(here.yard, feed=feed, size=len(content), at=datetime.now(UTC))
        if wait_s is not None:
            raise TooManyError(wait_s, SPENT)
        return push_reports(here.yard, caller, feed=feed, push=Push(content, is_json=kind != CSV_TYPE, columns=columns))

    return await to_thread.run_sync(take)


async def _body(request: Request) -> bytes:
    """The whole body; refused as soon as it is too large."""
    content = bytearray()
    async for piece in request.stream():
        content += piece
        if len(content) > MOST_BYTES:
            raise RefusedError(
                f"at most {MOST_BYTES // 1_000_000} MB in one push: push less at a time", code="too_large"
            )
    return bytes(content)
