"""An index of corners as a small text file: made once at a desk, read on a phone without a map.

Line 1 says what it is and the version, line 2 is a JSON object with the attribution and where it came from, the rest is
the packed corners (see `corner_bytes`) in base64. A place is kept to 0.00001°, which moves it by 0.8 m at most.
"""

from __future__ import annotations

import base64
import json
import zlib
from dataclasses import replace

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.corner import CornerIndex
from backprobe.formats.corner_bytes import MOST_BYTES, TornError, packed, unpacked

CORNERS = "corners.txt"  # the index in a job folder
TITLE = "backprobe corners"
VERSION = 1
LINE_LETTERS = 100
SHORT = 300
EXPECTED = "an index of corners, as `backprobe corners build` writes it"
DAMAGED = "a whole index of corners; this one was cut off or changed on its way: build it again"


def write_corner_index(index: CornerIndex) -> str:
    r"""The index as a text file.

    >>> write_corner_index(CornerIndex(corners=(), attribution="by nobody", source="none")).split("\n")[0]
    'backprobe corners 1'
    """
    head = {
        "attribution": index.attribution,
        "source": index.source,
        "as_of": index.as_of,
        "language": index.language,
        "corners": len(index.corners),
    }
    letters = base64.b64encode(zlib.compress(packed(index.corners), 9)).decode("ascii")
    lines = [letters[at : at + LINE_LETTERS] for at in range(0, len(letters), LINE_LETTERS)]
    return "\n".join([f"{TITLE} {VERSION}", json.dumps(head, ensure_ascii=False, sort_keys=True), *lines, ""])


def read_corner_index(text: str, *, file: str) -> CornerIndex:
    """The index that a text file holds; `file` is the name shown in messages.

    Raises UnreadableError where it is no index, one of another version, or not whole.
    """
    title, _, rest = text.removeprefix("\ufeff").partition("\n")
    head_line, _, letters = rest.partition("\n")
    _refuse_other(title.strip(), file=file)
    head, count = _head(head_line, file=file)
    try:
        corners = unpacked(_inflated(letters))
    except (TornError, zlib.error, ValueError):
        raise UnreadableError(Place(file, 3), DAMAGED) from None
    if len(corners) != count:
        raise UnreadableError(Place(file, 2, head_line), f"{len(corners)} corners, as there are in the file")
    return replace(head, corners=corners)


def _refuse_other(title: str, *, file: str) -> None:
    """Refuse what is no index, or one that this version does not read."""
    name, _, version = title.rpartition(" ")
    if name != TITLE or not version.isdecimal():
        raise UnreadableError(Place(file, 1, title), EXPECTED)
    if version != str(VERSION):
        expected = f"an index of version {VERSION}; build it again with this backprobe from the map it was made from"
        raise UnreadableError(Place(file, 1, title), expected)


def _head(line: str, *, file: str) -> tuple[CornerIndex, int]:
    """What the second line says, without corners, and how many there ought to be."""
    place = Place(file, 2, line)
    try:
        head = json.loads(line)
    except (ValueError, RecursionError):
        raise UnreadableError(place, "a JSON object with attribution, source and corners") from None
    count = head.get("corners") if isinstance(head, dict) else None
    if not isinstance(count, int) or isinstance(count, bool) or not all(_said(head, "attribution", "source")):
        raise UnreadableError(place, "a JSON object with attribution, source and corners")
    as_of, language = head.get("as_of"), head.get("language")
    found = CornerIndex(
        corners=(),
        attribution=head["attribution"],
        source=head["source"],
        as_of=as_of if _is_short(as_of) else None,
        language=language if _is_short(language) else None,
    )
    return found, count


def _said(head: dict[str, object], *keys: str) -> list[bool]:
    return [_is_short(head.get(key)) for key in keys]


def _is_short(value: object) -> bool:
    """Whether a value is a printable text of a length that may be shown."""
    return isinstance(value, str) and 0 < len(value) <= SHORT and value.isprintable()


def _inflated(letters: str) -> bytes:
    """The bytes behind the base64 lines; TornError where they are too many or end early."""
    inflater = zlib.decompressobj()
    content = inflater.decompress(base64.b64decode("".join(letters.split()), validate=True), MOST_BYTES)
    if not inflater.eof or inflater.unused_data:
        raise TornError
    return content
