"""What an engine-speed channel says of a start."""

from __future__ import annotations

from array import array
from dataclasses import dataclass

from backprobe.evidence.recording import Channel, Quantity, Recording
from backprobe.stages.probe.recording.trace import Line, Sight, buckets

TURNS_RPM = 30.0  # above this the engine turns
RUNS_RPM = 400.0  # above this it runs on its own: starters turn at up to some 300 /min (common practice, no source)


@dataclass(frozen=True, slots=True)
class SpeedStart:
    """The engine stood until `stood_s`, turned from `turned_s` and ran on its own from `ran_s` on [s]."""

    stood_s: float
    turned_s: float
    ran_s: float


def speed_channel(recording: Recording) -> Channel | None:
    """The first channel that holds an engine speed."""
    return next((channel for channel in recording.channels if channel.quantity is Quantity.ENGINE_SPEED), None)


def speed_line(sight: Sight) -> Line | None:
    """The engine speed over the whole recording: its rows, or of a long one the highest of each bucket."""
    channel = speed_channel(sight.recording)
    if channel is None:
        return None
    if sight.whole:
        return sight.line(channel.name, from_s=sight.recording.start_s, to_s=sight.recording.end_s)
    rows = buckets(sight.recording, channel)
    return Line(array("d", [row[0] for row in rows]), array("d", [row[3] for row in rows]))


def speed_starts(line: Line) -> tuple[SpeedStart, ...]:
    """Every time the engine came to run from standing, moments half way between samples."""
    found: list[SpeedStart] = []
    stood: int | None = None
    for at, rpm in enumerate(line.values):
        if rpm < TURNS_RPM:
            stood = at
        elif rpm >= RUNS_RPM and stood is not None:
            found.append(SpeedStart(line.time_s[stood], _half_way(line, stood), _half_way(line, at - 1)))
            stood = None
    return tuple(found)


def _half_way(line: Line, at: int) -> float:
    """The moment half way from sample `at` to the next."""
    return (line.time_s[at] + line.time_s[at + 1]) / 2
