"""walkround.toml: what was seen before anything was touched, and the vehicle after the work. No key must be there."""

from __future__ import annotations

from backprobe.evidence.walkround import (
    Authority,
    Bench,
    Condition,
    Fate,
    FoundDevice,
    Hazards,
    OnVehicle,
    SwitchSide,
    VinRead,
    Walkround,
)
from backprobe.formats.job_as_built import KEYS as AS_BUILT_KEYS
from backprobe.formats.job_as_built import read_photos
from backprobe.formats.toml_text import TomlTable, parse_toml

_CONDITION = ("odometer_km", "odometer_mi", "engine_h", "lamps", "codes")
KEYS: dict[str, tuple[str, ...]] = {
    "": ("authority", "vehicle", "devices", "before", "after", "unit", "hazards", "photo"),
    "authority": ("work", "work_by", "crank", "crank_by"),
    "vehicle": ("vin", "vin_read", "plate", "fleet_number", "key_with"),
    "devices": ("looked_for", "found"),
    "devices.found": ("what", "fate", "consent"),
    "before": _CONDITION,
    "after": (*_CONDITION, "explained"),
    "unit": (
        *("serial", "activated", "firmware", "firmware_wanted"),
        *("backup", "backup_V", "backup_least_V", "lights"),
    ),
    "hazards": (
        *("high_voltage", "high_voltage_by", "restraint_near_work", "restraint_procedure", "dual_batteries"),
        *("battery_switch", "battery_switch_side", "after_run_min"),
        *("dangerous_goods", "dangerous_goods_consent", "trailer", "system_48V"),
    ),
    "photo": AS_BUILT_KEYS["photo"],
}
NONE = "none"  # how a list says that there was nothing
# the widest figures that are taken for possible: a wrong unit (m, s) shall not pass
MOST_ODOMETER = 9_999_999
MOST_ENGINE_H = 999_999
MOST_BACKUP_V = 60
MOST_AFTER_RUN_MIN = 240


def read_walkround(text: str, file: str) -> Walkround:
    r"""The walkround that the TOML `text` holds; `file` is the name shown in messages.

    Raises UnreadableError, with the line, for TOML that cannot be parsed, for keys that do not exist (naming the
    nearest one) and for values of the wrong kind. What is not said stays None.

    >>> read_walkround('[before]\nlamps = "none"', "walkround.toml").before.lamps
    ()
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    devices = _table(sheet, "devices")
    return Walkround(
        authority=_authority(_table(sheet, "authority")),
        vehicle=_vehicle(_table(sheet, "vehicle")),
        looked_for_devices=devices.flag_of("looked_for"),
        devices=tuple(_device(table) for table in devices.tables_of("found")),
        before=_condition(_table(sheet, "before")),
        after=_condition(_table(sheet, "after")) if "after" in sheet.values else None,
        bench=_bench(_table(sheet, "unit")),
        hazards=_hazards(_table(sheet, "hazards")),
        photos=read_photos(sheet.tables_of("photo"), KEYS),
    )


def _table(sheet: TomlTable, name: str) -> TomlTable:
    table = sheet.table_of(name)
    table.only(KEYS)
    return table


def _listed(table: TomlTable, key: str) -> tuple[str, ...] | None:
    """The texts of `key`; empty for [] and "none", None where nothing is said."""
    texts = table.texts_of(key)
    nothing = [text for text in texts if text.casefold() == NONE]
    if nothing and len(texts) > 1:
        raise table.refuse(key, f'either "{NONE}" or what there was, not both')
    if nothing or isinstance(table.values.get(key), list):
        return () if nothing else texts
    return texts or None


def _authority(table: TomlTable) -> Authority:
    return Authority(
        work=table.flag_of("work"),
        work_by=table.text_of("work_by"),
        crank=table.flag_of("crank"),
        crank_by=table.text_of("crank_by"),
    )


def _vehicle(table: TomlTable) -> OnVehicle:
    how = table.text_of("vin_read", choices=tuple(VinRead))
    return OnVehicle(
        vin=table.text_of("vin"),
        vin_read=None if how is None else VinRead(how),
        plate=table.text_of("plate"),
        fleet_number=table.text_of("fleet_number"),
        key_with=table.text_of("key_with"),
    )


def _device(table: TomlTable) -> FoundDevice:
    table.only(KEYS)
    fate = table.text_of("fate", choices=tuple(Fate))
    return FoundDevice(
        what=table.must("what", table.text_of("what"), expected='"…", what was found'),
        fate=None if fate is None else Fate(fate),
        consent=table.text_of("consent"),
    )


def _condition(table: TomlTable) -> Condition:
    if "odometer_km" in table.values and "odometer_mi" in table.values:
        raise table.refuse("odometer_mi", "either odometer_km or odometer_mi, as the odometer shows it, not both")
    return Condition(
        odometer_km=table.number_of("odometer_km", least=0, most=MOST_ODOMETER),
        odometer_mi=table.number_of("odometer_mi", least=0, most=MOST_ODOMETER),
        engine_h=table.number_of("engine_h", least=0, most=MOST_ENGINE_H),
        lamps=_listed(table, "lamps"),
        codes=_listed(table, "codes"),
        explained=table.text_of("explained"),
    )


def _bench(table: TomlTable) -> Bench:
    return Bench(
        serial=table.text_of("serial"),
        activated=table.flag_of("activated"),
        firmware=table.text_of("firmware"),
        firmware_wanted=table.text_of("firmware_wanted"),
        backup=table.flag_of("backup"),
        backup_V=table.number_of("backup_V", least=0, most=MOST_BACKUP_V),
        backup_least_V=table.number_of("backup_least_V", least=0, most=MOST_BACKUP_V),
        lights=_listed(table, "lights"),
    )


def _hazards(table: TomlTable) -> Hazards:
    side = table.text_of("battery_switch_side", choices=tuple(SwitchSide))
    return Hazards(
        high_voltage=table.flag_of("high_voltage"),
        high_voltage_by=table.text_of("high_voltage_by"),
        restraint_near_work=table.flag_of("restraint_near_work"),
        restraint_procedure=table.text_of("restraint_procedure"),
        dual_batteries=table.flag_of("dual_batteries"),
        battery_switch=table.flag_of("battery_switch"),
        battery_switch_side=None if side is None else SwitchSide(side),
        after_run_min=table.number_of("after_run_min", least=0, most=MOST_AFTER_RUN_MIN),
        dangerous_goods=table.flag_of("dangerous_goods"),
        dangerous_goods_consent=table.text_of("dangerous_goods_consent"),
        trailer=table.flag_of("trailer"),
        system_48V=table.flag_of("system_48V"),
    )
