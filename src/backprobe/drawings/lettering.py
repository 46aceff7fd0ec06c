"""How wide lettering is, so that nothing overlaps and long names are cut where they must be.

The advance widths are those of Atkinson Hyperlegible (1/1000 of the size), read from the TTF files of
fontpkg-atkinson-hyperlegible 1.6 (Braille Institute, OFL 1.1); a test reads the files again and compares.
"""

from __future__ import annotations

import math

from backprobe.drawings.svg import Attributes, escaped, number, tag

# fmt: off
_REGULAR = (
    280, 281, 301, 655, 594, 927, 705, 160, 300, 300, 433, 602, 205, 368, 205, 377, 648, 402, 549, 574, 614, 583,
    598, 510, 615, 598, 205, 205, 553, 602, 553, 520, 780, 626, 619, 656, 673, 567, 548, 710, 690, 414, 510, 627,
    539, 820, 689, 727, 601, 753, 618, 596, 558, 690, 589, 840, 623, 595, 607, 315, 377, 315, 552, 396, 268, 526,
    566, 500, 564, 539, 311, 560, 546, 278, 254, 490, 239, 841, 546, 552, 566, 576, 340, 471, 324, 536, 441, 654,
    461, 429, 460, 319, 233, 319, 555,
)
_BOLD = (
    320, 283, 410, 783, 619, 977, 702, 222, 366, 366, 434, 618, 243, 374, 243, 442, 652, 448, 586, 605, 626, 612,
    632, 543, 625, 561, 243, 243, 573, 618, 573, 614, 754, 690, 639, 673, 686, 580, 544, 719, 679, 458, 560, 659,
    537, 842, 700, 764, 626, 781, 654, 619, 617, 663, 656, 883, 699, 687, 621, 333, 442, 333, 589, 430, 314, 553,
    596, 520, 596, 566, 367, 597, 572, 315, 259, 567, 314, 886, 572, 573, 596, 601, 372, 534, 379, 570, 526, 723,
    533, 518, 516, 370, 234, 370, 533,
)
# fmt: on
_FIRST = 32
_OTHER = {"–": 508, "—": 842, "±": 618, "−": 602, "Ω": 687, "µ": 591, "°": 404, "·": 301, "…": 803}
_UNKNOWN = 700  # letters beyond the table
_WIDE = 1050  # scripts whose letters fill a square, and pictographs
_FIRST_WIDE = "\u1100"

FIGURE_CELL = 0.66  # every digit of a figure stands in a cell of this width (in sizes): figures line up in columns
_NARROW_CELL = 0.26  # point, comma
_SIGN_CELL = 0.62


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """The width of `text` set in `size`, in the unit of `size`; an estimate for letters beyond ASCII."""
    thousandths: int = sum(_advance(char, bold=bold) for char in text)
    return thousandths * size / 1000


def _advance(char: str, *, bold: bool) -> int:
    index = ord(char) - _FIRST
    table = _BOLD if bold else _REGULAR
    if 0 <= index < len(table):
        return table[index]
    return _OTHER.get(char, _WIDE if char >= _FIRST_WIDE else _UNKNOWN)


def cut(text: str, *, size: float, room: float, bold: bool = False) -> str:
    """`text` cut so that it fits into `room`, with … where something is missing.

    >>> cut("yellow with a red stripe", size=10, room=60)
    'yellow with…'
    """
    if text_width(text, size, bold=bold) <= room:
        return text
    kept = text
    while kept and text_width(kept.rstrip() + "…", size, bold=bold) > room:
        kept = kept[:-1]
    return kept.rstrip() + "…" if kept else ""


def wrapped(text: str, *, size: float, room: float) -> list[str]:
    """`text` in lines that fit into `room`; a word that is wider than that is broken, nothing is lost."""
    lines: list[str] = []
    line = ""
    for word in text.split():
        if line and text_width(f"{line} {word}", size) > room:
            lines.append(line)
            line = word
        else:
            line = f"{line} {word}" if line else word
        while text_width(line, size) > room and len(line) > 1:
            head = _head(line, size=size, room=room)
            lines.append(head)
            line = line[len(head) :]
    return [*lines, line] if line else lines


def _head(word: str, *, size: float, room: float) -> str:
    """The longest start of `word` that fits into `room`, at least one letter."""
    end = len(word) - 1
    while end > 1 and text_width(word[:end], size) > room:
        end -= 1
    return word[:end]


def letters(
    at: tuple[float, float], text: str, *, size: float, fill: str, anchor: str = "start", bold: bool = False
) -> str:
    """A line of lettering with its baseline `at` (x, y)."""
    style: Attributes = {"x": at[0], "y": at[1], "font-size": size, "fill": fill}
    if anchor != "start":
        style["text-anchor"] = anchor
    if bold:
        style["font-weight"] = "bold"
    return tag("text", style, escaped(text))


def figure_width(text: str, size: float) -> float:
    """The width of `figure_letters` with this text and size."""
    return math.fsum(_cell(char) for char in text) * size


def _cell(char: str) -> float:
    if char in ".,":
        return _NARROW_CELL
    return FIGURE_CELL if char.isdigit() else _SIGN_CELL


def figure_letters(at: tuple[float, float], text: str, *, size: float, fill: str) -> str:
    """A bold figure with its baseline starting `at` (x, y), every digit in a cell of the same width."""
    x, places = at[0], []
    for char in text:
        cell = _cell(char) * size
        places.append(number(x + cell / 2))
        x += cell
    style: Attributes = {
        "x": " ".join(places),
        "y": at[1],
        "font-size": size,
        "font-weight": "bold",
        "text-anchor": "middle",
        "fill": fill,
    }
    return tag("text", style, escaped(text))
