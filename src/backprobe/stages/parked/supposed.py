"""What is supposed where nobody stated it or no table gives it, each with what it rests on."""

from __future__ import annotations

from backprobe.findings import Standing
from backprobe.limits.sourced import Basis
from backprobe.physics.span import Span

AGE_LOSS = Span(0.02, 0.05, 0.10)  # of the rated capacity, a year
AGE_UNKNOWN_YEARS = Span(0.0, 3.0, 6.0)
AGE_FLOOR = 0.2
AGE_BASIS = Basis("an old battery lost 2 to 10 % of its rated capacity a year, 5 % likely", Standing.MODEL)

STARTS_TO_C = Span(-29.0, -23.5, -18.0)
STARTS_TO_BASIS = Basis(
    "a full battery starts the engine down to -18 °C (where cold-cranking current is rated), at best to -29 °C",
    Standing.MODEL,
)

REPORT_S = Span(5.0, 20.0, 60.0)
REPORT_BASIS = Basis("one report takes 5 to 60 s, 20 s likely", Standing.MODEL)

DRAIN_PERCENT, DRAIN_COUNTS = 2.0, 3.0
DRAIN_BASIS = Basis("a current reading is right to 2 % and 3 counts", Standing.MODEL)

STORE_C = 25.0
COLD_PER_K = 0.006
COLD_BASIS = Basis(
    "a battery maker's 0.6 % for each kelvin (after IEC), for discharges of 10 to 20 h", Standing.PUBLISHED
)


def of_age(years: float | None) -> Span:
    """The part of the rated capacity that is left after so many years.

    >>> of_age(4).rounded(2)
    {'low': 0.6, 'likely': 0.8, 'high': 0.92}
    """
    known = AGE_UNKNOWN_YEARS if years is None else Span(years, years, years)
    return Span(
        max(AGE_FLOOR, 1.0 - AGE_LOSS.high * known.high),
        max(AGE_FLOOR, 1.0 - AGE_LOSS.likely * known.likely),
        max(AGE_FLOOR, 1.0 - AGE_LOSS.low * known.low),
    )
