"""Voltage against time, held so that a million rows cost no more memory than a thousand.

A reader makes one pass and keeps an envelope: for every bucket of consecutive rows the first time, and the
lowest and highest value of each channel. Fine work near events asks for the raw rows of a short window again.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum

from backprobe.errors import Skipped
from backprobe.evidence.keys import Key


class Quantity(StrEnum):
    """What a channel holds."""

    VOLTAGE = "V"
    ENGINE_SPEED = "rpm"


@dataclass(frozen=True, slots=True)
class Envelope:
    """Lowest and highest value of each bucket, in the channel's unit (V or rpm), one entry a bucket."""

    lows: array[float]
    highs: array[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """One recorded channel.

    `lowest`/`highest` with the times they were first seen [s]; `mean` over all rows; `rows` is how many rows
    held a value. `seconds_below` maps each threshold asked for when reading (V) to the time spent below it [s].
    """

    name: str
    quantity: Quantity
    envelope: Envelope
    rows: int
    lowest: float
    lowest_s: float
    highest: float
    highest_s: float
    mean: float
    digits: int  # decimals as written in the file
    seconds_below: dict[float, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class KeyMark:
    """The key column changed to `key` at `time_s`."""

    time_s: float
    key: Key


@dataclass(frozen=True, slots=True)
class Window:
    """Raw rows between two times: `time_s`, and for each channel name its values (NaN where a cell was empty)."""

    time_s: array[float]
    values: dict[str, array[float]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Recording:
    """A recording after its one pass.

    `bucket_start_s` is the time of each bucket's first row [s]; every channel's envelope is parallel to it.
    Times count from the file's own zero; for absolute time stamps, from the first row. `interval_s` is the
    median step between rows; `widest_gap_s` the largest. `time_known` is False where the file's time column
    stands still while rows go on (`time_note` says so): then times are row numbers times `interval_s`, and
    `interval_s` is only an estimate. `fine(t0, t1)` reads the raw rows of a window again.
    """

    name: str
    rows: int
    start_s: float
    end_s: float
    interval_s: float
    widest_gap_s: float
    time_known: bool
    time_note: str | None
    bucket_start_s: array[float]
    channels: tuple[Channel, ...]
    keys: tuple[KeyMark, ...]
    skipped: tuple[Skipped, ...]
    skipped_count: int
    fine: Callable[[float, float], Window]

    def channel(self, name: str) -> Channel | None:
        """The channel of that name, or None."""
        return next((channel for channel in self.channels if channel.name == name), None)

    @property
    def voltages(self) -> tuple[Channel, ...]:
        """The channels that hold a voltage."""
        return tuple(channel for channel in self.channels if channel.quantity is Quantity.VOLTAGE)
