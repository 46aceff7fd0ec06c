"""A unit sheet: what a telematics unit's maker states of it, as TOML."""

from __future__ import annotations

import re
from typing import TypeVar

from backprobe.evidence.unit_sheet import Lead, Light, Pull, Purpose, Reporting, Supply, UnitInput, UnitSheet
from backprobe.formats.toml_text import TomlTable, parse_toml
from backprobe.limits.colours import COLOURS

KEYS: dict[str, tuple[str, ...]] = {
    "": ("name", "maker", "supply", "lead", "input", "light", "reporting"),
    "supply": ("least_V", "most_V", "holdup_ms", "peak_A", "idle_mA", "transmit_mA", "sleep_mA"),
    "lead": ("name", "purpose", "colour", "mm2", "awg", "fuse_A"),
    "input": ("name", "low_most_V", "high_least_V", "debounce_s", "pull"),
    "light": ("name", "colour", "pattern", "means"),
    "reporting": ("interval_s", "stopped_interval_s", "report_s", "debounce_on_s", "debounce_off_s"),
}
# the widest figures that are taken for possible: a wrong unit (mV, s for ms) shall not pass
MOST_V = 60
MOST_MS = 600_000
MOST_A = 100
MOST_MA = 20_000
MOST_S = 604_800
MM2 = (0.05, 120)
AWG = (0, 40)
_COLOUR = re.compile(rf"(?:{'|'.join(COLOURS)}){{1,2}}")

Entry = TypeVar("Entry", Lead, UnitInput, Light)


def read_unit_sheet(text: str, file: str) -> UnitSheet:
    """The unit that the TOML `text` describes; `file` is the name shown in messages.

    Needs a name, the supply range and at least a supply and a ground lead; every input bears the name of an ignition
    or input lead. Raises UnreadableError, with the line, for anything else, and for keys that do not exist.
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    leads = _each_once([(table, _lead(table)) for table in _tables(sheet, "lead")])
    for purpose in (Purpose.SUPPLY, Purpose.GROUND):
        if purpose not in {lead.purpose for lead in leads}:
            raise sheet.refuse(None, f'at least one [[lead]] with purpose = "{purpose}"')
    return UnitSheet(
        name=sheet.must("name", sheet.text_of("name"), expected='"…", what the unit is called'),
        maker=sheet.text_of("maker"),
        supply=_supply(_table(sheet, "supply")),
        leads=leads,
        inputs=_each_once([(table, _input(table, leads)) for table in _tables(sheet, "input")]),
        lights=_each_once([(table, _light(table)) for table in _tables(sheet, "light")]),
        reporting=_reporting(_table(sheet, "reporting")),
    )


def _table(sheet: TomlTable, name: str) -> TomlTable:
    table = sheet.table_of(name)
    table.only(KEYS)
    return table


def _tables(sheet: TomlTable, name: str) -> tuple[TomlTable, ...]:
    tables = sheet.tables_of(name)
    for table in tables:
        table.only(KEYS)
    return tables


def _each_once(entries: list[tuple[TomlTable, Entry]]) -> tuple[Entry, ...]:
    seen: dict[str, Entry] = {}
    for table, entry in entries:
        if entry.name in seen:
            raise table.refuse("name", f"each name once; '{entry.name}' stands twice")
        seen[entry.name] = entry
    return tuple(seen.values())


def _name(table: TomlTable) -> str:
    return table.must("name", table.text_of("name"), expected='"…"')


def _supply(table: TomlTable) -> Supply:
    least_V = table.must(
        "least_V", table.number_of("least_V", least=0, most=MOST_V), expected="9, the lowest supply in volts"
    )
    most_V = table.must(
        "most_V", table.number_of("most_V", least=0, most=MOST_V), expected="32, the highest supply in volts"
    )
    if not least_V < most_V:
        raise table.refuse("most_V", f"more than least_V, which is {least_V:g}")
    return Supply(
        least_V=least_V,
        most_V=most_V,
        holdup_ms=table.number_of("holdup_ms", least=0, most=MOST_MS),
        peak_A=table.number_of("peak_A", least=0, most=MOST_A),
        idle_mA=table.number_of("idle_mA", least=0, most=MOST_MA),
        transmit_mA=table.number_of("transmit_mA", least=0, most=MOST_MA),
        sleep_mA=table.number_of("sleep_mA", least=0, most=MOST_MA),
    )


def _lead(table: TomlTable) -> Lead:
    purposes = tuple(Purpose)
    purpose = table.must("purpose", table.text_of("purpose", choices=purposes), expected=f'"{" | ".join(purposes)}"')
    colour = table.text_of("colour")
    if colour is not None and not _COLOUR.fullmatch(colour):
        codes = ", ".join(f"{code} {name}" for code, name in COLOURS.items())
        raise table.refuse("colour", f"one or two of the letters of IEC 60757, as RD or RDBU: {codes}")
    if "mm2" in table.values and "awg" in table.values:
        raise table.refuse("awg", "either mm2 or awg, not both")
    return Lead(
        name=_name(table),
        purpose=Purpose(purpose),
        colour=colour,
        mm2=table.number_of("mm2", least=MM2[0], most=MM2[1]),
        awg=table.whole_of("awg", least=AWG[0], most=AWG[1]),
        fuse_A=table.number_of("fuse_A", least=0.1, most=MOST_A),
    )


def _input(table: TomlTable, leads: tuple[Lead, ...]) -> UnitInput:
    name = _name(table)
    named = tuple(lead.name for lead in leads if lead.purpose in (Purpose.IGNITION, Purpose.INPUT))
    if name not in named:
        raise table.refuse("name", f"the name of a lead with purpose ignition or input: {', '.join(named) or 'none'}")
    low_V = table.number_of("low_most_V", least=0, most=MOST_V)
    high_V = table.number_of("high_least_V", least=0, most=MOST_V)
    low_most_V = table.must("low_most_V", low_V, expected="3, the highest volts that surely mean off")
    high_least_V = table.must("high_least_V", high_V, expected="7, the lowest volts that surely mean on")
    if not low_most_V < high_least_V:
        raise table.refuse("high_least_V", f"more than low_most_V, which is {low_most_V:g}")
    pull = table.text_of("pull", choices=tuple(Pull))
    return UnitInput(
        name=name,
        low_most_V=low_most_V,
        high_least_V=high_least_V,
        debounce_s=table.number_of("debounce_s", least=0, most=MOST_S),
        pull=None if pull is None else Pull(pull),
    )


def _light(table: TomlTable) -> Light:
    return Light(
        name=_name(table),
        colour=table.text_of("colour"),
        pattern=table.text_of("pattern"),
        means=table.text_of("means"),
    )


def _reporting(table: TomlTable) -> Reporting:
    return Reporting(
        interval_s=table.number_of("interval_s", least=0, most=MOST_S),
        stopped_interval_s=table.number_of("stopped_interval_s", least=0, most=MOST_S),
        report_s=table.number_of("report_s", least=0, most=MOST_S),
        debounce_on_s=table.number_of("debounce_on_s", least=0, most=MOST_S),
        debounce_off_s=table.number_of("debounce_off_s", least=0, most=MOST_S),
    )
