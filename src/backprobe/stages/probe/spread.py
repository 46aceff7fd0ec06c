"""How far a reading on a wire may be from the truth."""

from __future__ import annotations

from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.physics.meter import accuracy_V


def spread_V(reading: Reading, meter: Meter) -> float:
    """How far the figure may be off either way [V]: as its source says, else by the meter's own accuracy."""
    if reading.spread_V is not None:
        return reading.spread_V
    return accuracy_V(reading.volts, percent=meter.percent, counts=meter.counts, count_V=reading.count_V)
