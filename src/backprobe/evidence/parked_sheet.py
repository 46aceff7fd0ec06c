"""What the technician wrote down of the battery and of the vehicle at rest."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Typed:
    """A figure as it was typed: `value`, and what one `count` of its last digit is worth, both in the same unit."""

    value: float
    count: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BatterySheet:
    """The battery: `capacity_Ah` of one at the 20 h rate, `count` of them in series.

    `rest_V` is one reading over all of them, or one for each where the centre tap was measured. `kind` is flooded, agm
    or unknown; `temperature_C` is the battery's when its volts were read.
    """

    kind: str = "unknown"
    capacity_Ah: float | None = None
    count: int | None = None
    age_years: float | None = None
    rest_V: tuple[Typed, ...] = ()
    hours_since_charge: float | None = None
    temperature_C: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ParkedSheet:
    """The vehicle at rest: its own drain, measured so many `minutes_after_lock`, without the unit.

    `coldest_C` is the coldest in which it must start, `starts_to_C` the coldest to which a full battery starts it,
    where somebody knows; `wanted_days` how long it shall stand.
    """

    vehicle_drain_mA: Typed | None = None
    minutes_after_lock: float | None = None
    coldest_C: float | None = None
    starts_to_C: float | None = None
    wanted_days: float | None = None
    battery: BatterySheet = field(default=BatterySheet())
