"""Three figures for one thing: the lowest and the highest that the evidence allows, and the likely one."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """`low` ≤ `likely` ≤ `high`, all in the unit that the name of the field or function says."""

    low: float
    likely: float
    high: float

    def times(self, factor: float) -> Span:
        """Each figure times `factor` (not negative).

        >>> Span(1, 2, 3).times(2)
        Span(low=2, likely=4, high=6)
        """
        return Span(self.low * factor, self.likely * factor, self.high * factor)

    def rounded(self, digits: int) -> dict[str, float]:
        """The three figures by name, rounded to `digits` decimals, without a negative zero."""
        return {
            "low": round(self.low, digits) + 0.0,
            "likely": round(self.likely, digits) + 0.0,
            "high": round(self.high, digits) + 0.0,
        }


def exactly(value: float) -> Span:
    """A figure without uncertainty."""
    return Span(value, value, value)
