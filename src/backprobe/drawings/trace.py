"""What a waveform picture is made from, and its thinning to what a picture can show."""

from __future__ import annotations

import math
from dataclasses import dataclass

Point = tuple[float, float, float]
_LARGEST = 1e300  # beyond this sums run off the end of what a float can hold


@dataclass(frozen=True, slots=True)
class Trace:
    """One channel: `points` are (time_s, low, high) in the order of time, each the extremes of one step.

    A point whose low or high is not a number is a gap: no line is drawn across it.
    """

    name: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class KeySpan:
    """The key stood at `label` from `start_s` to `end_s`."""

    start_s: float
    end_s: float
    label: str


@dataclass(frozen=True, slots=True)
class CrankSpan:
    """A crank attempt; `label` says which, and how sure it is where it was inferred."""

    start_s: float
    end_s: float
    label: str = "crank"


@dataclass(frozen=True, slots=True)
class LimitLine:
    """A limit across the picture, in the unit of the traces; `label` stands on the line."""

    value: float
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Waveform:
    """Several channels against time with what is needed to read them.

    `unit` is the unit of every trace and limit, `time_unit` that of the time axis; `note` stands beneath the
    picture (say, that the time is not known).
    """

    traces: tuple[Trace, ...]
    limits: tuple[LimitLine, ...] = ()
    keys: tuple[KeySpan, ...] = ()
    cranks: tuple[CrankSpan, ...] = ()
    title: str = "Crank waveform"
    unit: str = "V"
    time_unit: str = "s"
    note: str = ""


def is_gap(point: Point) -> bool:
    """Whether a point holds no values that can be drawn."""
    return not all(math.isfinite(part) and abs(part) < _LARGEST for part in point)


def pieces(trace: Trace) -> list[list[Point]]:
    """The trace cut at its gaps: runs of points that belong together."""
    runs: list[list[Point]] = [[]]
    for point in trace.points:
        if is_gap(point):
            if runs[-1]:
                runs.append([])
        else:
            runs[-1].append(point)
    return [run for run in runs if run]


def thinned(run: list[Point], *, start_s: float, step_s: float) -> list[Point]:
    """At most one point for each step of time, with the lowest low and the highest high of the step.

    Nothing that stands out is lost: a dip of one row is still the low of its step. The time is that of the
    step's first point.

    >>> thinned([(0.0, 9, 9), (0.1, 7, 8), (1.2, 5, 6)], start_s=0.0, step_s=1.0)
    [(0.0, 7, 9), (1.2, 5, 6)]
    """
    if step_s <= 0:
        return run
    kept: list[Point] = []
    current = -1
    for time_s, low, high in run:
        column = int((time_s - start_s) // step_s)
        if column == current:
            first_s, least, most = kept[-1]
            kept[-1] = (first_s, min(low, least), max(high, most))
        else:
            kept.append((time_s, low, high))
            current = column
    return kept
