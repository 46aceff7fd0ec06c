"""The field of a waveform: axes, crank shades, the lines with their names."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.drawings.axes import Axis, Label, axis_for, label_rows, spread
from backprobe.drawings.figures import figure_text, step_digits, with_unit
from backprobe.drawings.lettering import cut, letters, text_width, wrapped
from backprobe.drawings.marks import hatched
from backprobe.drawings.palette import ACCENT, INK, RULE, SOFT_INK, TINT
from backprobe.drawings.svg import Attributes, path, tag
from backprobe.drawings.trace import CrankSpan, Point, Trace, Waveform, pieces, thinned

PixelPoint = tuple[float, float, float]

TICK_SIZE = 11.0

_NAME_SIZE, _NAME_LINE, _NAME_LINES = 12.0, 13.5, 3
_NAME_SHARE = 0.24  # of the width, at most, for the names at the lines' ends
_LEADER = 26.0
_LAST_TICK = 18.0  # room for half a tick figure where no names stand at the right
_CRANK_SIZE, _CRANK_LINE = 11.0, 14.0
_LEAST_HEIGHT = 108.0
_LEVEL_PAD = 0.16  # above and below, so that words fit beneath the lowest limit
_LEAST_TIME_TICK, _LEAST_LEVEL_TICK = 64.0, 24.0
_DASHES = ("", "7 3", "2 2.5", "10 3 2 3", "16 4", "5 2 1 2 1 2")
_COLOURS = (INK, ACCENT)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """The field of the lines: its box, its two axes, the wrapped names, the rows of crank labels."""

    width: float  # of the whole picture
    left: float
    right: float
    top: float
    bottom: float
    time: Axis
    level: Axis
    names: tuple[tuple[str, ...], ...]
    crank_labels: tuple[tuple[float, int], ...]


def plot_for(content: Waveform, width: float, *, beside: Plot | None = None) -> Plot:
    """The field for `content` in a picture of `width`, high enough for the names beside it.

    With another field above or below it, `beside`, it has that one's two ends and its times.
    """
    points = [point for trace in content.traces for run in pieces(trace) for point in run]
    levels = [low for _, low, _ in points] + [high for _, _, high in points] + [line.value for line in content.limits]
    name_room = width * _NAME_SHARE - _LEADER
    names = tuple(_name_lines(trace.name, name_room) for trace in content.traces)
    widest = max((text_width(line, _NAME_SIZE, bold=True) for lines in names for line in lines), default=0.0)
    right = width - (widest + _LEADER if names else _LAST_TICK)
    height = max(_LEAST_HEIGHT, sum(len(lines) for lines in names) * _NAME_LINE)
    left = _level_room(levels, content.unit, height=height)
    time = _time_axis(content, points, left=left, right=right)
    if beside is not None:
        left, right, time = beside.left, beside.right, beside.time
    cranks = tuple(_crank_label_places(content.cranks, time, width=width))
    top = 6 + _CRANK_LINE * (1 + max((row for _, row in cranks), default=-1))
    level = axis_for(levels, low_px=top + height, high_px=top, pad=_LEVEL_PAD)
    return Plot(
        width=width,
        left=left,
        right=right,
        top=top,
        bottom=top + height,
        time=time,
        level=level,
        names=names,
        crank_labels=cranks,
    )


def _name_lines(name: str, room: float) -> tuple[str, ...]:
    """A channel's name in at most three lines, the rest cut with …"""
    lines = wrapped(name, size=_NAME_SIZE * 1.1, room=room)  # bold is up to a tenth wider
    kept = lines[:_NAME_LINES]
    if len(lines) > _NAME_LINES:
        kept[-1] = cut(" ".join(lines[_NAME_LINES - 1 :]), size=_NAME_SIZE, room=room, bold=True)
    return tuple(kept or ["?"])


def _level_room(levels: list[float], unit: str, *, height: float) -> float:
    """How wide the figures left of a field of `height` are: a higher one has more of them."""
    axis = axis_for(levels, low_px=height, high_px=0, pad=_LEVEL_PAD)
    texts = [_tick_text(value, step=axis.step(_LEAST_LEVEL_TICK), unit=unit) for value in axis.ticks(_LEAST_LEVEL_TICK)]
    return max((text_width(text, TICK_SIZE) for text in texts), default=0.0) + 8


def _tick_text(value: float, *, step: float, unit: str) -> str:
    return with_unit(figure_text(value, step_digits(step)), unit)


def _time_axis(content: Waveform, points: list[Point], *, left: float, right: float) -> Axis:
    """Time runs over what was recorded; over the key's positions where nothing was."""
    times = [time_s for time_s, _, _ in points]
    if not times:
        times = [edge for span in content.keys for edge in (span.start_s, span.end_s)]
    return axis_for(times, low_px=left, high_px=right, pad=0.0)


def _crank_label_places(cranks: tuple[CrankSpan, ...], time: Axis, *, width: float) -> list[tuple[float, int]]:
    labels = [
        Label((time.at(crank.start_s) + time.at(crank.end_s)) / 2, text_width(crank.label, _CRANK_SIZE, bold=True))
        for crank in cranks
    ]
    return label_rows(labels, low=0.0, high=width, gap=8.0)


def within(axis: Axis, start: float, *, end: float) -> tuple[float, float]:
    """The pixels from `start` to `end`, cut at the ends of the axis."""
    first, last = (min(max(value, axis.low), axis.high) for value in (start, end))
    return axis.at(first), axis.at(last)


