"""Photos for tests, made as they are asked for: a picture whose four corners have colours of their own."""

from __future__ import annotations

import io
import struct
import zlib
from typing import Any

from PIL import Image

TOP_LEFT, TOP_RIGHT, BOTTOM_LEFT, BOTTOM_RIGHT = (220, 30, 30), (30, 160, 30), (40, 60, 220), (240, 240, 240)
ORIENTATION, ARTIST = 0x0112, 0x013B  # tags of Exif 2.3


def four_corners(width: int = 120, height: int = 80) -> Image.Image:
    """Red, green, blue and white quarters, from the top left in reading order."""
    picture = Image.new("RGB", (width, height), TOP_LEFT)
    picture.paste(TOP_RIGHT, (width // 2, 0, width, height))
    picture.paste(BOTTOM_LEFT, (0, height // 2, width // 2, height))
    picture.paste(BOTTOM_RIGHT, (width // 2, height // 2, width, height))
    return picture


def as_file(picture: Image.Image, kind: str = "JPEG", **how: Any) -> bytes:
    """The bytes of a picture in a format that Pillow writes."""
    made = io.BytesIO()
    picture.save(made, kind, **how)
    return made.getvalue()


def with_notes(orientation: int = 1, artist: str = "Ines Okafor") -> bytes:
    """A JPEG that its camera wrote something into: how it was held, whose it is, a comment."""
    notes = Image.Exif()
    notes[ORIENTATION] = orientation
    notes[ARTIST] = artist
    return as_file(four_corners(), exif=notes, comment=artist.encode())


def bomb(width: int = 60_000, height: int = 60_000) -> bytes:
    """A PNG of a few bytes that claims to be of that size."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", zlib.compress(bytes(1000))), (b"IEND", b""))
    body = b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data)) for name, data in chunks
    )
    return b"\x89PNG\r\n\x1a\n" + body
