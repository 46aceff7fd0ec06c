"""A key script as two strips: above what the hand did, below what the unit said, and between them how late it said it.

The key's positions in which an ignition must be live are hatched above; the times in which the unit said that it is on
are hatched below. On a healthy unit the two hatched patterns lie beneath one another. All of it is told apart by shape
and word, so that a grey print keeps it.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.drawings.axes import Axis, Label, flag_rows, label_rows
from backprobe.drawings.lettering import letters, text_width
from backprobe.drawings.marks import hatched
from backprobe.drawings.palette import ACCENT, INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.svg import Attributes, path, picture, tag

WIDTH, NARROWEST = 760.0, 320.0
_LEFT, _RIGHT = 62.0, 6.0
_SIZE, _LINE, _STRIP = 11.0, 14.0, 20.0
_GAP = 30.0  # between the strips: room for the lines from turn to report
_FLAG_GAP, _INSET, _LEAST_TICK = 4.0, 4.0, 46.0
_TOP_MARGIN, _FOOT = 4.0, 4.0


@dataclass(frozen=True, slots=True)
class Stretch:
    """From when to when [s], the word for it, and whether it stands for an ignition that is on.

    None: nobody knows. That is drawn with a broken outline.
    """

    start_s: float
    end_s: float
    label: str
    on: bool | None = None


@dataclass(frozen=True, slots=True)
class Turned:
    """A turn of the key that the unit must report [s]: when it did so, None where it did not, and the words for it."""

    at_s: float
    reported_s: float | None
    label: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A moment [s] with a word: a door, a restart, an event for which nobody turned the key."""

    at_s: float
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Turns:
    """What is drawn, in seconds from the start. `ticks` are moments with the time of day."""

    hand: tuple[Stretch, ...]
    unit: tuple[Stretch, ...]
    turned: tuple[Turned, ...] = ()
    by_hand: tuple[Mark, ...] = ()
    by_unit: tuple[Mark, ...] = ()
    ticks: tuple[Mark, ...] = ()

    @property
    def end_s(self) -> float:
        """Where the picture ends."""
        return max(stretch.end_s for stretch in (*self.hand, *self.unit))


def turns(content: Turns, *, width: float = WIDTH) -> str:
    """The picture as one SVG string, `width` units wide (at least 320), as high as its words need."""
    width = max(width, NARROWEST)
    time = Axis(0.0, max(content.end_s, 1.0), _LEFT, width - _RIGHT)
    above, rows = _flags(_short(content.hand, time) + list(content.by_hand), time, upwards=True)
    hand_y = _TOP_MARGIN + rows * _LINE
    unit_y = hand_y + _STRIP + _GAP
    below, rows_below = _flags(list(content.by_unit), time, upwards=False)
    ticks_y = unit_y + _STRIP + rows_below * _LINE + (_FLAG_GAP if rows_below else 0.0)
    height = ticks_y + _LINE + _FOOT
    return picture(
        (width, height),
        ("What the unit reported", described_turns(content)),
        tag("rect", {"width": width, "height": height, "fill": PAPER}),
        _named("the hand", hand_y),
        _named("the unit", unit_y),
        _strip(content.hand, time, top=hand_y),
        _strip(content.unit, time, top=unit_y),
        _moved(above, hand_y),
        _moved(below, unit_y + _STRIP),
        _late(content.turned, time, top=hand_y + _STRIP),
        _ticks(content.ticks, time, top=ticks_y),
    )


def described_turns(content: Turns) -> str:
    """The picture in words."""
    hand = ", ".join(stretch.label for stretch in content.hand)
    told = "; ".join(turn.label for turn in content.turned) or "none to report"
    odd = "; ".join(mark.label for mark in content.by_unit)
    return f"The key: {hand}. The unit: {told}{f'; {odd}' if odd else ''}."


def _named(text: str, top: float) -> str:
    return letters((_LEFT - 7, top + _STRIP * 0.7), text, size=_SIZE, fill=SOFT_INK, anchor="end")


def _fits(stretch: Stretch, time: Axis) -> bool:
    return text_width(stretch.label, _SIZE) + 2 * _INSET <= time.at(stretch.end_s) - time.at(stretch.start_s)


def _short(stretches: tuple[Stretch, ...], time: Axis) -> list[Mark]:
    """The words that have no room in their stretch."""
    return [Mark(each.start_s, each.label) for each in stretches if each.label and not _fits(each, time)]


def _strip(stretches: tuple[Stretch, ...], time: Axis, *, top: float) -> str:
    return "".join(_stretch(each, time, top=top) for each in stretches)


def stretch_box(each: Stretch, span: tuple[float, float], *, top: float, size: tuple[float, float]) -> tuple[str, str]:
    """What lies beneath a stretch, hatched where an ignition is on, and its outline, broken where nobody knows.

    `span` is where it begins and ends; `size` its least width and its height.
    """
    (start, end), (least, height) = span, size
    width = max(end - start, least)
    box: Attributes = {"x": start, "y": top, "width": width, "height": height}
    outline: Attributes = {**box, "fill": "none", "stroke": RULE, "stroke-width": 1.0}
    if each.on is None:
        outline["stroke-dasharray"] = "4 4"
    return hatched((start, top, width, height)) if each.on else "", tag("rect", outline)


