"""A picture's words in other words: the letters of an SVG string of `backprobe.drawings`, and what it says aloud.

Lines that stand beneath one another in the same letters are one sentence: they are joined, said, and broken anew. What
gets longer is set smaller, so that it keeps to its place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from html import unescape

from backprobe.drawings.lettering import text_width, wrapped
from backprobe.drawings.roomy import BOLDER
from backprobe.drawings.svg import escaped, number
from backprobe.tongues.speaker import Say

LINES = re.compile(r'(?:<text x="[^"]*" y="[^"]*" font-size="[^"]*"[^>]*>[^<]+</text>)+')
LINE = re.compile(r'<text x="([^"]*)" y="([^"]*)" font-size="([^"]*)"([^>]*)>([^<]+)</text>')
ROOM = re.compile(r' data-room="([^"]*)"')
ALOUD = re.compile(r"<(title|desc)>([^<]+)</")
SENTENCES = re.compile(r"(?<=\.) ")
TOGETHER = 4
ROOMIER = 1.25  # how much wider than before a line may get before it is set smaller
SMALLER = 0.94
SMALLEST = 0.6


@dataclass(frozen=True, slots=True)
class _Line:
    """One line of letters as it stands in the SVG."""

    x: str
    y: float
    size: float
    style: str
    text: str

    def is_followed_by(self, other: _Line) -> bool:
        """Whether the other line goes on where this one ends: below it, at its edge, in its letters."""
        alike = (self.x, self.size, self.style) == (other.x, other.size, other.style)
        return alike and 0 < other.y - self.y <= 1.6 * self.size

    @property
    def bold(self) -> bool:
        return "bold" in self.style

    @property
    def room(self) -> float | None:
        """How wide the line may get, where the picture says so."""
        told = ROOM.search(self.style)
        return None if told is None else float(told[1])

    def drawn(self, text: str, *, size: float) -> str:
        return f'<text x="{self.x}" y="{number(self.y)}" font-size="{number(size)}"{self.style}>{escaped(text)}</text>'


def picture_said(svg: str, say: Say) -> str:
    """The picture with its words as `say` has them."""
    spoken = ALOUD.sub(lambda found: f"<{found[1]}>{escaped(_aloud(unescape(found[2]), say))}</", svg)
    return LINES.sub(lambda found: "".join(_said(found[0], say)), spoken)


def _aloud(text: str, say: Say) -> str:
    """What is read aloud: a few sentences together, many one by one, as they stand in other pictures too."""
    sentences = SENTENCES.split(text)
    return say(text) if len(sentences) <= TOGETHER else " ".join(map(say, sentences))


def _said(letters: str, say: Say) -> Iterator[str]:
    lines = [
        _Line(x, float(y), float(size), style, unescape(text)) for x, y, size, style, text in LINE.findall(letters)
    ]
    while lines:
        end = next((at for at in range(1, len(lines)) if not lines[at - 1].is_followed_by(lines[at])), len(lines))
        yield from _paragraph(lines[:end], say)
        lines = lines[end:]


def _fitting(line: _Line, text: str) -> float:
    """The size in which a line stays near the room that it had, or in that which it was given."""
    known = line.room
    before = max(text_width(line.text, line.size, bold=line.bold), 4 * line.size) * ROOMIER if known is None else known
    now = text_width(text, line.size, bold=line.bold)
    return line.size * max(SMALLEST, min(1.0, before / now)) if now > 0 else line.size


def _paragraph(lines: list[_Line], say: Say) -> Iterator[str]:
    """Lines that may be one sentence: said as one, unless none can be said, or each; with a room they are one sentence."""
    whole = " ".join(line.text for line in lines)
    each = [say(line.text) for line in lines]
    said = whole if len(lines) == 1 else say(whole)
    apart = lines[0].room is None and all(text != line.text for line, text in zip(lines, each, strict=True))
    if said == whole or apart:
        for line, text in zip(lines, each, strict=True):
            yield line.drawn(text, size=_fitting(line, text))
        return
    known = lines[0].room
    room = max(text_width(line.text, line.size, bold=line.bold) for line in lines) * 1.02
    if known is not None:
        room = known / BOLDER if lines[0].bold else known
    size = lines[0].size
    broken = wrapped(said, size=size, room=room)
    while len(broken) > len(lines) and size > SMALLEST * lines[0].size:
        size *= SMALLER
        broken = wrapped(said, size=size, room=room)
    kept = [*broken[: len(lines) - 1], " ".join(broken[len(lines) - 1 :])]
    for line, text in zip(lines, kept, strict=False):
        yield line.drawn(text, size=size)
