"""What is known of one channel over all its rows, gathered block by block."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import compress, repeat
from operator import lt

from backprobe.evidence.recording import Channel, Envelope
from backprobe.formats.recording_block import Faults, within_reason
from backprobe.formats.recording_buckets import extremes_of
from backprobe.formats.recording_layout import Column, Layout
from backprobe.formats.recording_rows import Rows


@dataclass(frozen=True, slots=True)
class Stretch:
    """A block of one channel: `values`, NaN where a cell held nothing, with the `rows` they come from.

    `total` is the sum of those that are no NaN, `held` how many those are; `lows` and `highs` are the extremes of
    consecutive groups, `low` and `high` those of all.
    """

    rows: Rows
    values: list[float]
    held: int
    total: float
    lows: list[float]
    highs: list[float]
    low: float
    high: float


def stretch_of(rows: Rows, place: int, *, layout: Layout, size: int, faults: Faults) -> Stretch:
    """The channel at `place` of the layout in a block, extremes in groups of `size`; values beyond reason become NaN.

    Each value beyond reason is counted among the `faults`.
    """
    column, values = layout.columns[place], rows.block.values[place]
    stretch = _summed(rows, values, size=size)
    if stretch.held and not column.least <= stretch.low <= stretch.high <= column.most:
        values = within_reason(values, column, lines=rows.block.lines, file=layout.file, faults=faults)
        stretch = _summed(rows, values, size=size)
    return stretch


def _summed(rows: Rows, values: list[float], *, size: int) -> Stretch:
    total, held = _total(values), len(values)
    holes = math.isnan(total)
    if holes:
        kept = [value for value in values if not math.isnan(value)]
        total, held = _total(kept), len(kept)
    lows, highs = extremes_of(values, size, holes=holes)
    low = min((value for value in lows if not math.isnan(value)), default=math.nan) if holes else min(lows)
    high = max((value for value in highs if not math.isnan(value)), default=math.nan) if holes else max(highs)
    return Stretch(rows, values, held, total, lows, highs, low, high)


def _total(values: list[float]) -> float:
    """The exact sum; NaN where one of them is NaN, or where they are infinite in both directions or beyond floats."""
    try:
        return math.fsum(values)
    except (ValueError, OverflowError):
        return math.nan


@dataclass(slots=True)
class Below:
    """Time and rows below one threshold; `was` says whether the row before was below."""

    seconds: float = 0.0
    rows: int = 0
    was: bool = False

    def add(self, stretch: Stretch, steps: list[float], *, threshold: float) -> None:
        """Count a block, `steps` before its rows: time between two rows is whole when both are below, half when one is.

        The step before the very first row is 0.
        """
        count = len(stretch.values)
        if stretch.low >= threshold or not stretch.held:
            self.seconds += 0.5 * steps[0] * self.was
            self.was = False
            return
        if stretch.high < threshold and stretch.held == count:
            self.seconds += math.fsum(steps) - 0.5 * steps[0] * (not self.was)
            self.rows += count
            self.was = True
            return
        below = list(map(lt, stretch.values, repeat(threshold)))
        before = [self.was, *below[:-1]]
        self.seconds += 0.5 * (math.fsum(compress(steps, below)) + math.fsum(compress(steps, before)))
        self.rows += below.count(True)
        self.was = below[-1]


@dataclass(slots=True)
class Tally:
    """One channel's extremes with where they were first seen, its sum, and its time below each threshold."""

    column: Column
    thresholds: Sequence[float]
    held: int = 0
    total: float = 0.0
    lowest: float = float("inf")
    lowest_at: tuple[float, int] = (0.0, 0)  # time [s] and row
    highest: float = float("-inf")
    highest_at: tuple[float, int] = (0.0, 0)
    below: dict[float, Below] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.below = {threshold: Below() for threshold in self.thresholds}

    def add(self, stretch: Stretch, steps: list[float]) -> None:
        """Take in the next block, with the step before each row [s]."""
        for threshold, below in self.below.items():
            below.add(stretch, steps, threshold=threshold)
        if not stretch.held:
            return
        self.held += stretch.held
        self.total = math.fsum((self.total, stretch.total))
        if stretch.low < self.lowest:
            self.lowest, self.lowest_at = stretch.low, _at(stretch, stretch.low)
        if stretch.high > self.highest:
            self.highest, self.highest_at = stretch.high, _at(stretch, stretch.high)

    def channel(self, envelope: Envelope, *, row_s: float | None) -> Channel:
        """The channel; with `row_s` times are row numbers times this many seconds, otherwise those of the clock."""

        def at(place: tuple[float, int]) -> float:
            return place[0] if row_s is None else place[1] * row_s

        return Channel(
            name=self.column.name,
            quantity=self.column.quantity,
            envelope=envelope,
            rows=self.held,
            lowest=self.lowest,
            lowest_s=at(self.lowest_at),
            highest=self.highest,
            highest_s=at(self.highest_at),
            mean=self.total / self.held,
            digits=self.column.digits,
            seconds_below={
                threshold: below.seconds if row_s is None else below.rows * row_s
                for threshold, below in self.below.items()
            },
        )


def _at(stretch: Stretch, value: float) -> tuple[float, int]:
    """Time and row at which a value of the block was first seen."""
    index = stretch.values.index(value)
    return stretch.rows.block.times[index], stretch.rows.start.row + index
