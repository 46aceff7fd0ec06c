"""The recording seen at two distances: the envelope of the whole, and raw rows where it matters.

A short recording is fetched whole, once. Of a long one only windows are fetched; each window is kept, and asking
for a part of it costs nothing.
"""

from __future__ import annotations

import math
from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from backprobe.evidence.recording import Channel, Recording

WHOLE_ROWS = 40_000  # a recording of up to this many rows is looked at whole
WINDOW_ROWS = 150_000  # no single window is longer than this many rows
NEAR_ROWS = 40_000  # stretches no further apart than this many rows are read in one go
LEVEL_BUCKETS = 3  # a level taken off the envelope needs this many buckets
CHUNK_S = 1.0


@dataclass(frozen=True, slots=True)
class Line:
    """One channel over a stretch: times [s], rising, and values in the channel's unit; empty cells are left out."""

    time_s: array[float]
    values: array[float]

    def __len__(self) -> int:
        return len(self.time_s)

    def between(self, from_s: float, to_s: float) -> Line:
        """The part from `from_s` to `to_s`, both included."""
        first, last = bisect_left(self.time_s, from_s), bisect_right(self.time_s, to_s)
        return Line(self.time_s[first:last], self.values[first:last])

    def above(self, least: float) -> Line:
        """The samples of at least `least`; the others are taken for lost contact."""
        if not self.values or min(self.values) >= least:
            return self
        kept = [(t, v) for t, v in zip(self.time_s, self.values, strict=True) if v >= least]
        return Line(array("d", [t for t, _ in kept]), array("d", [v for _, v in kept]))

    def thinned(self, step_s: float) -> Line:
        """Means of so many consecutive samples as fit into `step_s`; times are those of the first of each."""
        count = int(min(step_s / self.step_s, len(self)) + 0.5) if self.step_s > 0 else 1
        if count <= 1:
            return self
        starts = range(0, len(self), count)
        parts = (self.values[start : start + count] for start in starts)
        return Line(self.time_s[::count], array("d", [math.fsum(part) / len(part) for part in parts]))

    @property
    def step_s(self) -> float:
        """The median step between samples [s]; 0 with fewer than two."""
        return step_of(self.time_s)

    def median(self) -> float | None:
        """The median of the values; None of nothing."""
        return median(self.values) if self.values else None


EMPTY = Line(array("d"), array("d"))


