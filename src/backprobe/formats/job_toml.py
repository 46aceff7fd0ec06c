"""job.toml: the job sheet. Only `system_V` under [vehicle] and `sheet` under [unit] must be there."""

from __future__ import annotations

import re

from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.evidence.job_sheet import JobSheet, NamedWire, Vehicle
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.formats.job_as_built import KEYS as AS_BUILT_KEYS
from backprobe.formats.job_as_built import read_joints, read_photos
from backprobe.formats.job_join import KEYS as JOIN_KEYS
from backprobe.formats.job_join import read_join
from backprobe.formats.job_parked import KEYS as PARKED_KEYS
from backprobe.formats.job_parked import read_parked
from backprobe.formats.job_prove import KEYS as PROVE_KEYS
from backprobe.formats.job_prove import SEEN, read_report_names, read_supply_pair
from backprobe.formats.toml_text import TomlTable, parse_toml
from backprobe.limits.meters import METERS

KEYS: dict[str, tuple[str, ...]] = {
    "": (
        *("vehicle", "unit", "job", "meter", "wire", "joint", "photo", "hand_over", "place", "reports"),
        *JOIN_KEYS,
        *PARKED_KEYS,
    ),
    "vehicle": (
        *("system_V", "vin", "plate", "fleet_number", "maker", "model", "model_year", "heavy"),
        *("has_crank", "has_accessory", "cylinders", "battery_switch"),
    ),
    "unit": ("sheet", "serial", "id", *SEEN),
    "place": ("lat", "lon", "accuracy_m"),
    "job": ("id", "yard", "technician", "date"),
    "meter": ("class", "file"),
    "wire": ("name", "lead", "circuit", "marks", "connector", "cavity", "colour", "size"),
    "hand_over": ("end", "missing", "undone", "restored", "why", "told_driver"),
    "hand_over.missing": ("what", "owed_by", "until"),
    **AS_BUILT_KEYS,
    **JOIN_KEYS,
    **PARKED_KEYS,
    **PROVE_KEYS,
}
LEADS = ("supply", "ignition")
SYSTEMS_V = (12, 24)
FIRST_YEAR, LAST_YEAR = 1950, 2100
CYLINDERS_MOST = 16
ACCURACY_MOST_M = 10_000
_SIZE = re.compile(r"(?:\d{1,2} ?AWG|\d{1,3}(?:\.\d{1,3})? ?mm[2²])", re.ASCII)


