"""What a job sheet says for the proof: [reports], what the unit's server calls things; the unit's supply seen twice."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from backprobe.evidence.report import ReportNames
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.formats.figures import VOLT_UNITS, read_figure
from backprobe.formats.report_columns import EVENT_NAMES, KNOWN, names_in
from backprobe.formats.toml_text import TomlTable

KEYS: dict[str, tuple[str, ...]] = {
    "reports": ("columns", "events"),
    "reports.columns": KNOWN,
    "reports.events": EVENT_NAMES,
}
SEEN = ("idle_V", "transmit_V")  # under [unit]
MOST_V = 60.0


def read_report_names(sheet: TomlTable, known: Mapping[str, Collection[str]]) -> ReportNames:
    """What the unit's server calls columns and events; our own names where the sheet has no [reports]."""
    table = sheet.table_of("reports")
    table.only(known)
    columns, events = table.table_of("columns"), table.table_of("events")
    columns.only(known)
    events.only(known)
    return names_in(columns, events)


def read_supply_pair(unit: TomlTable) -> SupplyPair | None:
    """The unit's supply idle and transmitting; None where neither stands there. The change between them is what tells.

    Raises UnreadableError where one stands there alone, or is no voltage.
    """
    given = [name for name in SEEN if unit.values.get(name) not in (None, "")]
    if not given:
        return None
    if len(given) < len(SEEN):
        (lacking,) = set(SEEN) - set(given)
        raise unit.refuse(given[0], f"{lacking} beside it: the change between the two is what tells")
    (idle_V, count_V), (transmit_V, other_V) = (_volts(unit, name) for name in SEEN)
    return SupplyPair(idle_V, transmit_V, max(count_V, other_V))


def _volts(unit: TomlTable, name: str) -> tuple[float, float]:
    """A voltage and one count of its last digit [V]; as text it keeps its last zero."""
    value = unit.values[name]
    text = value if isinstance(value, str) else "" if isinstance(value, bool) else repr(value)
    figure = read_figure(text)
    shift = None if figure is None else VOLT_UNITS.get(figure.unit.lower() or "v")
    if figure is None or shift is None or not 0 < figure.value(shift) <= MOST_V:
        raise unit.refuse(name, f'volts as they were shown: {name} = "12.41"')
    return figure.value(shift), figure.count(shift)
