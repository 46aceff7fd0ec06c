"""Photos made ready for paper: upright, small, and nothing in them but the picture.

What a file is, its content says, not its name. Read are JPEG of at most 64 million pixels, which come in small at once,
and PNG and WebP of at most 24 million, which do not; none over 40 MB. A small file can claim a picture that fills all
memory, so its claim is looked at before it is believed. Whatever a camera wrote beside the picture (place, time, owner)
stays behind.
"""

from __future__ import annotations

import io
import struct
import warnings
import zlib
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

from backprobe.errors import Place, UnreadableError

MOST_BYTES = 40_000_000
MOST_PIXELS = {"JPEG": 64_000_000, "PNG": 24_000_000, "WEBP": 24_000_000}  # the formats that are read
LONGEST_PX = 720  # on paper: 200 to the inch where a photo is 90 mm wide
QUALITY = 80
READABLE = "a picture as JPEG, PNG or WebP"
AGAIN = "a whole picture; this one is {fault}: copy it again, or take it again"

# what the decoders raise at damaged files, beside saying that they are cut off
_DAMAGE = (
    *(OSError, ValueError, SyntaxError, TypeError, LookupError, ArithmeticError, EOFError, AttributeError),
    *(struct.error, zlib.error, MemoryError, RuntimeError),
)
_PHONE_FORMATS = (b"heic", b"heix", b"hevc", b"mif1", b"msf1", b"avif")
_BEGINNINGS = (b"\xff\xd8\xff", b"\x89PNG\r\n", b"RIFF")
_WHITE = (255, 255, 255)


@dataclass(frozen=True, slots=True)
class PaperPhoto:
    """A photo for paper, as a JPEG of `width_px` × `height_px` in colour."""

    jpeg: bytes
    width_px: int
    height_px: int


def paper_photo(path: Path, written: str) -> PaperPhoto:
    """The photo at `path` for paper; `written` is what the folder calls it.

    Raises UnreadableError, in one line of plain words, where it is no picture that can be read, cut off, damaged, or
    larger than is read.
    """
    try:
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except OSError as problem:
        raise _refused(written, f"a file that can be read; the system says: {problem.strerror or problem}") from None
    if not content:
        raise _refused(written, f"{READABLE}; this file is empty")
    if len(content) > MOST_BYTES:
        raise _refused(written, f"at most {MOST_BYTES // 1_000_000} MB; this file is larger")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of pictures that are odd and can be read all the same
        return _made_ready(content, written)


def _refused(written: str, expected: str) -> UnreadableError:
    return UnreadableError(Place(written), expected)


def _made_ready(content: bytes, written: str) -> PaperPhoto:
    with _opened(content, written) as image:
        width, height = image.size
        most = MOST_PIXELS[
            "JPEG" if image.format == "MPO" else image.format or ""
        ]  # MPO: a JPEG with another behind it
        if width * height > most:
            claim = f"this picture has, or claims to have, {width} × {height}"
            raise _refused(written, f"at most {most // 1_000_000} million pixels; {claim}")
        try:
            image.thumbnail((LONGEST_PX, LONGEST_PX))
            picture = _on_white(_upright(image))
            picture.info = {}  # comments would be written again
            made = io.BytesIO()
            picture.save(made, "JPEG", quality=QUALITY, optimize=True)
        except _DAMAGE as problem:
            cut = "truncated" in str(problem).lower()
            raise _refused(written, AGAIN.format(fault="cut off" if cut else "damaged")) from None
    return PaperPhoto(made.getvalue(), *picture.size)


def _opened(content: bytes, written: str) -> Image.Image:
    """The picture with its head read, its pixels not yet."""
    from PIL import Image

    try:
        return Image.open(io.BytesIO(content), formats=list(MOST_PIXELS))
    except Image.DecompressionBombError:
        most = f"at most {max(MOST_PIXELS.values()) // 1_000_000} million pixels"
        raise _refused(written, f"{most}; this picture claims to have far more") from None
    except _DAMAGE:
        if content[4:8] == b"ftyp" and content[8:12] in _PHONE_FORMATS:
            raise _refused(written, f"{READABLE}; this one is HEIC or AVIF: save it as JPEG") from None
        if content.startswith(_BEGINNINGS):
            raise _refused(written, AGAIN.format(fault="damaged at its beginning")) from None
        raise _refused(written, f"{READABLE}; this file is none") from None


def _upright(image: Image.Image) -> Image.Image:
    """The picture turned as its camera was held; as it lies where its camera's notes cannot be read."""
    from PIL import ImageOps

    with suppress(*_DAMAGE):
        return ImageOps.exif_transpose(image)
    return image


def _on_white(image: Image.Image) -> Image.Image:
    """The picture in colours that every reader has, on white where it lets light through."""
    from PIL import Image

    if image.mode.startswith("I"):  # 16 bits of grey
        image = image.convert("I").point(lambda level: level / 256).convert("L")
    if not image.has_transparency_data:
        return image.convert("RGB")
    clear = image.convert("RGBA")
    ground = Image.new("RGBA", clear.size, (*_WHITE, 255))
    return Image.alpha_composite(ground, clear).convert("RGB")
