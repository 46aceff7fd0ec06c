"""Files from and to phones, by their digest, whole or in pieces."""

from __future__ import annotations

import re
from typing import Annotated, Literal

from anyio import to_thread
from fastapi import APIRouter, Header, Path, Query, Request, Response
from fastapi.responses import FileResponse, JSONResponse

from backprobe.cases.hand_in_file import (
    begin_file,
    begun_bytes,
    finish_file,
    hand_in_piece,
    kept_file,
    readable_file,
    small_picture,
)
from backprobe.cases.may import Caller, Deed
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.server.callers import Here, PhoneCaller
from backprobe.server.refusals import refused
from backprobe.server.spoken import say_of

PIECE_BYTES = 1_048_576
OFFSET = "Upload-Offset"
FOR_EVER = "private, max-age=31536000, immutable"
_RANGE = re.compile(r"bytes (\d{1,12})-(\d{1,12})/(\d{1,12})", re.ASCII)

router = APIRouter(prefix="/api/blobs", tags=["files"])
Sha256 = Annotated[str, Path(pattern="^[0-9a-f]{64}$")]
Size = Annotated[Literal["thumb"] | None, Query()]


@router.put("/{sha256}", openapi_extra={"requestBody": {"content": {"application/octet-stream": {}}}})
async def put(
    sha256: Sha256,
    request: Request,
    *,
    here: Here,
    caller: PhoneCaller,
    content_range: Annotated[str | None, Header()] = None,
) -> JSONResponse:
    """Hand in a file or a piece of one."""
    try:
        return await _taken(here.yard, caller, sha256=sha256, request=request, content_range=content_range)
    except RefusedError as error:
        stands = await to_thread.run_sync(lambda: begun_bytes(here.yard, caller, sha256=sha256))
        return refused(error, {OFFSET: str(stands)}, say=say_of(request.headers))


async def _taken(
    yard: Yard, caller: Caller, *, sha256: str, request: Request, content_range: str | None
) -> JSONResponse:
    caller.must(Deed.HAND_IN)
    before = await to_thread.run_sync(lambda: kept_file(yard, caller, sha256=sha256))
    first, end, total = _range(content_range)
    offset = await to_thread.run_sync(lambda: begin_file(yard, caller, sha256=sha256, offset=first, total_bytes=total))
    began, offset = offset, await _written(yard, caller, sha256=sha256, request=request, offset=offset)
    if end is not None and offset != end + 1:
        raise RefusedError(f"{offset - began} bytes came, {end + 1 - began} were announced", code="offset")
    if total is not None and offset < total:
        return JSONResponse({"sha256": sha256, "state": "partial", "offset": offset}, 202, {OFFSET: str(offset)})
    kept = await to_thread.run_sync(lambda: finish_file(yard, caller, sha256=sha256, at=now()))
    answer = {"sha256": sha256, "state": "kept", "bytes": kept.size_bytes, "type": kept.type}
    return JSONResponse(answer, 201 if before is None else 200)


async def _written(yard: Yard, caller: Caller, *, sha256: str, request: Request, offset: int) -> int:
    """Write the body as it comes, a piece at a time; where the file stands then."""
    held = bytearray()
    async for chunk in request.stream():
        held += chunk
        while len(held) >= PIECE_BYTES:
            offset = await _piece(yard, caller, sha256=sha256, offset=offset, piece=bytes(held[:PIECE_BYTES]))
            del held[:PIECE_BYTES]
    return await _piece(yard, caller, sha256=sha256, offset=offset, piece=bytes(held)) if held else offset


async def _piece(yard: Yard, caller: Caller, *, sha256: str, offset: int, piece: bytes) -> int:
    return await to_thread.run_sync(lambda: hand_in_piece(yard, caller, sha256=sha256, offset=offset, piece=piece))


def _range(text: str | None) -> tuple[int | None, int | None, int | None]:
    """First byte, last byte and size of the whole; three None where the file comes whole. Raises RefusedError."""
    if text is None:
        return None, None, None
    found = _RANGE.fullmatch(text)
    first, last, total = (int(part) for part in found.groups()) if found else (0, -1, 0)
    if not first <= last < total:
        raise RefusedError("Content-Range: bytes FIRST-LAST/SIZE is expected", code="request")
    return first, last, total


@router.head("/{sha256}")
def head(sha256: Sha256, here: Here, *, caller: PhoneCaller) -> Response:
    """Whether a file is kept whole, or how many bytes of it are held."""
    caller.must(Deed.HAND_IN)
    kept = kept_file(here.yard, caller, sha256=sha256)
    if kept is None:
        return Response(status_code=404, headers={OFFSET: str(begun_bytes(here.yard, caller, sha256=sha256))})
    return Response(headers={"Content-Length": str(kept.size_bytes), "Content-Type": kept.type})


@router.get("/{sha256}", response_class=FileResponse)
def get(sha256: Sha256, here: Here, *, caller: PhoneCaller, size: Size = None) -> FileResponse:
    """A file of a job that the phone's person was given."""
    return handed_out(here.yard, caller, sha256=sha256, size=size)


def handed_out(yard: Yard, caller: Caller, *, sha256: str, size: str | None) -> FileResponse:
    """A file, or of a picture a small one."""
    kept = readable_file(yard, caller, sha256=sha256)
    headers = {"Cache-Control": FOR_EVER, "Content-Disposition": "inline"}
    if size == "thumb":
        return FileResponse(small_picture(yard, kept, sha256=sha256), media_type="image/jpeg", headers=headers)
    media_type = f"{kept.type}; charset=utf-8" if kept.type.startswith("text/") else kept.type
    return FileResponse(kept.path, media_type=media_type, headers=headers)
