"""What was seen and said before anything was touched, as the technician wrote it down; and the vehicle after the work.

None stands everywhere for 'not said', which is never taken for yes or no.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum

from backprobe.evidence.photo import NamedPhoto


class Fate(StrEnum):
    """What became of a device that was found in the vehicle."""

    LEFT = "left"
    REMOVED = "removed"


class SwitchSide(StrEnum):
    """In which side of the battery its switch sits."""

    POSITIVE = "positive"
    NEGATIVE = "negative"


class VinRead(StrEnum):
    """How a VIN came off the vehicle: by a scanner, typed whole, or its last six typed and the rest compared by eye."""

    SCANNED = "scanned"
    TYPED = "typed"
    LAST_SIX = "last_six"


@dataclass(frozen=True, slots=True, kw_only=True)
class Authority:
    """Who allowed the work and the cranking: a name allows, `False` says that nobody did."""

    work: bool | None = None
    work_by: str | None = None
    crank: bool | None = None
    crank_by: str | None = None

    @property
    def may_work(self) -> bool | None:
        """Whether the work was allowed by somebody who is named; None where that is not said."""
        return _allowed(self.work, self.work_by)

    @property
    def may_crank(self) -> bool | None:
        """Whether cranking was allowed by somebody who is named; None where that is not said.

        >>> Authority(crank_by="M. Linden").may_crank, Authority(crank=True).may_crank, Authority(crank=False).may_crank
        (True, None, False)
        """
        return _allowed(self.crank, self.crank_by)


def _allowed(said: bool | None, by: str | None) -> bool | None:
    return False if said is False else (True if by else None)


@dataclass(frozen=True, slots=True, kw_only=True)
class OnVehicle:
    """VIN (and how it was read), plate and fleet number as on the vehicle itself, and who holds its key."""

    vin: str | None = None
    vin_read: VinRead | None = None
    plate: str | None = None
    fleet_number: str | None = None
    key_with: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundDevice:
    """A tracker, alarm or other device that somebody fitted before: what became of it, and by whose consent."""

    what: str
    fate: Fate | None = None
    consent: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """The vehicle's state: odometer in one of two units, engine hours, warning lamps that burn, fault codes that stand.

    `lamps` and `codes` are empty where there were none, None where nobody looked. `explained` says why lamps or codes
    that stood before are gone.
    """

    odometer_km: float | None = None
    odometer_mi: float | None = None
    engine_h: float | None = None
    lamps: tuple[str, ...] | None = None
    codes: tuple[str, ...] | None = None
    explained: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """The unit before the dash is opened; `backup` is False for a unit without a battery of its own."""

    serial: str | None = None
    activated: bool | None = None
    firmware: str | None = None
    firmware_wanted: str | None = None
    backup: bool | None = None
    backup_V: float | None = None
    backup_least_V: float | None = None
    lights: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazards:
    """What makes the work dangerous, and for each who or what makes it safe.

    `high_voltage_by` is the licensed person who says where the low-voltage work may be done; `restraint_procedure`
    the maker's procedure that was followed; `after_run_min` how long the maker wants the battery switch left closed
    after key-off; `dangerous_goods_consent` who consented to a tap upstream of the switch.
    """

    high_voltage: bool | None = None
    high_voltage_by: str | None = None
    restraint_near_work: bool | None = None
    restraint_procedure: str | None = None
    dual_batteries: bool | None = None
    battery_switch: bool | None = None
    battery_switch_side: SwitchSide | None = None
    after_run_min: float | None = None
    dangerous_goods: bool | None = None
    dangerous_goods_consent: str | None = None
    trailer: bool | None = None
    system_48V: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Walkround:
    """One walk round one vehicle; `looked_for_devices` says whether anybody looked, `devices` what was found."""

    authority: Authority = field(default_factory=Authority)
    vehicle: OnVehicle = field(default_factory=OnVehicle)
    looked_for_devices: bool | None = None
    devices: tuple[FoundDevice, ...] = ()
    before: Condition = field(default_factory=Condition)
    after: Condition | None = None
    bench: Bench = field(default_factory=Bench)
    hazards: Hazards = field(default_factory=Hazards)
    photos: tuple[NamedPhoto, ...] = ()
