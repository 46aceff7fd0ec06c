"""A readings table: lines of CSV in, readings out.

Columns `wire,key,volts` and, where wanted, `capture,after_min,load_A,circuit,marks`, in any order; others are passed
over. Delimiter comma, semicolon or tab; decimal point or decimal comma.

* `Red,on,12.30` is a reading; a wire and key may be read again and again.
* `Red,,` declares a wire that is still to be read.
* `Red,on,` is a place still to be read; it is counted among the skipped lines, as it may be a torn one.
* `Red,accessory,na` says that this vehicle has no such key position.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable, WireFacts
from backprobe.formats.cells import cells_of, numbered
from backprobe.formats.figures import read_figure
from backprobe.formats.readings_columns import Columns, columns_of
from backprobe.formats.readings_figures import RefusedError, read_after_min, read_load_A, read_volts

MOST_ROWS = 10_000
MOST_NAME = 80
ABSENT = ("na", "n/a")
KEY_WORDS = ", ".join(Key)
CAPTURE_WORDS = ", ".join(Capture)


def read_readings(lines: Iterable[str], *, file: str, system_V: int) -> ReadingsTable:
    """The table that `lines` hold; `file` is the name shown in messages, `system_V` is 12 or 24.

    A line that cannot be taken is skipped and counted with its place and what was expected; if its wire and key can
    be read, the place is `unread`, so that it is asked for again. Two wire names that differ in capitals or spaces
    alone are a likely slip: the later row is skipped. Raises UnreadableError where there is no usable header, where
    rows stand but not one can be read, and above 10,000 rows.

    >>> table = read_readings(["wire,key,volts", "Red,on,12.30", "Blue,,"], file="readings.csv", system_V=12)
    >>> table.wires, table.readings[0].volts, table.readings[0].count_V
    (('Red', 'Blue'), 12.3, 0.01)
    """
    rows = numbered(lines, file=file)
    number, header = next(rows, (None, ""))
    if number is None:
        raise UnreadableError(Place(file), "a header line: wire,key,volts")
    reader = _Reader(file, system_V, columns_of(header, file=file, line=number))
    for count, (line, text) in enumerate(rows, 1):
        if count > MOST_ROWS:
            raise UnreadableError(Place(file, line), f"at most {MOST_ROWS:,} rows; is this a recording?")
        reader.take(line, text)
    return reader.table()


@dataclass(slots=True)
class _Reader:
    """What has been read so far."""

    file: str
    system_V: int
    columns: Columns
    names: dict[str, str] = field(default_factory=dict)  # without spaces and capitals -> as first written
    facts: dict[str, WireFacts] = field(default_factory=dict)
    readings: list[Reading] = field(default_factory=list)
    absent: list[tuple[Key, Place]] = field(default_factory=list)
    unread: dict[tuple[str, Key], None] = field(default_factory=dict)
    skipped: list[Skipped] = field(default_factory=list)
    usable_rows: int = 0

    def take(self, line: int, text: str) -> None:
        """Take one row, or note why it was skipped."""
        place = Place(self.file, line, text)
        cells = cells_of(text, self.columns.delimiter)
        try:
            self._refuse_torn(cells)
            wire = self._wire(cells)
            key = self._key(wire, cells)
        except RefusedError as refused:
            self.skipped.append(Skipped(place, refused.expected))
            return
        self._declare(wire, cells)
        if key is None:
            self.usable_rows += 1
            return
        try:
            self._take_value(cells, place, wire=wire, key=key)
            self.unread.pop((wire, key), None)  # read again further down
        except RefusedError as refused:
            self.unread[wire, key] = None
            self.skipped.append(Skipped(place, refused.expected))

    def _refuse_torn(self, cells: list[str]) -> None:
        if len(cells) < self.columns.least:
            raise RefusedError("at least wire, key and volts in a row; a wire still to be read is written: Red,,")

    def _refuse_long(self, cells: list[str]) -> None:
        if any(cells[self.columns.width :]):
            raise RefusedError(
                f"at most {self.columns.width} cells as in the header; a decimal comma needs quotes, or ; between cells"
            )

    def _wire(self, cells: list[str]) -> str:
        name = self.columns.cell(cells, "wire")
        if not name:
            raise RefusedError("a wire name")
        if len(name) > MOST_NAME or not name.isprintable():
            raise RefusedError(f"a wire name of at most {MOST_NAME} plain characters")
        first = self.names.get(_plain(name), name)
        if first != name:
            raise RefusedError(f'a wire name of its own; already written as "{first}"')
        return name

    def _key(self, wire: str, cells: list[str]) -> Key | None:
        """The row's key position; None where the row only declares its wire."""
        word, typed = self.columns.cell(cells, "key").lower(), self.columns.cell(cells, "volts")
        if not word and not typed and not any(cells[self.columns.width :]):
            return None
        if word in set(Key):
            return Key(word)
        if read_figure(typed) is not None:
            self._declare(wire, cells)  # a reading with a mistyped key: the wire is there; without a figure it is junk
        raise RefusedError(f"a key position: {KEY_WORDS}")

    def _declare(self, wire: str, cells: list[str]) -> None:
        self.names.setdefault(_plain(wire), wire)
        known = self.facts.setdefault(wire, WireFacts())
        if any(cells[self.columns.width :]):
            return  # cells have slipped to the right: what stands in these columns may belong elsewhere
        self.facts[wire] = WireFacts(
            circuits=_joined(known.circuits, self.columns.cell(cells, "circuit")),
            marks=_joined(known.marks, self.columns.cell(cells, "marks")),
        )

    def _take_value(self, cells: list[str], place: Place, *, wire: str, key: Key) -> None:
        self._refuse_long(cells)
        typed = self.columns.cell(cells, "volts")
        if typed.lower() in ABSENT:
            self.absent.append((key, place))
            self.usable_rows += 1
            return
        if not typed:
            self.usable_rows += 1  # a form not yet filled in is no bad input
        self.readings.append(self._reading(cells, place.line, wire=wire, key=key))
        self.usable_rows += 1

    def _reading(self, cells: list[str], line: int | None, *, wire: str, key: Key) -> Reading:
        capture = self.columns.cell(cells, "capture").lower() or Capture.DISPLAY
        if capture not in set(Capture):
            raise RefusedError(f"how the meter held the value: {CAPTURE_WORDS}")
        volts = read_volts(self.columns.cell(cells, "volts"), system_V=self.system_V)
        return Reading(
            wire=wire,
            key=key,
            volts=volts.value_V,
            typed=volts.typed,
            count_V=volts.count_V,
            capture=Capture(capture),
            after_min=read_after_min(self.columns.cell(cells, "after_min"), key),
            load_A=read_load_A(self.columns.cell(cells, "load_a")),
            line=line,
        )

    def table(self) -> ReadingsTable:
        """What was read; raises UnreadableError where rows stand but none could be read."""
        if self.skipped and not self.usable_rows:
            first = self.skipped[0]
            raise UnreadableError(first.place, f"{first.expected} (not one of {len(self.skipped)} rows can be read)")
        absent = self._absent_keys()
        return ReadingsTable(
            readings=tuple(self.readings),
            wires=tuple(self.facts),
            facts=dict(self.facts),
            absent_keys=absent,
            unread=tuple(self.unread),
            skipped=tuple(sorted(self.skipped, key=lambda skipped: skipped.place.line or 0)),
        )

    def _absent_keys(self) -> frozenset[Key]:
        """The positions said not to exist. Where something was read, the position does exist: its 'na' is skipped."""
        seen = {reading.key: reading.line for reading in reversed(self.readings)}
        for key, place in self.absent:
            if key in seen:
                self.skipped.append(
                    Skipped(place, f"a figure: this vehicle has {key}, line {seen[key]} was read there")
                )
        return frozenset(key for key, _ in self.absent if key not in seen)


def _plain(name: str) -> str:
    """The name without spaces and capitals."""
    return "".join(name.split()).casefold()


def _joined(known: tuple[str, ...], cell: str) -> tuple[str, ...]:
    """The known words and those in the cell, in order, none twice."""
    words = (word.strip() for word in cell.replace("|", ";").split(";"))
    return tuple(dict.fromkeys([*known, *(word for word in words if word)]))
