"""What speaks for a crank, and what against it: a table of signs with their weights.

A weight is a natural logarithm of odds: +2.3 makes a crank ten times as likely against a heater, a lamp or a pump,
-2.3 a tenth. The weights of all signs that the recording shows are added to `PRIOR`. They are common practice put
into numbers, no source, and meant to be argued with.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum


@dataclass(frozen=True, slots=True)
class Weight:
    """One row of the table: the weight and the words that go with it."""

    odds: float
    said: str


PRIOR = -1.5  # a noticeable fall of the supply is more often another load than the starter


class Sign(Enum):
    """Everything that can be seen of a possible crank."""

    VERY_DEEP = Weight(1.6, "a very deep fall ({depth_V:.2f} V)")
    DEEP = Weight(1.0, "a deep fall ({depth_V:.2f} V)")
    MIDDLING = Weight(0.3, "a fall of {depth_V:.2f} V")
    SHALLOW = Weight(-1.0, "a shallow fall ({depth_V:.2f} V)")
    SHALLOW_COARSE = Weight(0.0, "a shallow fall ({depth_V:.2f} V), sampled slowly")
    STEEP = Weight(0.5, "within {fall_ms:.0f} ms")
    SLOW_FALL = Weight(-1.5, "a slow fall ({fall_ms:.0f} ms)")
    INRUSH = Weight(0.7, "an inrush trough {inrush_V:.2f} V below the plateau")
    NO_INRUSH = Weight(-0.7, "no inrush trough")
    RIPPLE = Weight(2.5, "a compression ripple of {ripple_Hz:.1f} Hz")
    RIPPLE_COARSE = Weight(1.5, "a ripple of {ripple_Hz:.1f} Hz, sampled coarsely")
    NO_RIPPLE = Weight(-2.0, "no compression ripple")
    NO_RIPPLE_YET = Weight(-0.9, "no compression ripple in that short time")
    ROUGH = Weight(1.1, "the level is unsteady while it is down")
    SMOOTH = Weight(-1.2, "the level is steady while it is down")
    BRIEF = Weight(-2.0, "too short for a starter ({length_s:.2f} s)")
    LONGISH = Weight(-1.3, "long for a starter ({length_s:.0f} s)")
    LONGER = Weight(-2.0, "very long for a starter ({length_s:.0f} s)")
    LONG = Weight(-3.0, "too long for a starter ({length_s:.0f} s)")
    UNFINISHED = Weight(-1.0, "no recovery in sight")
    TAKEN_OVER = Weight(-2.5, "a deeper fall follows before any recovery")
    WIRE_STAYS = Weight(-3.0, "{staying} does not switch as it does in the other cranks")
    WIRE_DROPS = Weight(2.5, "{dropped} is dead for just that time")
    WIRE_LIVE = Weight(3.0, "{started} is live only then")
    CHARGES = Weight(3.0, "the level goes above rest afterwards ({after_V:.2f} V)")
    CHARGES_COARSE = Weight(2.0, "the level goes above rest afterwards ({after_V:.2f} V)")
    STAYS_AT_REST = Weight(-1.0, "the level goes back to rest only ({after_V:.2f} V)")
    RAN_BEFORE = Weight(-4.0, "charging before and after alike ({before_V:.2f} V): the engine was running")
    CHARGED_BEFORE = Weight(-2.0, "at charging level before already ({before_V:.2f} V)")
    JUST_STARTED = Weight(-2.6, "the engine was started {since_s:.1f} s before")
    SPEED_RUNS = Weight(5.0, "the engine speed rises to {speed_rpm:.0f} /min")
    SPEED_TURNS = Weight(3.0, "the engine turns at {speed_rpm:.0f} /min")
    SPEED_STANDS = Weight(-5.0, "the engine speed stays at zero")
    SPEED_RAN = Weight(-6.0, "the engine was running at {speed_rpm:.0f} /min already")
    LEVEL_ONLY = Weight(-0.5, "no dip was sampled, only the change of level")
    WIRE_ONLY = Weight(1.5, "seen on switched wires only")


def sureness(signs: Iterable[Sign]) -> float:
    """How likely a crank is, 0 to 1, when these signs were seen; rounded to two digits.

    >>> sureness([Sign.DEEP, Sign.STEEP, Sign.INRUSH, Sign.RIPPLE, Sign.CHARGES]), sureness([Sign.DEEP, Sign.NO_RIPPLE])
    (1.0, 0.08)
    """
    odds = PRIOR + math.fsum(sign.value.odds for sign in signs)
    return round(1.0 / (1.0 + math.exp(-odds)), 2)


def in_words(signs: Iterable[Sign], figures: dict[str, float | str]) -> tuple[str, ...]:
    """The signs as phrases with their figures, the weightiest first."""
    ordered = sorted(signs, key=lambda sign: -abs(sign.value.odds))
    return tuple(sign.value.said.format(**figures) for sign in ordered)
