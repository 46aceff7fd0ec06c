"""The limits of a waveform, their words standing on the line where they hide nothing.

What people look for is where a wire comes close to a limit; so the words are put where no wire is near, away from
the cranks, and only if there is no such place do they stand over something.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate

from backprobe.drawings.lettering import cut, letters, text_width
from backprobe.drawings.palette import INK, PAPER
from backprobe.drawings.plot import PixelPoint, Plot, within
from backprobe.drawings.svg import Attributes, tag
from backprobe.drawings.trace import CrankSpan, LimitLine

_SIZE = 11.5
_ROW = 14.0  # the height of a line of words
_INSET = 8.0
_OVER_WIRE, _OVER_CRANK, _OVER_LIMIT, _OVER_WORDS = 1.0, 0.3, 2.0, 50.0  # what a pixel column costs


@dataclass(frozen=True, slots=True)
class Obstacle:
    """Something that words should not stand on, and what each of its pixel columns costs."""

    left: float
    right: float
    top: float
    bottom: float
    cost: float


def limit_lines(
    limits: tuple[LimitLine, ...], plot: Plot, *, drawn: list[list[list[PixelPoint]]], cranks: tuple[CrankSpan, ...]
) -> str:
    """Each limit as a firm line across the field with its words on it; `drawn` are the traces in pixels."""
    obstacles = _wires(drawn) + _cranks(cranks, plot) + [_line(limit, plot) for limit in limits]
    parts = []
    for limit in limits:
        y = plot.level.at(limit.value)
        words = cut(limit.label, size=_SIZE, room=plot.right - plot.left - 2 * _INSET, bold=True)
        width = text_width(words, _SIZE, bold=True)
        x, baseline = _best_place(obstacles, plot, y=y, width=width)
        obstacles.append(Obstacle(x - _INSET, x + width + _INSET, baseline - 10, baseline + 3, _OVER_WORDS))
        line: Attributes = {"x1": plot.left, "x2": plot.right, "y1": y, "y2": y, "stroke": INK, "stroke-width": 1.4}
        ground: Attributes = {"x": x - 2, "y": baseline - 9.5, "width": width + 4, "height": 11.5, "fill": PAPER}
        parts.append(tag("line", line) + tag("rect", {**ground, "fill-opacity": 0.75}))
        parts.append(letters((x, baseline), words, size=_SIZE, fill=INK, bold=True))
    return "".join(parts)


def _wires(drawn: list[list[list[PixelPoint]]]) -> list[Obstacle]:
    found = []
    for runs in drawn:
        for run in runs:
            for (x0, low0, high0), (x1, low1, high1) in zip(run, run[1:] or run, strict=False):
                levels = (low0, high0, low1, high1)
                found.append(Obstacle(x0, x1, min(levels), max(levels), _OVER_WIRE))
    return found


def _cranks(cranks: tuple[CrankSpan, ...], plot: Plot) -> list[Obstacle]:
    spans = [within(plot.time, crank.start_s, end=crank.end_s) for crank in cranks]
    return [Obstacle(start, end, plot.top, plot.bottom, _OVER_CRANK) for start, end in spans]


def _line(limit: LimitLine, plot: Plot) -> Obstacle:
    y = plot.level.at(limit.value)
    return Obstacle(plot.left, plot.right, y, y, _OVER_LIMIT)


def _best_place(obstacles: list[Obstacle], plot: Plot, *, y: float, width: float) -> tuple[float, float]:
    """Where the words hide least: (x, baseline), above the line before beneath it, left before right."""
    places = []
    for order, baseline in enumerate((y - 4, y + 11.5)):
        top, bottom = baseline - 9, baseline + 2.5
        if top < plot.top or bottom > plot.bottom:
            continue
        costs = _running_costs([o for o in obstacles if o.top < bottom and o.bottom > top], plot)
        for x in range(int(plot.left + _INSET), int(plot.right - _INSET - width) + 1, 4):
            first, last = int(x - plot.left), min(int(x + width - plot.left) + 1, len(costs) - 1)
            places.append((round(costs[last] - costs[first], 3), order, float(x), baseline))
    cost_order_place = min(places, default=(0.0, 0, plot.left + _INSET, y - 4))
    return cost_order_place[2], cost_order_place[3]


def _running_costs(obstacles: list[Obstacle], plot: Plot) -> list[float]:
    """The summed cost of the pixel columns left of each column of the field."""
    columns = int(plot.right - plot.left) + 2
    steps = [0.0] * (columns + 1)  # where a cost begins and where it ends
    for obstacle in obstacles:
        first = max(0, int(obstacle.left - plot.left))
        last = min(columns - 1, int(obstacle.right - plot.left))
        if first <= last:
            steps[first] += obstacle.cost
            steps[last + 1] -= obstacle.cost
    return [0.0, *accumulate(accumulate(steps[:columns]))]
