"""The tables of a job sheet on wire, fuse, ground, inputs and mounting: [join], [ground], [[input]], [mount]."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, SignalLevels
from backprobe.formats.toml_text import TomlTable
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.limits.wires import INSULATIONS

KEYS: dict[str, tuple[str, ...]] = {
    "join": (
        *("ambient_C", "insulation", "crank_level", "tap_drop_mV", "tap_load_A", "vehicle_fuse_A", "vehicle_load_A"),
        *("reversible", "pierced", "why_spliced"),
    ),
    "ground": ("drop_mV", "load_A", "self_tapping", "behind", "switched_negative"),
    "input": ("lead", "on_V", "off_V", "floats_off", "coil", "diode", "isolated"),
    "mount": (
        *("place", "solid", "reachable", "dry", "cool", "quiet", "tied", "clear"),
        *("windscreen", "top_mm", "bottom_mm", "in_sight"),
    ),
}
MOST_DROP_MV, LEAST_LOAD_A, MOST_LOAD_A = 12_000, 0.01, 100
COLDEST_C, HOTTEST_C = -40, 125
MOST_V, MOST_MM, MOST_FUSE_A = 60, 2000, 500
LEVELS = tuple(dict.fromkeys(level for rows in STARTING_PROFILES.values() for level in rows))


def read_join(sheet: TomlTable, known: Mapping[str, Collection[str]]) -> JoinSheet:
    """What the sheet says beside the joints. Raises UnreadableError, with the line, as for the whole sheet."""
    join, ground, mount = (sheet.table_of(name) for name in ("join", "ground", "mount"))
    for table in (join, ground, mount):
        table.only(known)
    return JoinSheet(
        ambient_C=join.number_of("ambient_C", least=COLDEST_C, most=HOTTEST_C),
        insulation=join.text_of("insulation", choices=tuple(INSULATIONS)),
        crank_level=join.text_of("crank_level", choices=LEVELS),
        tap=_drop(join, "tap_drop_mV", load_key="tap_load_A"),
        vehicle_fuse_A=join.number_of("vehicle_fuse_A", least=0.1, most=MOST_FUSE_A),
        vehicle_load_A=join.number_of("vehicle_load_A", least=0, most=MOST_FUSE_A),
        reversible=join.flag_of("reversible"),
        pierced=join.flag_of("pierced"),
        why_spliced=join.text_of("why_spliced"),
        ground=_drop(ground, "drop_mV", load_key="load_A"),
        self_tapping=ground.flag_of("self_tapping"),
        behind=ground.text_of("behind"),
        switched_negative=ground.flag_of("switched_negative"),
        levels=_levels(sheet.tables_of("input"), known),
        mount=_mount(mount) if "mount" in sheet.values else None,
    )


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
        )
    return tuple(found.values())


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
    )
