"""A few thousand lines of a recording into columns of figures.

The quick way splits all lines at once and turns whole columns into floats; it gives up where anything is out of the
ordinary. Then the lines are cut into smaller parts, and only the part that holds the oddity is read row by row.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from backprobe.errors import SHOWN_TEXT_MAX, Place, Skipped
from backprobe.evidence.recording import Quantity
from backprobe.formats.cells import cells_of
from backprobe.formats.figures import VOLT_UNITS, read_figure
from backprobe.formats.recording_layout import NOTHING, Column, Layout
from backprobe.formats.stamps import NoTimeError

PART = 8  # a block that fails is cut into so many parts
SMALL = 64  # a part of so few lines is read row by row


END = "\v"  # behind the last cell of a row while rows are joined; float() takes it for a space


class _NotQuickError(Exception):
    """These lines need the careful way. Never leaves this module."""


@dataclass(slots=True)
class Faults:
    """What was passed over: the first few places, and how many in all."""

    most: int = 20
    places: list[Skipped] = field(default_factory=list)
    count: int = 0

    def add(self, place: Place, expected: str) -> None:
        """Count one more; its place is kept while there are few."""
        self.count += 1
        if len(self.places) < self.most:
            text = None if place.text is None else place.text[:SHOWN_TEXT_MAX]
            self.places.append(Skipped(Place(place.file, place.line, text), expected))


@dataclass(slots=True)
class Block:
    """Rows read: for each its line number, its time, its key word, and a value of every column.

    A time may still be NaN where a cell says so. `values` has a list for each column of the layout, NaN where a cell
    held nothing. `keys` is None without a key column.
    """

    lines: Sequence[int]
    times: list[float]
    values: list[list[float]]
    keys: list[str] | None

    def __len__(self) -> int:
        return len(self.times)

    def only(self, kept: Sequence[int]) -> Block:
        """The rows at these indices."""
        return Block(
            [self.lines[i] for i in kept],
            [self.times[i] for i in kept],
            [[column[i] for i in kept] for column in self.values],
            None if self.keys is None else [self.keys[i] for i in kept],
        )


def read_block(lines: Sequence[str], *, first: int, layout: Layout, faults: Faults) -> Block:
    """The rows in `lines`, the first of which is line number `first` of the file; bad rows go to `faults`.

    Blank lines and lines that begin with # are passed over without being counted.
    """
    if not lines:
        return _joined((), layout)
    try:
        return _quick(lines, first=first, layout=layout)
    except _NotQuickError:
        if len(lines) <= SMALL:
            return _careful(lines, first=first, layout=layout, faults=faults)
    size = -(-len(lines) // PART)
    parts = [
        read_block(lines[start : start + size], first=first + start, layout=layout, faults=faults)
        for start in range(0, len(lines), size)
    ]
    return _joined(parts, layout)


def _joined(parts: Sequence[Block], layout: Layout) -> Block:
    whole = Block([], [], [[] for _ in layout.columns], None if layout.key_place is None else [])
    lines: list[int] = []
    for part in parts:
        lines.extend(part.lines)
        whole.times.extend(part.times)
        for column, more in zip(whole.values, part.values, strict=True):
            column.extend(more)
        if whole.keys is not None:
            whole.keys.extend(part.keys or ())
    whole.lines = lines
    return whole


@dataclass(frozen=True, slots=True)
class _Cells:
    """Cells column by column (empty where not needed); `plain` where none can hold 1_2 or digits of other scripts.

    Python's float() takes both, and both are the work of damage rather than of a recorder.
    """

    columns: list[Sequence[str]]
    plain: bool

    def floats(self, place: int, *, gaps: bool) -> list[float]:
        """A column as floats; with `gaps` NaN where a cell holds nothing."""
        cells = self.columns[place]
        try:
            values = list(map(float, cells))
        except ValueError:
            if not gaps:
                raise _NotQuickError from None
            values = list(map(_float_or_nothing, cells))
        if not self.plain and not _is_plain("".join(cells)):
            raise _NotQuickError
        return values


def _is_plain(text: str) -> bool:
    return text.isascii() and "_" not in text


def _float_or_nothing(cell: str) -> float:
    try:
        return float(cell)
    except ValueError:
        if cell.strip().lower() in NOTHING:
            return math.nan
        raise _NotQuickError from None


def _quick(lines: Sequence[str], *, first: int, layout: Layout) -> Block:
    cells = _cells(lines, layout)
    if layout.unit_place is not None and any(_shift(unit) != 0 for unit in set(cells.columns[layout.unit_place])):
        raise _NotQuickError
    values = [_scaled(cells.floats(column.place, gaps=True), column) for column in layout.columns]
    keys = None if layout.key_place is None else list(cells.columns[layout.key_place])
    return Block(range(first, first + len(lines)), _times(cells, layout), values, keys)


def _cells(lines: Sequence[str], layout: Layout) -> _Cells:
    """The cells of all lines, column by column; only where every line has the same number of them."""
    delimiter = layout.delimiter
    text = (END + delimiter).join(lines)
    if delimiter != "," and "," in text:
        text = text.replace(",", ".")
    if '"' in text:
        columns = _quoted(lines, delimiter)
    else:
        cells = text.split(delimiter)
        width = len(cells) // len(lines)
        columns = [cells[place::width] for place in range(width)]
        if len(cells) != width * len(lines) or "".join(columns[-1]).count(END) != len(lines) - 1:
            raise _NotQuickError
    beyond = columns[layout.width :]
    if len(columns) not in layout.widths or len(columns) < layout.needed or any(any(map(str.strip, c)) for c in beyond):
        raise _NotQuickError
    return _Cells(columns, _is_plain(text))


def _quoted(lines: Sequence[str], delimiter: str) -> list[Sequence[str]]:
    try:
        rows = list(csv.reader(lines, delimiter=delimiter, skipinitialspace=True))
    except csv.Error:
        raise _NotQuickError from None
    if len(rows) != len(lines) or len(set(map(len, rows))) != 1:
        raise _NotQuickError
    return [[cell.replace(",", ".") for cell in column] for column in zip(*rows, strict=True)]


def _scaled(values: list[float], column: Column) -> list[float]:
    times, by = column.times, column.by
    return values if times == by == 1.0 else [value * times / by for value in values]


def _times(cells: _Cells, layout: Layout) -> list[float]:
    stamps = layout.stamps
    try:
        if not stamps.figures:
            return list(map(stamps.seconds, cells.columns[layout.time_place]))
    except NoTimeError:
        raise _NotQuickError from None
    values = cells.floats(layout.time_place, gaps=False)
    zero, times, by = stamps.zero, stamps.times, stamps.by
    return values if zero == 0.0 and times == by == 1.0 else [(value - zero) * times / by for value in values]


def _careful(lines: Sequence[str], *, first: int, layout: Layout, faults: Faults) -> Block:
    parts = []
    for number, line in enumerate(lines, first):
        place = Place(layout.file, number, line.rstrip("\r\n"))
        plain = line.strip()
        if plain and not plain.startswith("#"):
            row = _row(place, layout, faults=faults)
            if row is not None:
                parts.append(row)
    return _joined(parts, layout)


def _row(place: Place, layout: Layout, *, faults: Faults) -> Block | None:
    cells = cells_of(place.text or "", layout.delimiter)
    expected = _torn(cells, layout, text=place.text or "")
    if expected is None:
        try:
            time = layout.stamps.seconds(cells[layout.time_place])
        except NoTimeError:
            expected = "a time as in the rows around it"
    if expected is not None:
        faults.add(place, expected)
        return None
    unit = "" if layout.unit_place is None else cells[layout.unit_place]
    values = [[_value(cells[column.place], column, unit=unit, place=place, faults=faults)] for column in layout.columns]
    keys = None if layout.key_place is None else [cells[layout.key_place]]
    return Block([place.line or 0], [time], values, keys)


def _torn(cells: list[str], layout: Layout, *, text: str) -> str | None:
    """What is expected of a row that is torn or damaged; None for a whole one."""
    if "\0" in text:
        return "a whole row; the zeros here are what a power cut leaves"
    if any(cells[layout.width :]):
        return f"at most {layout.width} cells as in the header"
    if len(cells) < layout.needed or (len(cells) == layout.needed and len(cells) not in layout.widths):
        return f"a whole row of {layout.width} cells; this one is torn"
    return None


def _shift(unit: str) -> int | None:
    """The power of ten that turns a voltage in this unit into V; None where it is no unit of direct voltage."""
    return VOLT_UNITS.get(unit.strip().lower()) if unit.strip() else 0


def _value(cell: str, column: Column, *, unit: str, place: Place, faults: Faults) -> float:
    """The value in a cell in V or rpm, in the `unit` of its row where it has none of its own.

    NaN where it holds nothing, or nothing that can be used.
    """
    if cell.lower() in NOTHING:
        return math.nan
    figure = read_figure(cell)
    unit = unit if figure is None else figure.unit or unit
    shift = _shift(unit) if column.quantity is Quantity.VOLTAGE else 0 if unit.lower() in ("", "rpm") else None
    if figure is None or shift is None:
        faults.add(place, f"a figure in {column.quantity} in column {column.name}, or nothing")
        return math.nan
    return figure.value(shift) if unit else figure.value() * column.times / column.by


def within_reason(
    values: list[float], column: Column, *, lines: Sequence[int], file: str, faults: Faults
) -> list[float]:
    """The values with NaN for those outside the column's `least`..`most`, each of them counted."""
    kept = []
    for line, value in zip(lines, values, strict=True):
        if not (column.least <= value <= column.most or value != value):
            faults.add(Place(file, line, f"{value:g}"), f"{column.name} within {column.least:g} to {column.most:g}")
            value = math.nan
        kept.append(value)
    return kept
