"""The charge that is left in a parked vehicle's battery, day by day, down to what a start needs.

A tinted band from the worst to the best, the likely as a firm line; the charge needed to crank at the coldest as a
hatched band with a dashed line; the wanted days as an upright line. All of it is told apart by shape, so that a grey
print keeps it.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.drawings.axes import Axis, Label, label_rows
from backprobe.drawings.figures import short_figure_text
from backprobe.drawings.lettering import letters, text_width, wrapped
from backprobe.drawings.marks import hatched
from backprobe.drawings.palette import ACCENT, INK, PAPER, RULE, SOFT_INK, TINT
from backprobe.drawings.svg import Attributes, path, picture, tag

WIDTH, NARROWEST = 760.0, 320.0
_TOP, _HEIGHT, _LEFT, _RIGHT = 40.0, 130.0, 48.0, 14.0
_SIZE, _LINE = 11.0, 14.0
_LEAST_DAY_TICK, _LEAST_PART_TICK = 56.0, 32.0
_FLAG_GAP = 10.0

Line = tuple[float, ...]
Range = tuple[float, float, float]  # worst, likely and best, or low, likely and high


@dataclass(frozen=True, slots=True, kw_only=True)
class ParkedCurve:
    """What is drawn: at each of `days` the part of the rated capacity left, for `worst`, `likely`, `best`.

    `needed` is the part that a start at the coldest needs, `until` the days until then: each low, likely, high.
    """

    title: str
    days: Line
    worst: Line
    likely: Line
    best: Line
    needed: Range
    until: Range
    coldest_C: float
    wanted_days: float | None = None


def parked_curve(content: ParkedCurve, *, width: float = WIDTH) -> str:
    """The picture as one SVG string, `width` units wide (at least 320)."""
    width = max(width, NARROWEST)
    flags = _flags(content)
    day, part = _axes(content, width)
    labels = label_rows(
        [Label(day.at(at), text_width(text, _SIZE, bold=True)) for at, text, _ in flags],
        low=0.0,
        high=width,
        gap=_FLAG_GAP,
    )
    words = wrapped(_LEGEND.format(short_figure_text(content.coldest_C, 1)), size=_SIZE, room=width)
    bottom = part.low_px + 34.0
    return picture(
        (width, bottom + len(words) * _LINE),
        (content.title, described_curve(content)),
        tag("rect", {"width": width, "height": bottom + len(words) * _LINE, "fill": PAPER}),
        _need(content, day, part=part),
        _grid(day, part),
        _band(content, day, part=part),
        "".join(
            _flag(day.at(at), text, place=place, firm=firm, bottom=part.low_px)
            for (at, text, firm), place in zip(flags, labels, strict=True)
        ),
        "".join(
            letters((0.0, bottom + (row + 0.5) * _LINE), line, size=_SIZE, fill=SOFT_INK)
            for row, line in enumerate(words)
        ),
    )


_LEGEND = (
    "Firm line: the charge left, likely; tint around it: worst to best. Hatched: what a start at {} °C may need, "
    "dashed: likely. Parts of the rated charge, against days parked."
)


def described_curve(content: ParkedCurve) -> str:
    """The picture in words."""
    low, likely, high = content.until
    wanted = "" if content.wanted_days is None else f" Wanted: {content.wanted_days:g} days."
    return (
        f"The charge falls from {content.likely[0]:.0%} of the rated; a start at {content.coldest_C:g} °C needs "
        f"{content.needed[1]:.0%}, {content.needed[0]:.0%} to {content.needed[2]:.0%}. It is reached after "
        f"{likely:.1f} days, at the earliest {low:.1f}, at the latest {high:.1f}.{wanted}"
    )


def _axes(content: ParkedCurve, width: float) -> tuple[Axis, Axis]:
    day = Axis(0.0, max(content.days[-1], 1e-6), _LEFT, width - _RIGHT)
    return day, Axis(0.0, 1.0, _TOP + 2 * _LINE + _HEIGHT, _TOP + 2 * _LINE)


def _flags(content: ParkedCurve) -> list[tuple[float, str, bool]]:
    """The upright lines: where, what they say, and whether they are firm."""
    last = content.days[-1]
    named = zip(content.until, ("worst", "likely", "best"), strict=True)
    flags = [(at, f"{name} {at:.1f} d", False) for at, name in named if at <= last]
    if content.wanted_days is not None and content.wanted_days <= last:
        flags.append((content.wanted_days, f"wanted {content.wanted_days:g} d", True))
    return sorted(flags)


def _flag(x: float, text: str, *, place: tuple[float, int], firm: bool, bottom: float) -> str:
    middle, row = place
    top = _TOP + _LINE - row * _LINE
    line: Attributes = {"x1": x, "y1": top + 3, "x2": x, "y2": bottom, "stroke": INK if firm else RULE}
    dash: Attributes = {"stroke-width": 2.2} if firm else {"stroke-dasharray": "2 3"}
    return tag("line", line | dash) + letters((middle, top), text, size=_SIZE, fill=INK, anchor="middle", bold=True)


def _need(content: ParkedCurve, day: Axis, *, part: Axis) -> str:
    low, likely, high = (part.at(min(value, 1.0)) for value in content.needed)
    wide = day.high_px - day.low_px
    line: Attributes = {"x1": day.low_px, "y1": likely, "x2": day.high_px, "y2": likely, "stroke": INK}
    dashed = tag("line", line | {"stroke-dasharray": "7 3", "stroke-width": 1.4})
    return hatched((day.low_px, high, wide, max(low - high, 1.0)), fill=TINT) + dashed


def _band(content: ParkedCurve, day: Axis, *, part: Axis) -> str:
    worst, likely, best = (
        [(day.at(at), part.at(value)) for at, value in zip(content.days, values, strict=True)]
        for values in (content.worst, content.likely, content.best)
    )
    tint = tag("path", {"d": path(worst + best[::-1], closed=True), "fill": ACCENT, "fill-opacity": 0.18})
    edges = tag("path", {"d": path(worst) + path(best), "stroke": ACCENT, "stroke-width": 0.8, "fill": "none"})
    return tint + edges + tag("path", {"d": path(likely), "stroke": ACCENT, "stroke-width": 2.4, "fill": "none"})


def _grid(day: Axis, part: Axis) -> str:
    box: Attributes = {"x": day.low_px, "y": part.high_px, "width": day.high_px - day.low_px}
    parts = [tag("rect", {**box, "height": part.low_px - part.high_px, "fill": "none", "stroke": RULE})]
    for value in part.ticks(_LEAST_PART_TICK):
        place = (day.low_px - 6, part.at(value) + _SIZE * 0.35)
        parts.append(letters(place, f"{value:.0%}", size=_SIZE, fill=SOFT_INK, anchor="end"))
    for value in day.ticks(_LEAST_DAY_TICK):
        x, text = day.at(value), f"{short_figure_text(value, 2)} d"
        parts.append(tag("line", {"x1": x, "y1": part.low_px, "x2": x, "y2": part.low_px + 4, "stroke": RULE}))
        anchor = "middle" if x + text_width(text, _SIZE) / 2 <= day.high_px + _RIGHT else "end"
        parts.append(letters((x, part.low_px + 17), text, size=_SIZE, fill=SOFT_INK, anchor=anchor))
    return "".join(parts)
