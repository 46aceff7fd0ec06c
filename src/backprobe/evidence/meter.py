"""What the meter at hand can do, as its data sheet states it."""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.evidence.keys import Capture

DEFAULT_CAPTURES = frozenset({Capture.DISPLAY, Capture.MIN, Capture.MAX})


@dataclass(frozen=True, slots=True, kw_only=True)
class Meter:
    """A meter's accuracy on direct voltage, ±(`percent` % of reading + `counts` counts), and its speed.

    `min_capture_ms` is how long a dip must last for the MIN hold to show it whole; `display_per_s` is how often
    the display is renewed; `basis` says where the figures come from.
    """

    name: str
    percent: float
    counts: float
    min_capture_ms: float = 100.0
    display_per_s: float = 3.0
    captures: frozenset[Capture] = field(default=DEFAULT_CAPTURES)
    basis: str = ""
