"""The margin bar: one picture for every finding, on the phone, on the desk and on paper.

From left to right: the figure with its unit, large, and beneath it the range that the evidence allows and the
margin; the scale with the limit as a firm line, the allowed side hatched, the value as a dot and its range as a
whisker; the verdict as a shape and a word. The basis of the limit stands small beneath the scale.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from backprobe.drawings.figures import figure_text, nice_step, step_digits, ticks, with_unit
from backprobe.drawings.lettering import cut, figure_letters, figure_width, letters, text_width, wrapped
from backprobe.drawings.margin_words import described, finite, limit_text, margin_text, range_text
from backprobe.drawings.marks import arrow_head, hatched, verdict_shape
from backprobe.drawings.palette import ACCENT, INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.scale import Scale, Spot, known_values, scale_for
from backprobe.drawings.svg import Attributes, picture, tag
from backprobe.findings import Finding, Side

WIDTH = 420.0
NARROWEST = 320.0

_FIGURE_COLUMN = 112.0
_VERDICT_COLUMN = 50.0
_GAP = 10.0
_BAND_TOP, _BAND_HEIGHT = 14.5, 16.0
_MIDDLE = _BAND_TOP + _BAND_HEIGHT / 2
_DOT_RADIUS = 5.5
_LIMIT_STROKE = 3.0
_DOT_CLEAR = _DOT_RADIUS + _LIMIT_STROKE / 2 + 0.5  # the whole dot stands on its side
_WHISKER_CLEAR = _LIMIT_STROKE / 2 + 1.5
_FIGURE_SIZE, _UNIT_SIZE, _LIMIT_SIZE, _SMALL, _TICK_SIZE = 27.0, 15.0, 11.5, 11.0, 10.0
_FIGURE_BASELINE, _RANGE_BASELINE, _BENEATH_LINE = 28.5, 41.0, 11.5  # the figure; range and margin beneath it
_WORDS_TOP, _WORDS_LINE = 52.5, 12.0
_FOOT = 3.5
_LEAST_TICK_GAP = 10.0


@dataclass(frozen=True, slots=True)
class _Frame:
    """The three columns for one width."""

    width: float

    @property
    def x_low(self) -> float:
        return _FIGURE_COLUMN + _GAP

    @property
    def x_high(self) -> float:
        return self.width - _VERDICT_COLUMN - _GAP


def margin_bar(finding: Finding, *, width: float = WIDTH) -> str:
    """The margin bar of `finding` as one SVG string, `width` units wide (at least 320), as high as it needs.

    A finding without a value gets the bar without a dot, and beneath it what is missing. `finding.limit` is
    taken to be in the finding's unit.
    """
    frame = _Frame(max(width, NARROWEST))
    scale = scale_for(finding, frame.x_low, x_high=frame.x_high)
    lines = _word_lines(finding, frame)
    height = _WORDS_TOP + max(0, len(lines) - 1) * _WORDS_LINE + _FOOT
    return picture(
        (frame.width, height),
        (f"{finding.what}: {finding.verdict}", described(finding)),
        tag("rect", {"width": frame.width, "height": height, "fill": PAPER}),
        _band(finding, scale),
        _tick_marks(finding, scale),
        _whisker(finding, scale),
        _limit_line(finding, scale),
        _dot(finding, scale),
        _figures(finding),
        _verdict(finding, frame),
        *(
            letters((frame.x_low, _WORDS_TOP + index * _WORDS_LINE), line, size=_SMALL, fill=SOFT_INK)
            for index, line in enumerate(lines)
        ),
    )


def _word_lines(finding: Finding, frame: _Frame) -> list[str]:
    """What stands small beneath the scale: what is missing, and what the limit rests on."""
    room = frame.width - frame.x_low
    missing = wrapped(finding.because, size=_SMALL, room=room) if finite(finding.value) is None else []
    without = "" if missing else "no limit is set for this"
    basis = without if finding.limit is None else finding.limit.warrant
    return missing + wrapped(basis, size=_SMALL, room=room)


def _figures(finding: Finding) -> str:
    value, margin = finite(finding.value), finite(finding.margin)
    baseline = _FIGURE_BASELINE
    if value is None:
        return letters((0, baseline - 2), "no value", size=_UNIT_SIZE, fill=SOFT_INK, bold=True)
    figure, unit = figure_text(value, finding.digits), f" {finding.unit}" if finding.unit else ""
    natural = figure_width(figure, _FIGURE_SIZE) + text_width(unit, _UNIT_SIZE, bold=True)
    fit = min(1.0, _FIGURE_COLUMN / natural)
    unit_x = figure_width(figure, _FIGURE_SIZE) * fit + text_width(" ", _UNIT_SIZE * fit, bold=True)
    parts = [figure_letters((0, baseline), figure, size=_FIGURE_SIZE * fit, fill=INK)]
    if finding.unit:
        parts.append(letters((unit_x, baseline), finding.unit, size=_UNIT_SIZE * fit, fill=INK, bold=True))
    beneath = [range_text(finding), "" if margin is None else margin_text(finding, margin)]
    for index, line in enumerate(text for text in beneath if text):
        parts.append(_fitted((0, _RANGE_BASELINE + index * _BENEATH_LINE), line))
    return "".join(parts)


def _fitted(at: tuple[float, float], text: str) -> str:
    """A small line in the figure column, smaller still where it would not fit."""
    size = min(_SMALL, _SMALL * _FIGURE_COLUMN / text_width(text, _SMALL))
    return letters(at, text, size=size, fill=INK)


def _band(finding: Finding, scale: Scale) -> str:
    """The track with its allowed side hatched; its outline is broken where there is no value."""
    width = scale.x_high - scale.x_low
    outline: Attributes = {"x": scale.x_low, "y": _BAND_TOP, "width": width, "height": _BAND_HEIGHT}
    outline |= {"fill": "none", "stroke": RULE, "stroke-width": 1.0}
    if finite(finding.value) is None:
        outline["stroke-dasharray"] = "4 4"
    start, end = _allowed(scale)
    return hatched((start, _BAND_TOP, end - start, _BAND_HEIGHT)) + tag("rect", outline)


def _allowed(scale: Scale) -> tuple[float, float]:
    """From where to where the allowed side reaches; nowhere without a limit."""
    if scale.limit is None:
        return scale.x_low, scale.x_low
    return (scale.zero_x, scale.x_high) if scale.limit.side is Side.AT_LEAST else (scale.x_low, scale.zero_x)


def _limit_line(finding: Finding, scale: Scale) -> str:
    """The limit as a firm line, in words above it on the side that it allows."""
    if scale.limit is None:
        return ""
    x, (start, end) = scale.zero_x, _allowed(scale)
    line: Attributes = {"x1": x, "x2": x, "y1": _BAND_TOP - 4, "y2": _BAND_TOP + _BAND_HEIGHT + 2.5}
    words = cut(limit_text(finding), size=_LIMIT_SIZE, room=end - start, bold=True)
    anchor = "start" if scale.limit.side is Side.AT_LEAST else "end"
    return tag("line", {**line, "stroke": INK, "stroke-width": _LIMIT_STROKE}) + letters(
        (x, _BAND_TOP - 5.5), words, size=_LIMIT_SIZE, fill=INK, anchor=anchor, bold=True
    )


def _tick_marks(finding: Finding, scale: Scale) -> str:
    """A few ticks beneath the band; none where nothing gives the scale a size."""
    if scale.limit is None and finite(finding.value) is None:
        return ""
    low, high = scale.value_at(scale.x_low), scale.value_at(scale.x_high)
    y = _BAND_TOP + _BAND_HEIGHT
    parts, taken = [], -math.inf
    for value, text in _tick_texts(finding, low, high=high):
        x = scale.zero_x + (value - scale.zero) / scale.per_px
        half = text_width(text, _TICK_SIZE) / 2
        if x - half < max(taken, scale.x_low - _GAP) or x + half > scale.x_high + _GAP:
            continue
        taken = x + half + _LEAST_TICK_GAP
        parts.append(tag("line", {"x1": x, "x2": x, "y1": y, "y2": y + 3, "stroke": RULE, "stroke-width": 1.0}))
        parts.append(letters((x, y + 11.0), text, size=_TICK_SIZE, fill=SOFT_INK, anchor="middle"))
    return "".join(parts)


def _tick_texts(finding: Finding, low: float, *, high: float) -> list[tuple[float, str]]:
    span = high - low
    if not (math.isfinite(span) and span > 0):
        return []
    step = nice_step(span / 4)
    digits = step_digits(step)
    shown = ticks(max(low, 0.0) if _never_negative(finding) else low, high, step=step)
    return [(value, with_unit(figure_text(value, digits), finding.unit)) for value in shown]


def _never_negative(finding: Finding) -> bool:
    """Whether nothing about the finding is below zero; then ticks below zero would only puzzle."""
    limit = () if finding.limit is None else (finding.limit.value,)
    return min((*known_values(finding), *limit), default=-1.0) >= 0


def _dot(finding: Finding, scale: Scale) -> str:
    """The value as a dot wholly on its side of the limit; an arrow at the edge where it is off the scale."""
    value = finite(finding.value)
    if value is None:
        return ""
    spot = scale.spot(value, clear=_DOT_CLEAR)
    if spot.beyond:
        halo = arrow_head((spot.x + spot.beyond * 10, _MIDDLE), spot.beyond, size=19, fill=PAPER)
        return halo + arrow_head((spot.x + spot.beyond * 7, _MIDDLE), spot.beyond, size=13, fill=ACCENT)
    disc: Attributes = {"cx": spot.x, "cy": _MIDDLE, "r": _DOT_RADIUS, "fill": ACCENT}
    return tag("circle", {**disc, "stroke": PAPER, "stroke-width": 1.5})


def _whisker(finding: Finding, scale: Scale) -> str:
    """A line over the range with a foot at each end; an end off the scale has an arrow instead."""
    value, low, high = finite(finding.value), finite(finding.low), finite(finding.high)
    if value is None or low is None or high is None:
        return ""
    dot = scale.spot(value, clear=_DOT_CLEAR).x
    ends = [scale.spot(min(low, value), clear=_WHISKER_CLEAR), scale.spot(max(high, value), clear=_WHISKER_CLEAR)]
    left, right = min(ends[0].x, dot), max(ends[1].x, dot)
    line: Attributes = {"x1": left, "x2": right, "y1": _MIDDLE, "y2": _MIDDLE}
    return (
        tag("line", {**line, "stroke": PAPER, "stroke-width": 5.5})
        + tag("line", {**line, "stroke": ACCENT, "stroke-width": 2.5})
        + _foot(left, ends[0])
        + _foot(right, ends[1])
    )


def _foot(x: float, end: Spot) -> str:
    if end.beyond:
        return arrow_head((x + end.beyond * 7, _MIDDLE), end.beyond, size=8, fill=ACCENT)
    upright: Attributes = {"x1": x, "x2": x, "y1": _MIDDLE - 6, "y2": _MIDDLE + 6}
    return tag("line", {**upright, "stroke": ACCENT, "stroke-width": 2.0})


def _verdict(finding: Finding, frame: _Frame) -> str:
    middle = frame.width - _VERDICT_COLUMN / 2
    shape = verdict_shape(finding.verdict, (middle - 9, _BAND_TOP - 8), size=18)
    word = letters((middle, _BAND_TOP + 24.5), str(finding.verdict), size=15, fill=INK, anchor="middle", bold=True)
    return shape + word
