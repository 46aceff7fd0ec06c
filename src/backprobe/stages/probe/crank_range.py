"""How deep the crank may really have gone, given what the meter showed.

A crank begins with a short, deep trough (the starter's inrush, 15-50 ms) before it settles on a plateau. A MIN
hold that needs 100 ms averages the trough away; a display that is renewed three times a second may miss the crank
altogether. So a shown value stands for a range of true minima.

The range is **our own model**: the shape of the ISO 16750-2 starting profile scaled to the drop that was shown,
with a spread of inrush, battery and temperature. `design/min_hold.py` simulates it; the straight line below lies
above 999 of 1,000 simulated cranks at every drop. In those trials the MIN of a crank that really went below a
limit stood up to about 1.2 V above it (12 V system): that much is allowed for even where the shown drop is small,
because the level before the crank is seldom known at the very moment.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.keys import Capture
from backprobe.physics.meter import accuracy_V
from backprobe.stages.probe.setup import Setup

# Fitted to design/min_hold.py (12 V system): the hidden part is a constant and a share of the shown drop, and is
# never taken as less than what hid violations in the trials.
HIDDEN_CONSTANT_V = 0.23
HIDDEN_SHARE = 0.68
HIDDEN_LEAST_V = 1.25
MODELLED_HOLD_MS = 100.0  # the MIN hold that was simulated
WHOLE_TROUGH_MS = 5.0  # a hold this short sees the whole trough (15 ms at the shortest in ISO 16750-2)


@dataclass(frozen=True, slots=True)
class MinimumRange:
    """What a shown crank value allows: the shown value, the lowest and the highest true minimum [V]."""

    shown_V: float
    low_V: float
    high_V: float


def hidden_V(shown_V: float, rest_V: float, *, system_V: int, hold_ms: float) -> float:
    """How much deeper than `shown_V` the true minimum may lie [V], for a MIN hold that needs `hold_ms`.

    `rest_V` is the wire's level just before the crank. Grows in proportion up to holds of 100 ms and beyond;
    nothing is hidden from a hold of 5 ms. Source: our own model, see the module's text.

    >>> round(hidden_V(10.2, 12.4, system_V=12, hold_ms=100), 2)
    1.73
    """
    scale = system_V / 12.0
    drop_V = max(0.0, rest_V - shown_V)
    part = max(0.0, (hold_ms - WHOLE_TROUGH_MS) / (MODELLED_HOLD_MS - WHOLE_TROUGH_MS))
    return part * max(HIDDEN_LEAST_V * scale, HIDDEN_CONSTANT_V * scale + HIDDEN_SHARE * drop_V)


def minimum_range(shown_V: float, capture: Capture, *, rest_V: float, setup: Setup, count_V: float) -> MinimumRange:
    """The true minima that a crank reading allows.

    A display or a MAX hold proves no minimum: the range then reaches down to 0 V. Source: our own model.
    """
    meter = setup.meter
    spread = accuracy_V(shown_V, percent=meter.percent, counts=meter.counts, count_V=count_V)
    if capture in (Capture.DISPLAY, Capture.MAX):
        return MinimumRange(shown_V, min(0.0, shown_V), shown_V + spread)
    hold_ms = 0.0 if capture is Capture.LOGGED else meter.min_capture_ms
    deeper = hidden_V(shown_V, rest_V, system_V=setup.system_V, hold_ms=hold_ms)
    low = max(min(0.0, shown_V), shown_V - spread - deeper)
    return MinimumRange(shown_V, low, shown_V + spread)
