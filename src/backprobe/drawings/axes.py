"""Axes with sensible ticks, and labels that keep out of one another's way."""

from __future__ import annotations

import math
from dataclasses import dataclass

from backprobe.drawings.figures import nice_step, ticks

_LEAST_SPAN = 1e-9  # of the values: what differs by less is the same


@dataclass(frozen=True, slots=True)
class Axis:
    """A straight axis: the values `low` and `high` stand at the pixels `low_px` and `high_px`."""

    low: float
    high: float
    low_px: float
    high_px: float

    def at(self, value: float) -> float:
        """The pixel of `value`."""
        return self.low_px + (value - self.low) / (self.high - self.low) * (self.high_px - self.low_px)

    def step(self, least_px: float) -> float:
        """The tick step, 1, 2 or 5 times a power of ten, at which ticks are at least `least_px` apart."""
        return nice_step((self.high - self.low) * least_px / abs(self.high_px - self.low_px))

    def ticks(self, least_px: float) -> list[float]:
        """The values of the ticks, at least `least_px` apart."""
        return ticks(self.low, self.high, step=self.step(least_px))


def axis_for(values: list[float], *, low_px: float, high_px: float, pad: float) -> Axis:
    """An axis that takes in all `values`, with `pad` of their span to spare at both ends.

    Values that are all the same get some room around them; no values at all give 0 to 1.
    """
    low, high = (min(values), max(values)) if values else (0.0, 1.0)
    room = (high - low) * pad
    if high - low <= max(abs(high), 1.0) * _LEAST_SPAN:
        room = max(abs(high) * 0.1, 0.5)
    return Axis(low - room, high + room, low_px, high_px)


@dataclass(frozen=True, slots=True)
class Label:
    """A label that should be centred on `middle`, `extent` long."""

    middle: float
    extent: float


def spread(labels: list[Label], *, low: float, high: float) -> list[float]:
    """Middles for the labels, in their order, so that none overlap and all stand between `low` and `high`.

    Where they cannot all fit they start at `low` and run past `high`.

    >>> spread([Label(5, 4), Label(6, 4)], low=0, high=20)
    [5.0, 9.0]
    """
    order = sorted(range(len(labels)), key=lambda index: labels[index].middle)
    placed = [0.0] * len(labels)
    edge = low
    for index in order:
        half = labels[index].extent / 2
        placed[index] = max(labels[index].middle, edge + half)
        edge = placed[index] + half
    edge = high
    for index in reversed(order):
        half = labels[index].extent / 2
        placed[index] = min(placed[index], edge - half)
        edge = placed[index] - half
    shift = max(0.0, low - edge)
    return [float(middle + shift) for middle in placed]


def label_rows(labels: list[Label], *, low: float, high: float, gap: float) -> list[tuple[float, int]]:
    """For each label its middle, kept between `low` and `high`, and the first row in which it has room.

    >>> label_rows([Label(5, 8), Label(6, 8)], low=0, high=20, gap=2)
    [(5.0, 0), (6.0, 1)]
    """
    ends: list[float] = []
    placed = []
    for label in labels:
        half = label.extent / 2
        middle = float(max(low + half, min(label.middle, high - half)))
        row = next((index for index, end in enumerate(ends) if middle - half >= end + gap), len(ends))
        if row == len(ends):
            ends.append(-math.inf)
        ends[row] = middle + half
        placed.append((middle, row))
    return placed


def flag_rows(flags: list[tuple[float, float]]) -> list[int]:
    """For flags that fly right from leads at x, given as (x, length) from left to right, the row of each.

    A flag hangs below those whose leads it would otherwise run into.

    >>> flag_rows([(0, 10), (4, 10), (30, 10)])
    [1, 0, 0]
    """
    rows = [0] * len(flags)
    for index in reversed(range(len(flags))):
        x, length = flags[index]
        rows[index] = max((rows[j] + 1 for j in range(index + 1, len(flags)) if flags[j][0] <= x + length), default=0)
    return rows