def read_job(text: str, file: str) -> JobSheet:
    r"""The job sheet that the TOML `text` holds; `file` is the name shown in messages.

    Raises UnreadableError, with the line, for TOML that cannot be parsed, for keys that do not exist (naming the
    nearest one), for values of the wrong kind and for what must be there and is not.

    >>> read_job('[vehicle]\nsystem_V = 12\n[unit]\nsheet = "unit.toml"', "job.toml").vehicle.has_crank
    True
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    unit, job, meter = (_table(sheet, name) for name in ("unit", "job", "meter"))
    if meter.text_of("class") and meter.text_of("file"):
        raise meter.refuse("file", "either class or file, not both")
    return JobSheet(
        vehicle=_vehicle(_table(sheet, "vehicle")),
        unit_sheet=unit.must("sheet", unit.text_of("sheet"), expected='"unit.toml", the path of the unit\'s sheet'),
        unit_serial=unit.text_of("serial"),
        unit_id=unit.text_of("id"),
        supply_pair=read_supply_pair(unit),
        report_names=read_report_names(sheet, KEYS),
        place=_place(_table(sheet, "place")) if "place" in sheet.values else None,
        id=job.text_of("id"),
        yard=job.text_of("yard"),
        technician=job.text_of("technician"),
        date=job.day_of("date"),
        meter_class=meter.text_of("class", choices=tuple(METERS)),
        meter_file=meter.text_of("file"),
        wires=_wires(sheet.tables_of("wire")),
        joints=read_joints(sheet.tables_of("joint"), KEYS),
        photos=read_photos(sheet.tables_of("photo"), KEYS),
        join=read_join(sheet, KEYS),
        parked=read_parked(sheet, KEYS),
        hand_over=_hand_over(_table(sheet, "hand_over")) if "hand_over" in sheet.values else None,
    )


def _table(sheet: TomlTable, name: str) -> TomlTable:
    table = sheet.table_of(name)
    table.only(KEYS)
    return table


def _vehicle(table: TomlTable) -> Vehicle:
    return Vehicle(
        system_V=_system_V(table),
        vin=table.text_of("vin"),
        plate=table.text_of("plate"),
        fleet_number=table.text_of("fleet_number"),
        maker=table.text_of("maker"),
        model=table.text_of("model"),
        model_year=table.whole_of("model_year", least=FIRST_YEAR, most=LAST_YEAR),
        heavy=table.flag_of("heavy"),
        has_crank=table.flag_of("has_crank") is not False,
        has_accessory=table.flag_of("has_accessory") is not False,
        cylinders=table.whole_of("cylinders", least=1, most=CYLINDERS_MOST),
        battery_switch=table.flag_of("battery_switch"),
    )


def _place(table: TomlTable) -> VehiclePlace:
    north, east = table.number_of("lat", least=-90, most=90), table.number_of("lon", least=-180, most=180)
    return VehiclePlace(
        lat_deg=table.must("lat", north, expected="-33.1, degrees north, south negative"),
        lon_deg=table.must("lon", east, expected="151.2, degrees east, west negative"),
        accuracy_m=table.number_of("accuracy_m", least=0, most=ACCURACY_MOST_M),
    )


def _system_V(table: TomlTable) -> int:
    value = table.must("system_V", table.values.get("system_V"), expected="12 or 24")
    for system_V in SYSTEMS_V:
        if value == system_V:
            return system_V
    raise table.refuse("system_V", "12 or 24, without quotation marks and unit")


def _wires(tables: tuple[TomlTable, ...]) -> tuple[NamedWire, ...]:
    wires: dict[str, NamedWire] = {}
    for table in tables:
        table.only(KEYS)
        wire = _wire(table)
        if wire.name in wires:
            raise table.refuse("name", f"each wire once; '{wire.name}' stands twice")
        wires[wire.name] = wire
    return tuple(wires.values())


def _wire(table: TomlTable) -> NamedWire:
    size = table.text_of("size")
    if size is not None and not _SIZE.fullmatch(size):
        raise table.refuse("size", 'a size such as "18 AWG" or "0.75 mm2"')
    return NamedWire(
        name=table.must("name", table.text_of("name"), expected='"…", as in the readings'),
        lead=table.text_of("lead", choices=LEADS),
        circuits=table.texts_of("circuit"),
        marks=table.texts_of("marks"),
        connector=table.text_of("connector"),
        cavity=table.text_of("cavity"),
        colour=table.text_of("colour"),
        size=size,
    )


def _hand_over(table: TomlTable) -> HandOver | None:
    """How the job ends; None where nothing is said, or only what the driver was told, which may come first."""
    told = table.texts_of("told_driver")
    if not set(table.values) - {"told_driver"}:
        return None
    ends = tuple(End)
    end = table.must("end", table.text_of("end", choices=ends), expected=f'"{" | ".join(ends)}"')
    return HandOver(
        end=End(end),
        missing=tuple(_missing(row) for row in table.tables_of("missing")),
        undone=table.texts_of("undone"),
        restored=table.texts_of("restored"),
        why=table.text_of("why"),
        told_driver=told,
    )


def _missing(table: TomlTable) -> Missing:
    table.only(KEYS)
    return Missing(
        what=table.must("what", table.text_of("what"), expected='"…", what is missing'),
        owed_by=table.text_of("owed_by"),
        until=table.day_of("until"),
    )