def _stretch(each: Stretch, time: Axis, *, top: float) -> str:
    """A box: hatched where an ignition is on, with a broken outline where nobody knows; its word on plain ground."""
    start, end = time.at(each.start_s), time.at(each.end_s)
    ground, outline = stretch_box(each, (start, end), top=top, size=(0.6, _STRIP))
    word = ""
    if each.label and _fits(each, time):
        middle, half = (start + end) / 2, text_width(each.label, _SIZE) / 2 + 2.0
        clear: Attributes = {"x": middle - half, "y": top + 3, "width": 2 * half, "height": _STRIP - 6, "fill": PAPER}
        word = tag("rect", clear) + letters(
            (middle, top + _STRIP * 0.7), each.label, size=_SIZE, fill=INK, anchor="middle"
        )
    return ground + outline + word


def _flags(marks: list[Mark], time: Axis, *, upwards: bool) -> tuple[list[tuple[float, float, float, str]], int]:
    """Words that fly from a short lead: (x of the lead, x of the word, its row, text), and how many rows they take."""
    marks = sorted(marks, key=lambda mark: mark.at_s)
    sizes = [text_width(mark.label, _SIZE) for mark in marks]
    xs = [time.at(mark.at_s) for mark in marks]
    rows = flag_rows([(x, size + 2 * _FLAG_GAP) for x, size in zip(xs, sizes, strict=True)])
    placed = [
        (x, _beside(x, size, high=time.high_px), -row - 1.0 if upwards else row + 1.0, mark.label)
        for mark, x, size, row in zip(marks, xs, sizes, rows, strict=True)
    ]
    return placed, 1 + max(rows, default=-1)


def _beside(x: float, size: float, *, high: float) -> float:
    """Where a flag's word begins: to the right of its lead, or to the left where there is no room."""
    return x + _FLAG_GAP if x + _FLAG_GAP + size <= high else max(0.0, x - _FLAG_GAP - size)


def _moved(flags: list[tuple[float, float, float, str]], edge: float) -> str:
    """The flags drawn at the edge of their strip."""
    parts = []
    for x, word_x, row, text in flags:
        far = edge + row * _LINE
        lead: Attributes = {"x1": x, "x2": x, "y1": edge, "y2": far + (0 if row > 0 else 3), "stroke": INK}
        baseline = far if row > 0 else far + 11
        parts.append(tag("line", {**lead, "stroke-width": 1.0}))
        parts.append(letters((word_x, baseline), text, size=_SIZE, fill=INK))
    return "".join(parts)


def _late(turned: tuple[Turned, ...], time: Axis, *, top: float) -> str:
    """From each turn to its report a line in the accent, with how late it is; where none came a cross."""
    spots = [
        Label(
            (time.at(each.at_s) if each.reported_s is None else time.at(each.reported_s)), text_width(each.label, _SIZE)
        )
        for each in turned
    ]
    places = label_rows(spots, low=_LEFT, high=time.high_px, gap=_FLAG_GAP)
    parts = []
    for each, (middle, _) in zip(turned, places, strict=True):
        start, bottom = time.at(each.at_s), top + _GAP
        if each.reported_s is None:
            parts.append(_cross(start, top + _GAP / 2))
        else:
            line = path(
                [
                    (start, top),
                    (start, top + 4),
                    (time.at(each.reported_s), bottom - 4),
                    (time.at(each.reported_s), bottom),
                ]
            )
            parts.append(tag("path", {"d": line, "stroke": ACCENT, "stroke-width": 2.0, "fill": "none"}))
        half = text_width(each.label, _SIZE) / 2
        at = min(middle + half + 8, time.high_px - half)
        parts.append(letters((at, top + _GAP * 0.64), each.label, size=_SIZE, fill=ACCENT, anchor="middle"))
    return "".join(parts)


def _cross(x: float, y: float) -> str:
    arms = path([(x - 4, y - 4), (x + 4, y + 4)]) + path([(x - 4, y + 4), (x + 4, y - 4)])
    return tag("path", {"d": arms, "stroke": INK, "stroke-width": 2.4, "fill": "none"})


def _ticks(marks: tuple[Mark, ...], time: Axis, *, top: float) -> str:
    parts, taken = [], -1e9
    for mark in marks:
        x = time.at(mark.at_s)
        half = text_width(mark.label, _SIZE) / 2
        if x - half < taken + _LEAST_TICK - 2 * half or x + half > time.high_px + _RIGHT:
            continue
        taken = x + half
        parts.append(tag("line", {"x1": x, "x2": x, "y1": top, "y2": top + 3, "stroke": RULE, "stroke-width": 1.0}))
        parts.append(letters((x, top + _LINE), mark.label, size=_SIZE, fill=SOFT_INK, anchor="middle"))
    return "".join(parts)
