"""What the job sheet says: the vehicle, the unit to be fitted, who works where and when, and wires already named."""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.evidence.hand_over import HandOver
from backprobe.evidence.join_sheet import JoinSheet
from backprobe.evidence.joint import Joint
from backprobe.evidence.parked_sheet import ParkedSheet
from backprobe.evidence.photo import NamedPhoto
from backprobe.evidence.reading import WireFacts
from backprobe.evidence.report import ReportNames
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.vehicle_place import VehiclePlace


@dataclass(frozen=True, slots=True, kw_only=True)
class Vehicle:
    """The vehicle as the papers and the people on site know it; only `system_V` (12 or 24) must be known.

    `heavy` is True over 4536 kg gross, None where that was not stated. `has_crank` is False for electric and
    hybrid vehicles, `has_accessory` where the key has no such position, `battery_switch` says whether there is one.
    """

    system_V: int
    vin: str | None = None
    plate: str | None = None
    fleet_number: str | None = None
    maker: str | None = None
    model: str | None = None
    model_year: int | None = None
    heavy: bool | None = None
    has_crank: bool = True
    has_accessory: bool = True
    cylinders: int | None = None
    battery_switch: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedWire:
    """What is known of one wire beside its volts: what it was identified as, and where and how it runs.

    `lead` is the lead of the unit that somebody means it for, 'supply' or 'ignition'; `size` is as written: '18 AWG'
    or '0.75 mm2'.
    """

    name: str
    lead: str | None = None
    circuits: tuple[str, ...] = ()
    marks: tuple[str, ...] = ()
    connector: str | None = None
    cavity: str | None = None
    colour: str | None = None
    size: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSheet:
    """One job: `unit_sheet` is the path of the unit's own sheet as written, `date` as written or YYYY-MM-DD.

    `unit_id` is the unit as its reports name it, `report_names` what its server calls things, `supply_pair` its supply
    as it was seen idle and transmitting, `place` where the vehicle stands.
    At most one of `meter_class` (a name in the table of classes) and `meter_file` (a path as written) is given.
    `joints` say what became of the unit's leads, `join` what else was written of the wiring, `photos` what the photos
    show. `hand_over` is how the job ends, None while nobody has said so.
    """

    vehicle: Vehicle
    unit_sheet: str
    unit_serial: str | None = None
    unit_id: str | None = None
    supply_pair: SupplyPair | None = None
    report_names: ReportNames = field(default=ReportNames())
    place: VehiclePlace | None = None
    id: str | None = None
    yard: str | None = None
    technician: str | None = None
    date: str | None = None
    meter_class: str | None = None
    meter_file: str | None = None
    wires: tuple[NamedWire, ...] = field(default=())
    joints: tuple[Joint, ...] = ()
    photos: tuple[NamedPhoto, ...] = ()
    join: JoinSheet = field(default=JoinSheet())
    parked: ParkedSheet | None = None
    hand_over: HandOver | None = None

    @property
    def year(self) -> int | None:
        """The year of the work, where the date begins with one (YYYY-…)."""
        head, dash, _ = (self.date or "").partition("-")
        return int(head) if dash and len(head) == 4 and head.isascii() and head.isdigit() else None

    @property
    def facts(self) -> dict[str, WireFacts]:
        """Circuits and marks of each named wire, in the form that a readings table gives them."""
        return {wire.name: WireFacts(circuits=wire.circuits, marks=wire.marks) for wire in self.wires}
