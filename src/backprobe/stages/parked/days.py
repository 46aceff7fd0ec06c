"""How many days a parked vehicle still starts: at the worst, the likely and the best end of all that is unsure."""

from __future__ import annotations

from dataclasses import dataclass, replace

from backprobe.limits.batteries import CAPACITY, CRANK_DEMAND, CRANK_SUPPLY, SELF_DISCHARGE_PER_MONTH
from backprobe.physics.capacity import capacity_fraction, capacity_fraction_by_rate
from backprobe.physics.crank_need import least_charge_to_crank
from backprobe.physics.drain import bearable_mA, charge_after_Ah, days_until
from backprobe.physics.self_discharge import self_discharge_per_day
from backprobe.physics.span import Span
from backprobe.stages.parked.supposed import COLD_PER_K, STORE_C

MOST_DAYS = 3650.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """One battery of a vehicle at rest, at one end of what is unsure; `full` parts are of the rated capacity."""

    capacity_Ah: float
    cold: float  # part of the capacity that is to be had at the coldest
    charge: float  # part of the capacity that is in it now
    need: float  # part of the capacity that a start at the coldest needs
    vehicle_mA: float
    unit_mA: float
    loss_per_day: float

    @property
    def had_Ah(self) -> float:
        """The charge that is to be had [Ah]."""
        return self.capacity_Ah * self.cold * self.charge

    @property
    def needed_Ah(self) -> float:
        """The charge that a start needs to find [Ah]."""
        return self.capacity_Ah * self.cold * self.need

    @property
    def drain_mA(self) -> float:
        """What vehicle and unit draw together [mA]."""
        return self.vehicle_mA + self.unit_mA

    @property
    def days(self) -> float:
        """Days until a start at the coldest is no longer sure; at most ten years."""
        found = days_until(
            self.had_Ah, needed_Ah=self.needed_Ah, drain_mA=self.drain_mA, loss_per_day=self.loss_per_day
        )
        return min(found, MOST_DAYS)

    def bearable_mA(self, days: float) -> float:
        """What may be drawn in all for the vehicle to start after `days` [mA]; below 0 it must be charged meanwhile."""
        return bearable_mA(self.had_Ah, needed_Ah=self.needed_Ah, days=days, loss_per_day=self.loss_per_day)

    def left(self, days: float) -> float:
        """The part of the capacity that is left after `days`."""
        left_Ah = charge_after_Ah(self.had_Ah, days=days, drain_mA=self.drain_mA, loss_per_day=self.loss_per_day)
        return left_Ah / (self.capacity_Ah * self.cold)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsure:
    """What the days hang on, each low, likely and high: `charge` and `aged` are parts of full and of rated."""

    capacity_Ah: float
    charge: Span
    aged: Span
    vehicle_mA: Span
    unit_mA: Span
    coldest_C: float
    starts_to_C: Span
    store_C: float | None = None

    @property
    def loss_per_day(self) -> Span:
        """The battery's own loss at the temperature that it is kept at."""
        store_C = STORE_C if self.store_C is None else self.store_C
        low, likely, high = (self_discharge_per_day(m, temperature_C=store_C) for m in SELF_DISCHARGE_PER_MONTH)
        return Span(low, likely, high)

    @property
    def cold(self) -> Span:
        """The part of the capacity at the coldest, by both published rules; never above the rated."""
        by_table = min(1.0, capacity_fraction(self.coldest_C, CAPACITY["slow"]))
        by_rate = min(1.0, capacity_fraction_by_rate(self.coldest_C, per_K=COLD_PER_K))
        return Span(min(by_table, by_rate), (by_table + by_rate) / 2.0, max(by_table, by_rate))

    @property
    def need(self) -> Span:
        """The part of the capacity that a start at the coldest needs; above 1 where none does."""
        starts = self.starts_to_C
        low, likely, high = (self._need(full_at_C) for full_at_C in (starts.low, starts.likely, starts.high))
        return Span(low, likely, high)

    def _need(self, full_at_C: float) -> float:
        return least_charge_to_crank(self.coldest_C, full_at_C=full_at_C, supply=CRANK_SUPPLY, demand=CRANK_DEMAND)

    def rests(self) -> tuple[Rest, Rest, Rest]:
        """The worst, the likely and the best end."""
        cold, need, loss = self.cold, self.need, self.loss_per_day
        likely = Rest(
            capacity_Ah=self.capacity_Ah,
            cold=cold.likely,
            charge=self.charge.likely * self.aged.likely,
            need=need.likely,
            vehicle_mA=self.vehicle_mA.likely,
            unit_mA=self.unit_mA.likely,
            loss_per_day=loss.likely,
        )
        worst = replace(
            likely,
            cold=cold.low,
            charge=self.charge.low * self.aged.low,
            need=need.high,
            vehicle_mA=self.vehicle_mA.high,
            unit_mA=self.unit_mA.high,
            loss_per_day=loss.high,
        )
        best = replace(
            likely,
            cold=cold.high,
            charge=self.charge.high * self.aged.high,
            need=need.low,
            vehicle_mA=self.vehicle_mA.low,
            unit_mA=self.unit_mA.low,
            loss_per_day=loss.low,
        )
        return worst, likely, best

    @property
    def days(self) -> Span:
        """Days until a start at the coldest is no longer sure."""
        worst, likely, best = self.rests()
        return Span(worst.days, likely.days, best.days)


def shares(rest: Rest) -> dict[str, float]:
    """What takes the charge, each as a part of all that is lost in the first day."""
    losses = {
        "vehicle_drain": rest.vehicle_mA * 24.0 / 1000.0,
        "unit": rest.unit_mA * 24.0 / 1000.0,
        "self_discharge": rest.loss_per_day * rest.had_Ah,
    }
    whole = losses["vehicle_drain"] + losses["unit"] + losses["self_discharge"]
    return {name: loss / whole if whole > 0.0 else 0.0 for name, loss in losses.items()}


def bound_by(rest: Rest) -> str:
    """What bounds the days: the start itself where there is nothing to spare, else what takes most of the charge."""
    if rest.had_Ah <= rest.needed_Ah:
        return "crank_at_coldest"
    found = shares(rest)
    return max(found, key=lambda name: found[name])