def crank_shades(cranks: tuple[CrankSpan, ...], plot: Plot) -> str:
    """Each crank attempt as a hatched upright band, named above it."""
    parts = []
    for crank, (middle, row) in zip(cranks, plot.crank_labels, strict=True):
        start, end = within(plot.time, crank.start_s, end=crank.end_s)
        box = (start, plot.top, max(end - start, 1.5), plot.bottom - plot.top)
        place = (middle, plot.top - 5 - row * _CRANK_LINE)
        parts.append(hatched(box, fill=TINT, stroke="#d2cdc1"))
        parts.append(letters(place, crank.label, size=_CRANK_SIZE, fill=INK, anchor="middle", bold=True))
    return "".join(parts)


def grid(content: Waveform, plot: Plot) -> str:
    """The box, the figures of both axes and their ticks."""
    box: Attributes = {"x": plot.left, "y": plot.top, "width": plot.right - plot.left}
    parts = [tag("rect", {**box, "height": plot.bottom - plot.top, "fill": "none", "stroke": RULE})]
    step = plot.level.step(_LEAST_LEVEL_TICK)
    for value in plot.level.ticks(_LEAST_LEVEL_TICK):
        y = plot.level.at(value)
        parts.append(_tick((plot.left - 4, y), (plot.left, y)))
        place = (plot.left - 7, y + TICK_SIZE * 0.35)
        parts.append(
            letters(place, _tick_text(value, step=step, unit=content.unit), size=TICK_SIZE, fill=SOFT_INK, anchor="end")
        )
    step = plot.time.step(_LEAST_TIME_TICK)
    for value in plot.time.ticks(_LEAST_TIME_TICK):
        x = plot.time.at(value)
        text = _tick_text(value, step=step, unit=content.time_unit)
        parts.append(_tick((x, plot.bottom), (x, plot.bottom + 4)))
        half = text_width(text, TICK_SIZE) / 2
        place = (max(half, min(x, plot.width - half)), plot.bottom + 16)
        parts.append(letters(place, text, size=TICK_SIZE, fill=SOFT_INK, anchor="middle"))
    return "".join(parts)


def _tick(start: tuple[float, float], end: tuple[float, float]) -> str:
    return tag("line", {"x1": start[0], "y1": start[1], "x2": end[0], "y2": end[1], "stroke": RULE})


def _stroke(index: int) -> Attributes:
    """How the line of the trace with this index is drawn: the dash first, then the colour."""
    stroke: Attributes = {"stroke": _COLOURS[index % len(_COLOURS)], "stroke-width": 1.8, "fill": "none"}
    dash = _DASHES[index % len(_DASHES)]
    return {**stroke, "stroke-linejoin": "round"} | ({"stroke-dasharray": dash} if dash else {})


def pixel_runs(trace: Trace, plot: Plot) -> list[list[PixelPoint]]:
    """The trace as it is drawn: runs of (x, y of the low, y of the high), at most one a pixel column."""
    step_s = (plot.time.high - plot.time.low) / (plot.right - plot.left)
    return [
        [
            (plot.time.at(time_s), plot.level.at(low), plot.level.at(high))
            for time_s, low, high in thinned(run, start_s=plot.time.low, step_s=step_s)
        ]
        for run in pieces(trace)
    ]


def trace_line(runs: list[list[PixelPoint]], index: int) -> str:
    """The tint between the extremes and the line along the lows, broken at gaps."""
    if not runs:
        return ""
    tints, lines = [], []
    for run in runs:
        lows = [(x, low) for x, low, _ in run]
        highs = [(x, high) for x, _, high in reversed(run)]
        lines.append(path(lows if len(lows) > 1 else [(lows[0][0] - 1, lows[0][1]), (lows[0][0] + 1, lows[0][1])]))
        if any(low != high for _, low, high in run):
            tints.append(path(lows + highs, closed=True))
    tint: Attributes = {"d": "".join(tints), "fill": _COLOURS[index % len(_COLOURS)], "fill-opacity": 0.22}
    line = tag("path", {"d": "".join(lines), **_stroke(index)})
    return tag("path", tint) + line if tints else line


def line_names(content: Waveform, plot: Plot) -> str:
    """Each channel's name at the end of its line, with a stretch of the line leading to it."""
    ends = [_end_level(trace, plot) for trace in content.traces]
    labels = [Label(end, len(lines) * _NAME_LINE) for end, lines in zip(ends, plot.names, strict=True)]
    middles = spread(labels, low=plot.top, high=plot.bottom)
    parts = []
    for index, (end, middle, lines) in enumerate(zip(ends, middles, plot.names, strict=True)):
        leader = [(plot.right, end), (plot.right + _LEADER - 5, middle)]
        parts.append(tag("path", {"d": path(leader), **_stroke(index)}))
        first = middle - len(lines) * _NAME_LINE / 2 + _NAME_SIZE * 0.85
        fill = _COLOURS[index % len(_COLOURS)]
        for row, line in enumerate(lines):
            place = (plot.right + _LEADER, first + row * _NAME_LINE)
            parts.append(letters(place, line, size=_NAME_SIZE, fill=fill, bold=True))
    return "".join(parts)


def _end_level(trace: Trace, plot: Plot) -> float:
    """The height at which a trace ends; the middle of the field for one that has no points."""
    runs = pieces(trace)
    return plot.level.at(runs[-1][-1][1]) if runs else (plot.top + plot.bottom) / 2
