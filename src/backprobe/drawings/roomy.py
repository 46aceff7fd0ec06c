"""Lettering for a narrow page: in lines that fit, with room to spare for other words of the same meaning.

Lines are broken as if a fifth of the room was missing, and each carries the whole room as `data-room`: Spanish takes
about a fifth more than English, and so still fits where it is put in its place, in letters as large.
"""

from __future__ import annotations

from backprobe.drawings.lettering import wrapped
from backprobe.drawings.svg import Attributes, escaped, tag

NAME_SIZE, TEXT_SIZE = 15.0, 13.5  # 360 units stand in the 328 px that a page of 360 px leaves: 13.7 and 12.3 px
BELOW = 520.0  # a page that is narrower is read on a phone
_SHARE = 0.8  # of the room, that English may fill
BOLDER = 1.08  # bold letters are that much wider
_LINE = 1.25


def paragraph(
    at: tuple[float, float], text: str, *, room: float, fill: str, bold: bool = False, size: float = TEXT_SIZE
) -> tuple[str, float]:
    """`text` in lines below one another, the first baseline `at` (x, y), and the baseline that would come next.

    Nothing is cut: a word wider than the room is broken.
    """
    x, y = at
    parts = []
    for line in wrapped(text, size=size * BOLDER if bold else size, room=room * _SHARE):
        parts.append(line_of((x, y), line, room=room, fill=fill, bold=bold, size=size))
        y += size * _LINE
    return "".join(parts), y


def line_of(
    at: tuple[float, float], text: str, *, room: float, fill: str, bold: bool = False, size: float = TEXT_SIZE
) -> str:
    """One line of letters, its baseline `at` (x, y), that may be as long as `room` in other words."""
    style: Attributes = {"x": at[0], "y": at[1], "font-size": size, "fill": fill, "data-room": room}
    if bold:
        style["font-weight"] = "bold"
    return tag("text", style, escaped(text))
