"""The scale of a margin bar: where a value stands, with the limit always in the same place.

All bars of one limit side have their limit at the same x, and the span of the scale grows in steps with the
limit's own size, so bars under one another can be compared by eye. The side of the limit comes before the exact
place: a value outside is drawn wholly outside, however close it is.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from backprobe.drawings.figures import nice_step
from backprobe.findings import Finding, Limit, Side

LIMIT_SHARE = 0.36  # of the track: the forbidden side; the allowed side has the rest
EDGE = 9.0  # no mark comes closer to the track's ends than this
_SPANS = (0.5, 1.0, 2.0, 4.0)  # of the limit: how far the allowed side may reach
_SPAN_WITH_ARROWS = 1  # which of them, where even the widest would not take everything in
_SMALLEST_BASE = 1e-200
_LARGEST = 1e300  # floats have an end; a scale stays well before it


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a value is drawn: `x`, and -1 or +1 in `beyond` where it lies off the scale on that side."""

    x: float
    beyond: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """A horizontal scale from `x_low` to `x_high`; `zero_x` is where `zero` (the limit, if any) stands."""

    x_low: float
    x_high: float
    zero: float
    zero_x: float
    per_px: float  # units a pixel
    limit: Limit | None

    def spot(self, value: float, *, clear: float) -> Spot:
        """The place of `value`, at least `clear` pixels from the limit line, on the side where it belongs."""
        least, most = self.x_low + EDGE, self.x_high - EDGE
        exact = self.zero_x + max(-1e6, min(1e6, (value - self.zero) / self.per_px))
        if exact < least or exact > most:
            beyond = -1 if exact < least else 1
            return Spot(least if beyond < 0 else most, beyond)
        return Spot(min(max(self._on_its_side(exact, value, clear=clear), least), most))

    def _on_its_side(self, exact: float, value: float, *, clear: float) -> float:
        if self.limit is None:
            return exact
        right = self.limit.allows(value) == (self.limit.side is Side.AT_LEAST)
        return max(exact, self.zero_x + clear) if right else min(exact, self.zero_x - clear)

    def value_at(self, x: float) -> float:
        """The value that stands at `x`."""
        return self.zero + (x - self.zero_x) * self.per_px


def known_values(finding: Finding) -> list[float]:
    """The finite ones of a finding's value and range."""
    given = (finding.value, finding.low, finding.high)
    return [number for number in given if number is not None and math.isfinite(number)]


def scale_for(finding: Finding, x_low: float, *, x_high: float) -> Scale:
    """The scale between two x for a finding; without a limit it is centred on what was measured."""
    limit, values = finding.limit, known_values(finding)
    width = x_high - x_low
    if limit is None:
        low, high = (min(values), max(values)) if values else (0.0, 1.0)
        middle = low / 2 + high / 2
        half = min(max(high - middle, abs(middle) / 10, 10.0**-finding.digits * 10), _LARGEST)
        centre = x_low + width / 2
        return Scale(x_low=x_low, x_high=x_high, zero=middle, zero_x=centre, per_px=half * 4 / width, limit=None)
    share = LIMIT_SHARE if limit.side is Side.AT_LEAST else 1 - LIMIT_SHARE
    allowed_px, other_px = width * (1 - LIMIT_SHARE) - EDGE, width * LIMIT_SHARE - EDGE
    per_px = _allowed_span(finding, limit, ratio=allowed_px / other_px) / allowed_px
    zero_x = x_low + width * share
    return Scale(x_low=x_low, x_high=x_high, zero=limit.value, zero_x=zero_x, per_px=per_px, limit=limit)


def _allowed_span(finding: Finding, limit: Limit, *, ratio: float) -> float:
    """How many units the allowed side shows: the smallest step of the limit's size that takes everything in.

    `ratio` is the room on the allowed side over the room on the other.
    """
    margins = [limit.margin(value) for value in known_values(finding)]
    needed = max((margin if margin >= 0 else -margin * ratio for margin in margins), default=0.0)
    if abs(limit.value) > _SMALLEST_BASE:
        steps = [min(abs(limit.value) * share, _LARGEST) for share in _SPANS]
        return next((step for step in steps if step >= needed), steps[_SPAN_WITH_ARROWS])
    return nice_step(min(max(needed, 10.0**-finding.digits), _LARGEST))
