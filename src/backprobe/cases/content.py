"""What a file is, by its content: a picture that can be read, text, or a bus log. Everything else is refused."""

from __future__ import annotations

import warnings
from pathlib import Path

from backprobe.errors import RefusedError, UnreadableError
from backprobe.files.photos import MOST_PIXELS
from backprobe.formats.text import HEAD_BYTES, refuse_binary

PICTURES = {"JPEG": "image/jpeg", "MPO": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp"}
TEXT, BYTES = "text/plain", "application/octet-stream"
EXPECTED = "a picture (JPEG, PNG, WebP), a text file or a bus log is expected"
BUS_LOGS = (b"LOGG", b"MDF     ", b"UnFinMF ")  # how BLF and MDF files begin
_FIRST = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"RIFF")


def content_type(path: Path) -> str:
    """The type of a file: one of the pictures, text, or the bytes of a bus log.

    Only the head of a picture is read: how many pixels it claims is known before any of them is. Raises RefusedError:
    `blob_type` for what is neither, `too_large` for pictures of more pixels than are read.
    """
    with path.open("rb") as file:
        head = file.read(HEAD_BYTES)
    if head.startswith(_FIRST):
        return _picture_type(path)
    if head.startswith(BUS_LOGS):
        return BYTES
    try:
        refuse_binary(head, file="the file")
    except UnreadableError as refusal:
        raise RefusedError(f"{EXPECTED}; expected: {refusal.expected}", code="blob_type") from None
    return TEXT


def _picture_type(path: Path) -> str:
    from PIL import Image  # loads only where there are pictures

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(path, formats=list(MOST_PIXELS)) as image:
                form, (width, height) = image.format or "", image.size
    except Image.DecompressionBombError:
        raise RefusedError("the picture claims to have far more pixels than are read", code="too_large") from None
    except Exception as fault:  # noqa: BLE001 - the decoders raise whatever they stumble over at damaged heads
        raise RefusedError(
            f"{EXPECTED}; this picture is damaged at its beginning ({fault})", code="blob_type"
        ) from None
    most = MOST_PIXELS["JPEG" if form == "MPO" else form]
    if width * height > most:
        said = f"the picture has, or claims to have, {width} × {height} pixels; at most {most // 1_000_000} million"
        raise RefusedError(said, code="too_large")
    return PICTURES[form]
