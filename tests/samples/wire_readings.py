"""Readings and tables of one or two wires, for tests of the probe stage."""

from __future__ import annotations

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.limits.lookup import meter
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("basic"))

# What a good supply and a good ignition show: key, volts, capture.
SUPPLY = (
    ("off", 12.60, "display"),
    ("accessory", 12.55, "display"),
    ("on", 12.41, "display"),
    ("crank", 11.40, "min"),
    ("running", 14.10, "display"),
    ("after", 12.58, "display"),
)
IGNITION = (
    ("off", 0.02, "display"),
    ("accessory", 0.03, "display"),
    ("on", 12.37, "display"),
    ("crank", 11.60, "min"),
    ("running", 14.05, "display"),
)
Shown = tuple[str, float, str]


def reading(wire: str, key: str, volts: float, capture: str = "display", **more: float) -> Reading:
    """One reading typed with two decimals; `after` stands for ten minutes unless `after_min` says otherwise."""
    minutes = more.pop("after_min", 10.0 if key == "after" else None)
    return Reading(
        wire=wire,
        key=Key(key),
        volts=volts,
        typed=f"{volts:.2f}",
        count_V=0.01,
        capture=Capture(capture),
        after_min=minutes,
        load_A=more.pop("load_A", None),
    )


def rows(wire: str, shown: tuple[Shown, ...], *, scale: float = 1.0, without: str = "") -> tuple[Reading, ...]:
    """The readings of one wire, all volts times `scale`, one key position left out at will."""
    return tuple(reading(wire, key, volts * scale, capture) for key, volts, capture in shown if key != without)


def table(*readings: Reading, facts: dict[str, WireFacts] | None = None) -> ReadingsTable:
    """A table of these readings, its wires in order of appearance."""
    wires = tuple(dict.fromkeys(each.wire for each in readings))
    return ReadingsTable(readings=readings, wires=wires, facts=facts or {})
