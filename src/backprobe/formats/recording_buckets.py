"""The envelope of a recording, gathered block by block in memory that does not grow."""

from __future__ import annotations

import math
from array import array
from dataclasses import dataclass, field

MOST_BUCKETS = 8192


def lower(a: float, b: float) -> float:
    """The lower of two values; NaN is none."""
    return b if b < a or a != a else a


def higher(a: float, b: float) -> float:
    """The higher of two values; NaN is none."""
    return b if b > a or a != a else a


@dataclass(slots=True)
class Buckets:
    """Buckets of consecutive rows: `start_s` and `row` of the first row of each, and lows and highs by channel.

    A bucket holds `size` rows, fewer at the end of a block. Above 8,192 buckets each pair becomes one.
    """

    channels: int
    size: int = 1
    start_s: array[float] = field(default_factory=lambda: array("d"))
    row: array[int] = field(default_factory=lambda: array("q"))
    lows: list[array[float]] = field(default_factory=list)
    highs: list[array[float]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.lows = [array("d") for _ in range(self.channels)]
        self.highs = [array("d") for _ in range(self.channels)]

    def add(self, times: list[float], *, row: int, extremes: list[tuple[list[float], list[float]]]) -> None:
        """Take in a block that begins at `row`; `extremes` are each channel's lows and highs, `size` rows each."""
        self.start_s.extend(times[:: self.size])
        self.row.extend(range(row, row + len(times), self.size))
        for channel, (lows, highs) in enumerate(extremes):
            self.lows[channel].extend(lows)
            self.highs[channel].extend(highs)
        while len(self.start_s) > MOST_BUCKETS:
            self._halve()

    def _halve(self) -> None:
        self.size *= 2
        self.start_s, self.row = self.start_s[::2], self.row[::2]
        self.lows = [_paired(lows, low=True) for lows in self.lows]
        self.highs = [_paired(highs, low=False) for highs in self.highs]


def _paired(values: array[float], *, low: bool) -> array[float]:
    plain, patient = (min, lower) if low else (max, higher)
    holes = math.isnan(math.fsum(values))
    paired = array("d", map(patient if holes else plain, values[::2], values[1::2]))
    if len(values) % 2:
        paired.append(values[-1])
    return paired


def extremes_of(values: list[float], size: int, *, holes: bool) -> tuple[list[float], list[float]]:
    """The lowest and highest of each `size` consecutive values; with `holes` NaN is left out where it can be.

    >>> extremes_of([12.1, 12.3, float("nan"), 9.9, 12.0], 2, holes=True)
    ([12.1, 9.9, 12.0], [12.3, 9.9, 12.0])
    """
    if size == 1:
        return values, values
    parts = [values[i : i + size] for i in range(0, len(values), size)]
    if holes:
        parts = [[value for value in part if value == value] or part[:1] for part in parts]
    return [min(part) for part in parts], [max(part) for part in parts]
