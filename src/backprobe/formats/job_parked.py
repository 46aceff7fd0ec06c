"""The tables of a job sheet on the battery and the vehicle at rest: [battery], [parked]."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from backprobe.evidence.parked_sheet import BatterySheet, ParkedSheet, Typed
from backprobe.formats.figures import read_figure
from backprobe.formats.toml_text import TomlTable

KEYS: dict[str, tuple[str, ...]] = {
    "battery": ("kind", "capacity_Ah", "count", "age_years", "rest_V", "hours_since_charge", "temperature_C"),
    "parked": ("vehicle_drain_mA", "minutes_after_lock", "coldest_C", "starts_to_C", "wanted_days"),
}
BATTERY_KINDS = ("flooded", "agm", "unknown")
LEAST_AH, MOST_AH = 10, 1000
MOST_YEARS, MOST_HOURS, MOST_MINUTES, MOST_DAYS = 30, 100_000, 100_000, 3650
MOST_REST_V, MOST_DRAIN_MA = 60.0, 20_000.0
COLDEST_C, HOTTEST_C = -50, 60
MOST_BATTERIES = 2


def read_parked(sheet: TomlTable, known: Mapping[str, Collection[str]]) -> ParkedSheet | None:
    """What the sheet says of battery and rest, None where it has neither table.

    Raises UnreadableError, with the line, as for the whole sheet.
    """
    if not {"battery", "parked"} & sheet.values.keys():
        return None
    parked = sheet.table_of("parked")
    parked.only(known)
    drain = _figures(parked, "vehicle_drain_mA", most=MOST_DRAIN_MA, example="32.5")
    if len(drain) > 1:
        raise parked.refuse("vehicle_drain_mA", "one figure in mA")
    return ParkedSheet(
        vehicle_drain_mA=drain[0] if drain else None,
        minutes_after_lock=parked.number_of("minutes_after_lock", least=0, most=MOST_MINUTES),
        coldest_C=_celsius(parked, "coldest_C"),
        starts_to_C=_celsius(parked, "starts_to_C"),
        wanted_days=parked.number_of("wanted_days", least=0.1, most=MOST_DAYS),
        battery=_battery(sheet.table_of("battery"), known),
    )


def _battery(table: TomlTable, known: Mapping[str, Collection[str]]) -> BatterySheet:
    table.only(known)
    rest_V = _figures(table, "rest_V", most=MOST_REST_V, example="12.61")
    if len(rest_V) > MOST_BATTERIES:
        raise table.refuse("rest_V", "one reading over all, or one for each of two batteries")
    return BatterySheet(
        kind=table.text_of("kind", choices=BATTERY_KINDS) or "unknown",
        capacity_Ah=table.number_of("capacity_Ah", least=LEAST_AH, most=MOST_AH),
        count=table.whole_of("count", least=1, most=MOST_BATTERIES),
        age_years=table.number_of("age_years", least=0, most=MOST_YEARS),
        rest_V=rest_V,
        hours_since_charge=table.number_of("hours_since_charge", least=0, most=MOST_HOURS),
        temperature_C=_celsius(table, "temperature_C"),
    )


def _celsius(table: TomlTable, key: str) -> float | None:
    """A temperature; a figure that only °F can mean is named so."""
    value = table.values.get(key)
    if isinstance(value, int | float) and not isinstance(value, bool) and HOTTEST_C < value < 1000:
        as_C = (float(value) - 32.0) * 5.0 / 9.0
        raise table.refuse(key, f"degrees Celsius, at most {HOTTEST_C}: are these °F? {value:g} °F are {as_C:.0f} °C")
    return table.number_of(key, least=COLDEST_C, most=HOTTEST_C)


def _figures(table: TomlTable, key: str, *, most: float, example: str) -> tuple[Typed, ...]:
    """One figure or a list of them, each a number or text as the meter showed it, which keeps its last zero."""
    value = table.values.get(key)
    if value is None or value == "":
        return ()
    found = [_typed(entry, unit=key.rpartition("_")[2]) for entry in (value if isinstance(value, list) else [value])]
    kept = tuple(figure for figure in found if figure is not None and 0.0 <= figure.value <= most)
    if len(kept) < len(found) or not kept:
        raise table.refuse(key, f'a figure from 0 to {most:g}, as the meter showed it: {key} = "{example}"')
    return kept


def _typed(value: object, *, unit: str) -> Typed | None:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        return None
    figure = read_figure(value if isinstance(value, str) else repr(value))
    if figure is None or figure.unit not in ("", unit):
        return None
    return Typed(figure.value(), figure.count())
