"""What would have to be changed for a vehicle to stand as long as wanted: for the likely and the worst."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from backprobe.physics.span import Span
from backprobe.stages.parked.days import Rest, Unsure
from backprobe.stages.parked.unit_drain import Plan

LONGEST_INTERVAL_S = 86_400.0
LARGEST_AH = 1000.0
LARGEST_CHARGER_MA = 20_000.0
MINUTE_S = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One figure changed alone: what it is `at_present`, what it must be for likely and worst; None: no such."""

    what: str
    unit: str
    at_present: float | None
    for_likely: float | None
    for_worst: float | None

    def as_json(self) -> dict[str, object]:
        """The change as plain JSON values."""
        return {
            "what": self.what,
            "unit": self.unit,
            "now": None if self.at_present is None else round(self.at_present, 1),
            "for_likely": self.for_likely,
            "for_worst": self.for_worst,
        }

    def in_words(self) -> str:
        """What to set so that even the worst reaches it, else the likely.

        >>> Change(what="report every", unit="min", at_present=10, for_likely=30, for_worst=None).in_words()
        'report every 30 min instead of 10 (for the likely only)'
        """
        needed = self.for_likely if self.for_worst is None else self.for_worst
        if needed is None or (self.for_worst is None and needed == (self.at_present or 0.0)):
            return f"{self.what} …: alone never enough{'' if needed is None else ' for the worst'}"
        instead = "" if self.at_present is None else f" instead of {self.at_present:g}"
        return (
            f"{self.what} {needed:g} {self.unit}{instead}{' (for the likely only)' if self.for_worst is None else ''}"
        )


def changes_for(days: float, unsure: Unsure, *, plan: Plan) -> tuple[Change, ...]:
    """Each change that alone makes the days reach `days`: reporting less often, a bigger battery, a charger."""
    worst, likely, _ = unsure.rests()
    report_s = plan.report_s
    return (
        Change(
            what="report every",
            unit="min",
            at_present=plan.interval_s / MINUTE_S,
            for_likely=_interval_min(likely, days, plan=plan, report_s=report_s.likely),
            for_worst=_interval_min(worst, days, plan=plan, report_s=report_s.high),
        ),
        Change(
            what="fit a battery of",
            unit="Ah",
            at_present=unsure.capacity_Ah,
            for_likely=_capacity_Ah(likely, days),
            for_worst=_capacity_Ah(worst, days),
        ),
        Change(
            what="keep it on a charger or panel that gives, on average,",
            unit="mA",
            at_present=None,
            for_likely=_charger_mA(likely, days),
            for_worst=_charger_mA(worst, days),
        ),
    )


def if_full(unsure: Unsure) -> Span:
    """The days if the battery were charged full first."""
    return replace(unsure, charge=Span(1.0, 1.0, 1.0)).days


def _interval_min(rest: Rest, days: float, *, plan: Plan, report_s: float) -> float | None:
    """The report interval, in whole minutes; what it is now where that is enough."""
    if rest.had_Ah <= rest.needed_Ah:
        return None
    if rest.days >= days:
        return plan.interval_s / MINUTE_S
    found_s = plan.interval_for_s(rest.bearable_mA(days) - rest.vehicle_mA, report_s)
    if found_s is None or found_s > LONGEST_INTERVAL_S:
        return None
    return float(math.ceil(round(found_s / MINUTE_S, 6)))


def _capacity_Ah(rest: Rest, days: float) -> float | None:
    """The capacity, in whole ampere-hours: Q = E q / (s (a - b) - E s b) with E = exp(s t) - 1.

    The engine's need is taken to grow with the battery, as published tables know it only as a part of full: this
    errs on the safe side.
    """
    if rest.days >= days:
        return rest.capacity_Ah
    grown = math.expm1(rest.loss_per_day * days)
    per_Ah = rest.cold * rest.loss_per_day * (rest.charge - rest.need - grown * rest.need)
    if per_Ah <= 0.0:
        return None
    found_Ah = float(math.ceil(round(grown * rest.drain_mA * 24.0 / 1000.0 / per_Ah, 6)))
    return found_Ah if found_Ah <= LARGEST_AH else None


def _charger_mA(rest: Rest, days: float) -> float | None:
    """What must be charged on average, in whole milliamperes; 0 where nothing must."""
    if rest.had_Ah <= rest.needed_Ah:
        return None
    if rest.days >= days:
        return 0.0
    found_mA = float(math.ceil(round(rest.drain_mA - rest.bearable_mA(days), 6)))
    return found_mA if found_mA <= LARGEST_CHARGER_MA else None