def step_of(time_s: array[float]) -> float:
    """The median step of rising times [s]; of a long stretch, the median over 999 steps taken evenly."""
    if len(time_s) < 2:
        return 0.0
    stride = max(1, len(time_s) // 1000)
    return median(time_s[i + 1] - time_s[i] for i in range(0, len(time_s) - 1, stride))


class Sight:
    """A recording with the windows of it that were fetched already."""

    __slots__ = ("_windows", "channels", "recording")

    def __init__(self, recording: Recording) -> None:
        self.recording = recording
        self.channels = {channel.name: channel for channel in recording.channels}
        self._windows: list[tuple[float, float, dict[str, Line]]] = []
        if self.whole:
            self._fetch(recording.start_s, recording.end_s)

    @property
    def whole(self) -> bool:
        """Whether every row is at hand."""
        return self.recording.rows <= WHOLE_ROWS

    def fetch(self, spans: Iterable[tuple[float, float]]) -> None:
        """Fetch the rows of many stretches at once.

        Finding a place in a large file costs as much as reading many rows: stretches that lie near are read in one go.
        """
        if self.whole:
            return
        wanted = [span for span in spans if self._window(*span) is None]
        for from_s, to_s in merged(wanted, gap_s=self.seconds_of(NEAR_ROWS), most_s=self.longest_s):
            self._fetch(max(from_s, self.recording.start_s), min(to_s, self.recording.end_s))

    def seconds_of(self, rows: int) -> float:
        """How long a stretch of so many rows is [s]."""
        return rows * max(self.recording.interval_s, 1e-9)

    @property
    def longest_s(self) -> float:
        """The longest stretch that is fetched in one go [s]."""
        return math.inf if self.whole else self.seconds_of(WINDOW_ROWS)

    def line(self, name: str, *, from_s: float, to_s: float) -> Line:
        """The channel's samples between two times, the first `longest_s` of them."""
        first, last = max(from_s, self.recording.start_s), min(to_s, self.recording.end_s, from_s + self.longest_s)
        if last < first:
            return EMPTY
        window = self._window(first, last)
        if window is None:
            window = self._fetch(first, last)
        return window[name].between(first, last)

    def level(self, name: str, *, from_s: float, to_s: float) -> float | None:
        """The channel's median level between two times; off the envelope where that is fine enough."""
        if self._window(from_s, to_s) is None:
            mids = self._mids(name, from_s=from_s, to_s=to_s)
            if len(mids) >= LEVEL_BUCKETS:
                return median(mids)
        return self.line(name, from_s=from_s, to_s=to_s).median()

    def levels(self, name: str, *, from_s: float, to_s: float) -> list[float]:
        """The levels of successive stretches of about a second (or a bucket, where that is longer)."""
        if self._window(from_s, to_s) is None:
            mids = self._mids(name, from_s=from_s, to_s=to_s)
            if len(mids) >= LEVEL_BUCKETS:
                return mids
        line = self.line(name, from_s=from_s, to_s=to_s)
        count = max(1, math.ceil((to_s - from_s) / CHUNK_S))
        parts = (line.between(from_s + i * CHUNK_S, from_s + (i + 1) * CHUNK_S) for i in range(count))
        return [level for part in parts if (level := part.median()) is not None]

    def _mids(self, name: str, *, from_s: float, to_s: float) -> list[float]:
        """The middles of the buckets that lie wholly between two times."""
        starts = self.recording.bucket_start_s
        first, last = bisect_left(starts, from_s), bisect_right(starts, to_s) - 1
        envelope = self.channels[name].envelope
        pairs = zip(envelope.lows[first:last], envelope.highs[first:last], strict=True)
        return [(low + high) / 2 for low, high in pairs if math.isfinite(low) and math.isfinite(high)]

    def _window(self, from_s: float, to_s: float, /) -> dict[str, Line] | None:
        first, last = max(from_s, self.recording.start_s), min(to_s, self.recording.end_s)
        found = (lines for start, end, lines in self._windows if start <= first and last <= end)
        return next(found, None)

    def _fetch(self, from_s: float, to_s: float) -> dict[str, Line]:
        window = self.recording.fine(from_s, to_s)
        lines = {name: _finite(window.time_s, values) for name, values in window.values.items()}
        for name in self.channels:
            lines.setdefault(name, EMPTY)
        self._windows.append((from_s, to_s, lines))
        return lines


def merged(
    spans: Iterable[tuple[float, float]], *, gap_s: float = 0.0, most_s: float = math.inf
) -> list[tuple[float, float]]:
    """The stretches in order of time; those that overlap, or lie no more than `gap_s` apart, made one.

    None is made longer than `most_s` [s] by joining.

    >>> merged([(5.0, 6.0), (1.0, 2.0), (2.5, 3.0)], gap_s=0.5)
    [(1.0, 3.0), (5.0, 6.0)]
    """
    found: list[tuple[float, float]] = []
    for from_s, to_s in sorted(spans):
        if found and from_s <= found[-1][1] + gap_s and to_s - found[-1][0] <= most_s:
            found[-1] = (found[-1][0], max(found[-1][1], to_s))
        else:
            found.append((from_s, to_s))
    return found


def buckets(recording: Recording, channel: Channel) -> list[tuple[float, float, float, float]]:
    """The channel's buckets that hold a value: beginning and end [s], lowest and highest value."""
    ends = (*recording.bucket_start_s[1:], recording.end_s)
    rows = zip(recording.bucket_start_s, ends, channel.envelope.lows, channel.envelope.highs, strict=True)
    return [row for row in rows if math.isfinite(row[2]) and math.isfinite(row[3])]


def widest_step_s(line: Line) -> float:
    """The widest step between neighbouring samples [s]; 0 with fewer than two."""
    return max((later - earlier for earlier, later in pairwise(line.time_s)), default=0.0)


def _finite(time_s: array[float], values: array[float]) -> Line:
    if all(map(math.isfinite, values)):
        return Line(time_s, values)
    kept = [(t, v) for t, v in zip(time_s, values, strict=True) if math.isfinite(v)]
    return Line(array("d", [t for t, _ in kept]), array("d", [v for _, v in kept]))
