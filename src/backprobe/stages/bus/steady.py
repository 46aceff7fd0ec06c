"""Frames whose stamp alone leaps ahead, taken out before they move the clock of all that follow."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from backprobe.errors import Place
from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import CLOCK_LEAPT, BusFaults

LEAP_S = 60.0  # a bus is seldom silent for longer; then the frame behind it tells
BACK_S = 0.5
EXPECTED = "a time near those of the frames around it"


def steady(frames: Iterable[Frame], *, faults: BusFaults) -> Iterator[Frame]:
    """The frames, but for those that stand more than a minute ahead of the one before and of the one behind."""
    last_s: float | None = None
    held: Frame | None = None
    number = 0
    for frame in frames:
        number += 1
        if frame.error:
            yield frame
            continue
        if held is not None and last_s is not None:
            if last_s - BACK_S <= frame.time_s < held.time_s - LEAP_S / 2:
                place = Place(faults.file, None, f"frame {number - 1:,} of the log")
                faults.add(CLOCK_LEAPT, place, expected=EXPECTED)
            else:
                yield held
                last_s = held.time_s
            held = None
        if last_s is not None and frame.time_s - last_s > LEAP_S:
            held = frame
            continue
        yield frame
        last_s = frame.time_s
    if held is not None:
        yield held
