"""Resistances from what was read, and those that are taken until somebody reads them."""

from __future__ import annotations

import math

from backprobe.evidence.join_sheet import Drop
from backprobe.evidence.meter import Meter
from backprobe.physics.ground_drop import drop_ohm
from backprobe.physics.meter import accuracy_V
from backprobe.physics.span import Span

# Our own model: until it was read. Low, likely and high of what is met in vehicles that work.
UNREAD_GROUND_OHM = Span(0.0, 0.02, 0.1)
UNREAD_TAP_OHM = Span(0.005, 0.04, 0.2)
UNREAD_JOINT_OHM = Span(0.0, 0.002, 0.01)
LOAD_SURE_TO = 0.05  # common practice, no source: a clamp, or a lamp of known watts


def read_mV(drop_mV: float, meter: Meter) -> Span:
    """What a reading of millivolts can be, by the meter's accuracy; its last digit is that of the figure written."""
    count_mV = 1.0 if float(drop_mV).is_integer() else 0.1
    within_mV = accuracy_V(drop_mV / 1000.0, percent=meter.percent, counts=meter.counts, count_V=count_mV / 1000.0)
    half_mV = within_mV * 1000.0
    return Span(max(0.0, drop_mV - half_mV), drop_mV, drop_mV + half_mV)


def read_ohm(drop: Drop, meter: Meter) -> Span:
    """The resistance that a drop under a load stands for [Ω], by the ends of meter and load."""
    load_A = drop.load_A
    spread_A = Span(load_A * (1.0 - LOAD_SURE_TO), load_A, load_A * (1.0 + LOAD_SURE_TO))
    return drop_ohm(read_mV(drop.drop_mV, meter), load_A=spread_A)


def together(*parts: Span) -> Span:
    """Resistances in a row [Ω]: the ends put together.

    >>> together(Span(1, 2, 3), Span(1, 1, 2))
    Span(low=2.0, likely=3.0, high=5.0)
    """
    ends = ((part.low, part.likely, part.high) for part in parts)
    low, likely, high = (math.fsum(each) for each in zip(*ends, strict=True))
    return Span(low, likely, high)
