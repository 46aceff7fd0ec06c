"""The columns of a table of reports, under the project's names or under those of the server that wrote it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.errors import OptionError, Place, UnreadableError
from backprobe.evidence.report import Event, ReportNames
from backprobe.formats.cells import cells_of, delimiter_of
from backprobe.formats.toml_text import TomlTable, parse_toml

KNOWN = (
    *("unit_id", "t", "received_at", "lat", "lon", "accuracy_m", "speed_kmh"),
    *("sats", "hdop", "supply_V", "ignition", "event"),
)
EVENT_NAMES = tuple(str(event) for event in Event)
_BY_SMALL = {name.lower(): name for name in KNOWN}


@dataclass(frozen=True, slots=True)
class ReportColumns:
    """The delimiter, how many columns the header names, and the place of each known one that is there."""

    delimiter: str
    width: int
    places: Mapping[str, int]

    def place(self, name: str) -> int:
        """Where column `name` stands; -1, behind the row's last cell, where the table does not have it."""
        return self.places.get(name, -1)


def names_from_option(text: str) -> ReportNames:
    """A column map as typed: `name=theirs,…`. Raises OptionError.

    >>> names_from_option("unit_id=Device, t=Sent at").columns
    {'unit_id': 'Device', 't': 'Sent at'}
    """
    columns: dict[str, str] = {}
    for pair in text.split(","):
        ours, equals, theirs = (part.strip() for part in pair.partition("="))
        name = _BY_SMALL.get(ours.lower())
        if not equals or not theirs or name is None or name in columns:
            raise OptionError(f"--columns {text}: name=theirs,… is expected, each name once: {', '.join(KNOWN)}")
        columns[name] = theirs
    return ReportNames(columns)


def names_from_toml(text: str, file: str) -> ReportNames:
    r"""A column map as a file: [columns] name = "theirs", and [events] boot = ["theirs", …]. Raises UnreadableError.

    >>> names_from_toml('[columns]\nt = "Sent at"\n[events]\nboot = "start-up"', "names.toml").events
    {'start_up': <Event.BOOT: 'boot'>}
    """
    keys = {"": ("columns", "events"), "columns": KNOWN, "events": EVENT_NAMES}
    sheet = parse_toml(text, file=file)
    sheet.only(keys)
    columns, words = sheet.table_of("columns"), sheet.table_of("events")
    columns.only(keys)
    words.only(keys)
    return names_in(columns, words)


def names_in(columns: TomlTable, words: TomlTable) -> ReportNames:
    """The column map that two tables hold: the server's columns, and its words for events."""
    theirs = {name: found for name in KNOWN if (found := columns.text_of(name)) is not None}
    return ReportNames(theirs, {word: Event(name) for name in EVENT_NAMES for word in _words(words, name)})


def _words(table: TomlTable, name: str) -> tuple[str, ...]:
    return tuple(plain_word(word) for word in table.texts_of(name))


def plain_word(text: str) -> str:
    """A word as words are compared: in small letters, with spaces and hyphens as underscores."""
    return text.strip().lower().replace(" ", "_").replace("-", "_")


def report_columns_of(header: str, names: ReportNames, *, place: Place) -> ReportColumns:
    """The columns that a header names; UnreadableError where `t` is missing or a column stands there twice.

    Order, capital letters and spaces around names do not matter; columns that are not known are passed over. A table
    with `received_at` but without `t` has the server's stamps alone, and these are taken for both.
    """
    theirs = {name: names.columns.get(name, name).lower() for name in KNOWN}
    delimiter = delimiter_of(header, tuple(theirs.values()))
    cells = [cell.lower() for cell in cells_of(header, delimiter)]
    for name, wanted in theirs.items():
        if cells.count(wanted) > 1:
            raise UnreadableError(place, f"each column once; {wanted} stands there {cells.count(wanted)} times")
        if name in names.columns and wanted not in cells:
            raise UnreadableError(place, f"a column {names.columns[name]!r} for {name}, as the column map says")
    places = {name: cells.index(wanted) for name, wanted in theirs.items() if wanted in cells}
    if not {"t", "received_at"} & set(places):
        raise UnreadableError(
            place, f"a header line with t, of the columns {', '.join(KNOWN)}; other names need a column map (--columns)"
        )
    return ReportColumns(delimiter, len(cells), places)
