"""Long answers packed for the way: a phone in a yard has little line, and JSON packs to a tenth."""

from __future__ import annotations

import gzip
import json
from collections.abc import Mapping

from fastapi import Request, Response

WORTH_BYTES = 2_000
LEVEL = 5


def packed(request: Request, values: Mapping[str, object]) -> Response:
    """The values as JSON, with gzip where they are long and whoever asks takes it."""
    content = json.dumps(values, ensure_ascii=False, separators=(",", ":")).encode("utf-8")
    headers = {"Vary": "Accept-Encoding"}
    if len(content) >= WORTH_BYTES and takes_gzip(request.headers.get("accept-encoding", "")):
        content = gzip.compress(content, LEVEL, mtime=0)
        headers["Content-Encoding"] = "gzip"
    return Response(content, media_type="application/json", headers=headers)


def takes_gzip(accepted: str) -> bool:
    """Whether gzip is among the encodings that are taken.

    >>> takes_gzip("br, gzip"), takes_gzip("gzip;q=0"), takes_gzip("")
    (True, False, False)
    """
    parts = [part.replace(" ", "").lower() for part in accepted.split(",")]
    return any(part.partition(";")[0] == "gzip" and not part.endswith((";q=0", ";q=0.0")) for part in parts)
