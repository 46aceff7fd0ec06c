"""Currents that drain a parked vehicle, and how many days they leave."""

from __future__ import annotations

import math
from collections.abc import Iterable


def mean_mA(states: Iterable[tuple[float, float]]) -> float:
    """The mean current [mA] of states (current in mA, seconds spent in it); 0 where no time is spent at all.

    >>> round(mean_mA([(3.5, 3570), (180, 30)]), 3)
    4.971
    """
    held = list(states)
    seconds = math.fsum(length_s for _, length_s in held)
    return math.fsum(current_mA * length_s for current_mA, length_s in held) / seconds if seconds > 0.0 else 0.0


def days_until(charge_Ah: float, *, needed_Ah: float, drain_mA: float, loss_per_day: float) -> float:
    """Days until a battery of `charge_Ah` is down to `needed_Ah`, drained by `drain_mA` and by its own loss.

    The drain takes the same charge every day, the battery's own loss the same part of what is left:
    t = ln(1 + s (Q - Qn) / (q + s Qn)) / s with q the drain in Ah a day and s the loss. Infinite where nothing drains
    it, 0 where there is no more than is needed. Source: dQ/dt = -q - s Q, solved.

    >>> days_until(80, needed_Ah=40, drain_mA=50, loss_per_day=0.0)
    33.333333333333336
    >>> round(days_until(80, needed_Ah=40, drain_mA=50, loss_per_day=0.00164), 1)
    30.8
    """
    spare_Ah = charge_Ah - needed_Ah
    per_day_Ah = drain_mA * 24.0 / 1000.0
    if spare_Ah <= 0.0:
        return 0.0
    last_day_Ah = per_day_Ah + loss_per_day * needed_Ah
    if loss_per_day <= 0.0:
        return spare_Ah / per_day_Ah if per_day_Ah > 0.0 else math.inf
    return math.log1p(loss_per_day * spare_Ah / last_day_Ah) / loss_per_day if last_day_Ah > 0.0 else math.inf


def charge_after_Ah(charge_Ah: float, *, days: float, drain_mA: float, loss_per_day: float) -> float:
    """What is left of `charge_Ah` after `days` [Ah], by the same law; not below 0.

    >>> round(charge_after_Ah(80, days=30.8, drain_mA=50, loss_per_day=0.00164), 1)
    40.0
    """
    per_day_Ah = drain_mA * 24.0 / 1000.0
    if loss_per_day <= 0.0:
        return max(0.0, charge_Ah - per_day_Ah * days)
    steady_Ah = per_day_Ah / loss_per_day
    return max(0.0, (charge_Ah + steady_Ah) * math.exp(-loss_per_day * days) - steady_Ah)


def bearable_mA(charge_Ah: float, *, needed_Ah: float, days: float, loss_per_day: float) -> float:
    """The drain at which `charge_Ah` is down to `needed_Ah` after exactly `days` [mA]; below 0 it must be charged.

    `loss_per_day` is above 0. Source: `days_until`, solved for the drain.

    >>> round(bearable_mA(80, needed_Ah=40, days=30.8, loss_per_day=0.00164))
    50
    """
    spare_Ah = charge_Ah - needed_Ah
    per_day_Ah = loss_per_day * spare_Ah / math.expm1(loss_per_day * days) - loss_per_day * needed_Ah
    return per_day_Ah * 1000.0 / 24.0
