"""Engine data as CSV, as adapters at the diagnostic plug write it: the quantities of SAE J1979 by the names of columns.

Read as any recording is; here it is told from one, and given row by row. Only engine speed and the control module's own
voltage are used: no other quantity says anything of key, supply or starter.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from backprobe.errors import UnreadableError
from backprobe.evidence.recording import Channel, Quantity, Recording
from backprobe.formats.recording_layout import HEAD_LINES, layout_of
from backprobe.formats.recording_names import MODULE_VOLTAGE, plain_name

WINDOW_ROWS = 50_000


class EngineRow(NamedTuple):
    """What one row says; None where its cell held nothing."""

    time_s: float
    rpm: float | None
    volts: float | None


def is_engine_data(lines: Sequence[str]) -> bool:
    """Whether a CSV that begins so holds an engine speed or a control module's voltage beside a time.

    >>> is_engine_data(["time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", "0,0,12.4", "1,0,12.4"])
    True
    >>> is_engine_data(["time_s,red", "0,12.4", "1,12.4"]), is_engine_data(["wire,key,volts"])
    (False, False)
    """
    try:
        layout = layout_of(lines[:HEAD_LINES], file="")
    except UnreadableError:
        return False
    return any(
        column.quantity is Quantity.ENGINE_SPEED or plain_name(column.name) == MODULE_VOLTAGE
        for column in layout.columns
    )


def supply_channel(recording: Recording) -> Channel | None:
    """The channel that holds the supply: the control module's voltage where there is one, else the first voltage."""
    voltages = recording.voltages
    named = (channel for channel in voltages if plain_name(channel.name) == MODULE_VOLTAGE)
    return next(named, voltages[0] if voltages else None)


def engine_rows(recording: Recording) -> Iterator[EngineRow]:
    """The rows one by one, a window of the file in memory at a time."""
    speed = next((each for each in recording.channels if each.quantity is Quantity.ENGINE_SPEED), None)
    supply = supply_channel(recording)
    length_s = WINDOW_ROWS * max(recording.interval_s, 1e-6)
    from_s, last_s = recording.start_s, -math.inf
    while from_s <= recording.end_s:
        to_s = min(from_s + length_s, recording.end_s)
        window = recording.fine(from_s, to_s)
        volts = window.values[supply.name] if supply else None
        rpms = window.values[speed.name] if speed else None
        for i, time_s in enumerate(window.time_s):
            if time_s > last_s or (from_s == recording.start_s):
                yield EngineRow(time_s, _held(rpms, i), _held(volts, i))
        last_s = to_s
        if to_s >= recording.end_s:
            return
        from_s = to_s


def _held(values: Sequence[float] | None, at: int) -> float | None:
    value = None if values is None else values[at]
    return None if value is None or math.isnan(value) else value
