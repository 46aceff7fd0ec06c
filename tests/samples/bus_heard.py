"""What invented bus logs come to, for tests."""

from __future__ import annotations

from typing import Any

from tests.samples.bus_frames import key_cycle, long_message

from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import BusFaults
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.listen import Listened, listen

VIN = "1M8GDM9AXKP042788"


def with_vin(frames: list[Frame], vin: str = VIN, *, source: int = 0) -> list[Frame]:
    """The frames with a VIN among them."""
    said = long_message(f"{vin}*".encode(), 65260, source=source, start_s=12.0)
    return sorted([*frames, *said], key=lambda frame: frame.time_s)


def listened(frames: list[Frame]) -> Listened:
    """What frames come to, with their curves."""
    return listen(frames, faults=BusFaults("truck.log"), form="candump")


def cycle_heard(vin: str | None = VIN, **cycle: Any) -> Heard:
    """What a whole key cycle of an invented truck comes to."""
    frames = key_cycle(**cycle)
    return listened(frames if vin is None else with_vin(frames, vin)).heard
