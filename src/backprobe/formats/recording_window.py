"""The raw rows of a short window, read again from the file."""

from __future__ import annotations

from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from backprobe.evidence.recording import Window
from backprobe.formats.recording_block import Faults
from backprobe.formats.recording_buckets import extremes_of
from backprobe.formats.recording_channel import stretch_of
from backprobe.formats.recording_layout import Layout
from backprobe.formats.recording_rows import Rows, Start, rows_from

MOST_ROWS = 200_000


@dataclass(frozen=True, slots=True)
class Span:
    """Which rows a recording has: the first row of each bucket with its time [s], and how many rows there are."""

    start_s: array[float]
    row: array[int]
    rows: int

    def between(self, from_s: float, to_s: float) -> int:
        """About how many rows lie between two times; never too few."""
        first = max(0, bisect_left(self.start_s, from_s) - 1)
        last = bisect_right(self.start_s, to_s)
        return (self.row[last] if last < len(self.row) else self.rows) - self.row[first]


@dataclass(frozen=True, slots=True, kw_only=True)
class Windows:
    """Reads the rows between two times again: `windows(from_s, to_s)`, both included.

    It begins at the last of the `starts` before the window; the lines before that are skipped, not read. `names` are
    the channels wanted. With `row_s` times are row numbers times so many seconds. Windows of more than 200,000 rows
    come thinned: each group of consecutive rows becomes two, at the times of its first and its last row, the first
    with every channel's lowest value and the second with its highest.
    """

    open_lines: Callable[[], Iterable[str]]
    layout: Layout
    starts: tuple[Start, ...]
    names: frozenset[str]
    span: Span
    row_s: float | None

    def __call__(self, from_s: float, to_s: float) -> Window:
        """The rows from `from_s` to `to_s`, values NaN where a cell held nothing."""
        names = {place: c.name for place, c in enumerate(self.layout.columns) if c.name in self.names}
        window = Window(array("d"), {name: array("d") for name in names.values()})
        group = -(-2 * self.span.between(from_s, to_s) // MOST_ROWS)
        faults = Faults(most=0)
        for rows in rows_from(self._start(from_s), iter(self.open_lines()), layout=self.layout, faults=faults):
            times = self._times(rows)
            if not times or times[0] > to_s:
                break
            part = slice(bisect_left(times, from_s), bisect_right(times, to_s))
            window.time_s.extend(_thinned_times(times[part], group))
            for place, name in names.items():
                stretch = stretch_of(rows, place, layout=self.layout, size=len(rows.block), faults=faults)
                window.values[name].extend(_thinned(stretch.values[part], group))
        return window

    def _start(self, from_s: float) -> Start:
        """The last start before which no row of the window can stand."""
        if self.row_s is None:
            before = bisect_left(self.starts, from_s, key=lambda start: start.clock.last_s)
        else:
            row_s = self.row_s
            before = bisect_right(self.starts, from_s, key=lambda start: start.row * row_s)
        return self.starts[max(0, before - 1)]

    def _times(self, rows: Rows) -> list[float]:
        """The times of a block, none beyond the recording's last row."""
        count = min(len(rows.block), self.span.rows - rows.start.row)
        if self.row_s is None:
            return rows.block.times[:count]
        return [(rows.start.row + i) * self.row_s for i in range(count)]


def _thinned_times(times: list[float], group: int) -> list[float]:
    if group <= 2:
        return times
    return [time for i in range(0, len(times), group) for time in (times[i], times[min(i + group, len(times)) - 1])]


def _thinned(values: list[float], group: int) -> list[float]:
    if group <= 2 or not values:
        return values
    lows, highs = extremes_of(values, group, holes=any(value != value for value in values))
    return [value for pair in zip(lows, highs, strict=True) for value in pair]
