"""A key script as two strips for a narrow page: as `turns`, in letters of at least 13 units, with a numbered list.

What has no room in its place is a number there and a sentence in the list below: each turn with how late it was
reported, what stands above the upper strip (positions too short for their word, doors) and below the lower (what the
unit said besides). No word is cut and none is drawn over another.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.drawings.axes import Axis, Label, label_rows
from backprobe.drawings.lettering import letters, text_width
from backprobe.drawings.palette import ACCENT, INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.roomy import NAME_SIZE, TEXT_SIZE, line_of, paragraph
from backprobe.drawings.svg import Attributes, escaped, path, picture, tag
from backprobe.drawings.turns import NARROWEST, Mark, Stretch, Turned, Turns, described_turns, stretch_box

_EDGE, _SIZE, _STRIP = 8.0, 13.2, 28.0
_ROW, _BETWEEN, _GAP = 16.0, 22.0, 5.0  # of numbers; from a strip to the numbers; between two numbers
_INSET, _ROOMIER = 4.0, 1.25  # a word's room in its stretch, for other words of the same meaning too


@dataclass(frozen=True, slots=True)
class _Numbered:
    """A place on the time axis [px], its number in the list, and what the list says of it."""

    x: float
    number: int
    label: str
    late_x: float | None = None  # where its report stands, for a turn that was reported


def turns_narrow(content: Turns, *, width: float) -> str:
    """The picture as one SVG string, `width` units wide (at least 320), as high as its words need."""
    width = max(width, NARROWEST)
    time = Axis(0.0, max(content.end_s, 1.0), _EDGE, width - _EDGE)
    above = _numbered(
        sorted([*_short(content.hand, time), *content.by_hand], key=lambda mark: mark.at_s), time, first=1
    )
    turned = _turned(content.turned, time, first=1 + len(above))
    below = _numbered(
        sorted([*_short(content.unit, time), *content.by_unit], key=lambda mark: mark.at_s),
        time,
        first=1 + len(above) + len(turned),
    )
    room = width - 2 * _EDGE
    names = [line_of((_EDGE, 18.0), "the hand", room=room, fill=INK, bold=True, size=NAME_SIZE)]
    flags, y = _row_of(above, 24.0, time=time)
    parts = [flags, _nicks(above, y), _strip(content.hand, time, top=y + 4)]
    middle, unit_y = _between(turned, y + 4 + _STRIP, time=time)
    names.append(line_of((_EDGE, unit_y - 6), "the unit", room=room, fill=INK, bold=True, size=NAME_SIZE))
    parts += [middle, _strip(content.unit, time, top=unit_y)]
    flags, y = _row_of(below, unit_y + _STRIP + 4, time=time)
    parts += [flags, _nicks(below, unit_y + _STRIP)]
    axis, y = _ticks(content.ticks, time, top=y + 2)
    listed, y = _list([*above, *turned, *below], y + 24, room=room)
    ground = tag("rect", {"width": width, "height": y, "fill": PAPER})
    words = ("What the unit reported", described_turns(content))
    return picture((width, y), words, ground, *parts, axis, *names, listed)


def _short(stretches: tuple[Stretch, ...], time: Axis) -> list[Mark]:
    """The words that have no room in their stretch, at its middle."""
    return [
        Mark((each.start_s + each.end_s) / 2, each.label) for each in stretches if each.label and not _fits(each, time)
    ]


def _nicks(numbered: list[_Numbered], top: float) -> str:
    """A short stroke where each number belongs, between the numbers and their strip."""
    return "".join(
        tag("line", {"x1": each.x, "x2": each.x, "y1": top, "y2": top + 4, "stroke": INK, "stroke-width": 1.4})
        for each in numbered
    )


def _numbered(marks: list[Mark], time: Axis, *, first: int) -> list[_Numbered]:
    return [_Numbered(time.at(mark.at_s), first + index, mark.label) for index, mark in enumerate(marks)]


def _turned(turned: tuple[Turned, ...], time: Axis, *, first: int) -> list[_Numbered]:
    return [
        _Numbered(
            time.at(each.at_s), first + n, each.label, None if each.reported_s is None else time.at(each.reported_s)
        )
        for n, each in enumerate(turned)
    ]


def _fits(stretch: Stretch, time: Axis) -> bool:
    room = time.at(stretch.end_s) - time.at(stretch.start_s)
    return max(text_width(stretch.label, _SIZE), 4 * _SIZE * 0.5) * _ROOMIER + 2 * _INSET <= room


def _strip(stretches: tuple[Stretch, ...], time: Axis, *, top: float) -> str:
    return "".join(_stretch(each, time, top=top) for each in stretches)


def _stretch(each: Stretch, time: Axis, *, top: float) -> str:
    """A box: hatched where an ignition is on, with a broken outline where nobody knows; its word on plain ground."""
    start, end = time.at(each.start_s), time.at(each.end_s)
    drawn = "".join(stretch_box(each, (start, end), top=top, size=(0.8, _STRIP)))
    if not each.label or not _fits(each, time):
        return drawn
    return drawn + _word(each.label, (start, end), top=top)


def _word(label: str, ends: tuple[float, float], *, top: float) -> str:
    """A word in its stretch on plain ground, with the room that other words may take there."""
    start, end = ends
    room, middle = end - start - 2.0, (start + end) / 2
    half = min(room / 2, max(text_width(label, _SIZE) * _ROOMIER, 4.4 * _SIZE) / 2)
    clear: Attributes = {"x": middle - half, "y": top + 5, "width": 2 * half, "height": _STRIP - 10, "fill": PAPER}
    style: Attributes = {"x": middle, "y": top + _STRIP * 0.65, "font-size": _SIZE, "fill": INK}
    style |= {"text-anchor": "middle", "data-room": room}
    return tag("rect", clear) + tag("text", style, escaped(label))


def _places(numbered: list[_Numbered], *, time: Axis) -> list[tuple[float, int]]:
    """For each number its middle and its row, so that none stands on another."""
    labels = [Label(each.x, text_width(str(each.number), _SIZE, bold=True)) for each in numbered]
    return label_rows(labels, low=_EDGE, high=time.high_px, gap=_GAP)


def _figure(each: _Numbered, at: tuple[float, float], *, fill: str) -> str:
    return letters(at, str(each.number), size=_SIZE, fill=fill, anchor="middle", bold=True)


def _row_of(numbered: list[_Numbered], top: float, *, time: Axis) -> tuple[str, float]:
    """Numbers in as many rows as they need, and where their rows end."""
    places = _places(numbered, time=time)
    rows = 1 + max((row for _, row in places), default=-1)
    drawn = (
        _figure(each, (x, top + 12 + row * _ROW), fill=INK) for each, (x, row) in zip(numbered, places, strict=True)
    )
    return "".join(drawn), top + rows * _ROW


def _between(turned: list[_Numbered], top: float, *, time: Axis) -> tuple[str, float]:
    """From each turn a line to its report in the accent, or a cross; beneath, its number. And where the unit begins."""
    places = _places(turned, time=time)
    rows = 1 + max((row for _, row in places), default=-1)
    numbers_y = top + _BETWEEN + 12
    bottom = top + _BETWEEN + rows * _ROW + NAME_SIZE + 14
    parts = []
    for each, (x, row) in zip(turned, places, strict=True):
        parts.append(_way(each, (top, bottom)))
        half, baseline = text_width(str(each.number), _SIZE, bold=True) / 2 + 1.5, numbers_y + row * _ROW
        clear: Attributes = {"x": x - half, "y": baseline - 11, "width": 2 * half, "height": 13, "fill": PAPER}
        parts.append(tag("rect", clear))
    parts += [
        _figure(each, (x, numbers_y + row * _ROW), fill=INK if each.late_x is None else ACCENT)
        for each, (x, row) in zip(turned, places, strict=True)
    ]
    return "".join(parts), bottom


def _way(each: _Numbered, ends: tuple[float, float]) -> str:
    """The line from a turn to its report; a cross below a turn that was not reported."""
    top, bottom = ends
    if each.late_x is None:
        return _cross(each.x, top + 11)
    points = [(each.x, top), (each.x, top + 6), (each.late_x, top + 16), (each.late_x, bottom)]
    return tag("path", {"d": path(points), "stroke": ACCENT, "stroke-width": 2.0, "fill": "none"})


def _cross(x: float, y: float) -> str:
    arms = path([(x - 5, y - 5), (x + 5, y + 5)]) + path([(x - 5, y + 5), (x + 5, y - 5)])
    return tag("path", {"d": arms, "stroke": INK, "stroke-width": 2.6, "fill": "none"})


def _ticks(marks: tuple[Mark, ...], time: Axis, *, top: float) -> tuple[str, float]:
    """The time of day where there is room for it, and its baseline."""
    parts, taken = [], 0.0
    for mark in marks:
        x, half = time.at(mark.at_s), text_width(mark.label, _SIZE) / 2
        if x - half < taken or x + half > time.high_px + _EDGE:
            continue
        taken = x + half + 3 * _GAP
        parts.append(tag("line", {"x1": x, "x2": x, "y1": top, "y2": top + 4, "stroke": RULE, "stroke-width": 1.0}))
        parts.append(letters((x, top + 16), mark.label, size=_SIZE, fill=SOFT_INK, anchor="middle"))
    return "".join(parts), top + 16


def _list(numbered: list[_Numbered], y: float, *, room: float) -> tuple[str, float]:
    """What each number stands for, and where the list ends."""
    parts, indent = [], 26.0
    for each in numbered:
        said, after = paragraph((_EDGE + indent, y), each.label, room=room - indent, fill=INK)
        parts.append(letters((_EDGE, y), str(each.number), size=TEXT_SIZE, fill=INK, bold=True) + said)
        y = max(after, y + TEXT_SIZE) + 2
    return "".join(parts), y - 4
