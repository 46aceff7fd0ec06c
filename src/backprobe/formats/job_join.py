"""The tables of a job sheet on wire, fuse, ground, inputs, mounting: [join], [ground], [[input]], [mount], [route]."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from datetime import datetime

from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, Route, SignalLevels
from backprobe.formats.instants import EXPECTED, read_instant
from backprobe.formats.toml_text import TomlTable
from backprobe.limits.fuse_lookup import TYPES
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.limits.wires import INSULATIONS

SOURCED = ("sources", "isolation", "pulled", "active", "reported_on", "reported_off")
ROUTE = ("grommets", "sheathed", "held", "drip_loop", "clear_of_heat", "clear_of_fuel", "clear_of_moving")
KEYS: dict[str, tuple[str, ...]] = {
    "join": (
        *("ambient_C", "insulation", "crank_level", "tap_drop_mV", "tap_load_A", "vehicle_fuse_A", "vehicle_load_A"),
        *("vehicle_fuse_type", "reversible", "pierced", "spread", "why_spliced"),
    ),
    "ground": ("drop_mV", "load_A", "self_tapping", "behind", "switched_negative"),
    "input": ("lead", "on_V", "off_V", "floats_off", "coil", "diode", "isolated", *SOURCED),
    "mount": (
        *("place", "solid", "reachable", "dry", "cool", "quiet", "tied", "clear"),
        *("clear_of_airbags", "clear_of_column", "clear_of_pedals", "clear_of_ducts"),
        *("windscreen", "top_mm", "bottom_mm", "in_sight", "safety_technology"),
    ),
    "route": ROUTE,
}
MOST_DROP_MV, LEAST_LOAD_A, MOST_LOAD_A = 12_000, 0.01, 100
COLDEST_C, HOTTEST_C = -40, 125
MOST_V, MOST_MM, MOST_FUSE_A = 60, 2000, 500
ISOLATIONS, PULLS, ACTIVE = ("diode", "relay", "none"), ("up", "down"), ("high", "low")
LEVELS = tuple(dict.fromkeys(level for rows in STARTING_PROFILES.values() for level in rows))


def read_join(sheet: TomlTable, known: Mapping[str, Collection[str]]) -> JoinSheet:
    """What the sheet says beside the joints. Raises UnreadableError, with the line, as for the whole sheet."""
    join, ground, mount, route = (sheet.table_of(name) for name in ("join", "ground", "mount", "route"))
    for table in (join, ground, mount, route):
        table.only(known)
    return JoinSheet(
        ambient_C=_celsius(join, "ambient_C"),
        insulation=join.text_of("insulation", choices=tuple(INSULATIONS)),
        crank_level=_level(join, sheet.table_of("vehicle").values.get("system_V")),
        tap=_drop(join, "tap_drop_mV", load_key="tap_load_A"),
        vehicle_fuse_A=join.number_of("vehicle_fuse_A", least=0.1, most=MOST_FUSE_A),
        vehicle_fuse_type=join.text_of("vehicle_fuse_type", choices=TYPES),
        vehicle_load_A=join.number_of("vehicle_load_A", least=0, most=MOST_FUSE_A),
        reversible=join.flag_of("reversible"),
        pierced=join.flag_of("pierced"),
        spread=join.flag_of("spread"),
        why_spliced=join.text_of("why_spliced"),
        ground=_drop(ground, "drop_mV", load_key="load_A"),
        self_tapping=ground.flag_of("self_tapping"),
        behind=ground.text_of("behind"),
        switched_negative=ground.flag_of("switched_negative"),
        levels=_levels(sheet.tables_of("input"), known),
        mount=_mount(mount) if "mount" in sheet.values else None,
        route=Route(**{key: route.flag_of(key) for key in ROUTE}) if "route" in sheet.values else None,
    )


def _celsius(table: TomlTable, key: str) -> float | None:
    """A temperature; a figure that only °F can mean is named so."""
    value = table.values.get(key)
    if isinstance(value, int | float) and not isinstance(value, bool) and HOTTEST_C < value < 1000:
        as_C = (float(value) - 32.0) * 5.0 / 9.0
        raise table.refuse(
            key, f"degrees Celsius, from {COLDEST_C} to {HOTTEST_C}: are these °F? {value:g} °F are {as_C:.0f} °C"
        )
    return table.number_of(key, least=COLDEST_C, most=HOTTEST_C)


def _level(join: TomlTable, system_V: object) -> str | None:
    """The level of the starting profile; one that the system voltage does not have is refused."""
    level = join.text_of("crank_level", choices=LEVELS)
    rows = STARTING_PROFILES.get(system_V) if isinstance(system_V, int) else None
    if level is not None and rows is not None and level not in rows:
        raise join.refuse("crank_level", f"ISO 16750-2 has no level {level} at {system_V} V: {', '.join(rows)}")
    return level


def _drop(table: TomlTable, drop_key: str, *, load_key: str) -> Drop | None:
    drop_mV = table.number_of(drop_key, least=0, most=MOST_DROP_MV)
    load_A = table.number_of(load_key, least=LEAST_LOAD_A, most=MOST_LOAD_A)
    if drop_mV is None and load_A is None:
        return None
    if drop_mV is None or load_A is None:
        raise table.refuse(drop_key if load_A is None else load_key, f"{drop_key} and {load_key} together")
    return Drop(drop_mV, load_A)


def _levels(tables: tuple[TomlTable, ...], known: Mapping[str, Collection[str]]) -> tuple[SignalLevels, ...]:
    found: dict[str, SignalLevels] = {}
    for table in tables:
        table.only(known)
        lead = table.must("lead", table.text_of("lead"), expected='"…", a lead as the unit\'s sheet names it')
        if lead in found:
            raise table.refuse("lead", f"each input once; '{lead}' stands twice")
        found[lead] = SignalLevels(
            lead=lead,
            on_V=table.number_of("on_V", least=-1, most=MOST_V),
            off_V=table.number_of("off_V", least=-1, most=MOST_V),
            floats_off=table.flag_of("floats_off"),
            coil=table.flag_of("coil"),
            diode=table.flag_of("diode"),
            isolated=table.flag_of("isolated"),
            sources=table.texts_of("sources"),
            isolation=table.text_of("isolation", choices=ISOLATIONS),
            pulled=table.text_of("pulled", choices=PULLS),
            active=table.text_of("active", choices=ACTIVE),
            reported_on=_instant(table, "reported_on"),
            reported_off=_instant(table, "reported_off"),
        )
    return tuple(found.values())


def _instant(table: TomlTable, key: str) -> str | None:
    """When a report came, as it was written."""
    value = table.values.get(key)
    if isinstance(value, datetime):
        return value.isoformat()
    text = table.text_of(key)
    if text is not None and read_instant(text) is None:
        raise table.refuse(key, EXPECTED)
    return text


def _mount(table: TomlTable) -> Mount:
    return Mount(
        place=table.text_of("place"),
        solid=table.flag_of("solid"),
        reachable=table.flag_of("reachable"),
        dry=table.flag_of("dry"),
        cool=table.flag_of("cool"),
        quiet=table.flag_of("quiet"),
        tied=table.flag_of("tied"),
        clear=table.flag_of("clear"),
        windscreen=table.flag_of("windscreen"),
        top_mm=table.number_of("top_mm", least=0, most=MOST_MM),
        bottom_mm=table.number_of("bottom_mm", least=0, most=MOST_MM),
        in_sight=table.flag_of("in_sight"),
        clear_of_airbags=table.flag_of("clear_of_airbags"),
        clear_of_column=table.flag_of("clear_of_column"),
        clear_of_pedals=table.flag_of("clear_of_pedals"),
        clear_of_ducts=table.flag_of("clear_of_ducts"),
        safety_technology=table.flag_of("safety_technology"),
    )
