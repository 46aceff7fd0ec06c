"""Reports that collectors push."""

from __future__ import annotations

from typing import Annotated

from anyio import to_thread
from fastapi import APIRouter, Query, Request

from backprobe.cases.reports_in import Push, push_reports
from backprobe.errors import RefusedError
from backprobe.server.callers import FeedCaller, Here

MOST_BYTES = 8_000_000
JSON_TYPES = ("application/x-ndjson", "application/jsonl", "application/json")
CSV_TYPE = "text/csv"
MOST_MAP = 2_000

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
    content = await request.body()
    if len(content) > MOST_BYTES:
        raise RefusedError(f"at most {MOST_BYTES // 1_000_000} MB in one push", code="too_large")
    pushed = Push(content, is_json=kind != CSV_TYPE, columns=columns)
    caller, feed = found
    return await to_thread.run_sync(lambda: push_reports(here.yard, caller, feed=feed, push=pushed))
