"""A roster as CSV, or as the rows of a sheet: each row taken whole, or its bad cells named.

Delimiter comma, semicolon or tab; decimal point or comma; line breaks inside quoted cells. A row with one bad cell is
not taken at all, and a name (VIN, plate, fleet number, serial) that a row above has already is bad.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import chain, islice

from backprobe.errors import Place, UnreadableError, shortened
from backprobe.evidence.roster import Roster, RosterFault, RosterKind, RosterRow
from backprobe.formats.cells import BOM, cells_of, delimiter_of, says_something
from backprobe.formats.roster_cells import BadCellError, day_of, degrees_of, doubt_of, text_of, usual_digits, vin_of
from backprobe.formats.roster_columns import VEHICLE, RosterColumns, find_heading

MOST_ROWS = 50_000
MOST_LINES_A_ROW = 50
HEADING_WITHIN = 50  # rows; offices write a title above the table
UNIQUE = (*VEHICLE, "unit_serial", "unit_id")
NEARLY = 4  # more digits than this no spreadsheet is likely to have dropped


def read_roster(lines: Iterable[str], *, file: str, names: Mapping[str, str] | None = None) -> Roster:
    """The roster that lines of CSV hold; `names` maps our columns to the file's, `file` is shown in messages.

    Raises UnreadableError where there is no usable heading, no row, or more than 50,000.

    >>> roster = read_roster(["plate,vin", "LY 07,1M8GDM9AXKP042788", "LY 08,1M8GDM9"], file="trucks.csv")
    >>> [row.name for row in roster.rows], roster.bad[0].expected
    (['LY 07'], 'a VIN of 17 characters; these are 7')
    """
    raw = _raw(lines, file)
    top = list(islice(raw, HEADING_WITHIN))
    whole = list(_whole(top))
    at, columns = find_heading(
        [(line, _cells(text, delimiter_of(text))) for line, text in whole], names or {}, file=file
    )
    first, heading = whole[at]
    delimiter = delimiter_of(heading)
    beneath = chain((each for each in top if each[0] > first + heading.count("\n")), raw)
    rows = ((line, _cells(text, delimiter)) for line, text in _whole(beneath, delimiter))
    return _read(rows, columns, file=file, before=at)


def roster_of(
    rows: Iterable[tuple[int, Sequence[str]]], *, file: str, names: Mapping[str, str] | None = None
) -> Roster:
    """The roster of a table that is already in cells, each row with its number in the file."""
    all_rows = iter(rows)
    top = list(islice(all_rows, HEADING_WITHIN))
    at, columns = find_heading(top, names or {}, file=file)
    return _read(chain(top[at + 1 :], all_rows), columns, file=file, before=at)


def _read(rows: Iterable[tuple[int, Sequence[str]]], columns: RosterColumns, *, file: str, before: int) -> Roster:
    """The rows beneath a heading that `before` others stand above."""
    reader = _Reader(columns)
    for count, (line, found) in enumerate((each for each in rows if any(cell.strip() for cell in each[1])), 1):
        if count > MOST_ROWS:
            raise UnreadableError(Place(file, line), f"at most {MOST_ROWS:,} rows")
        reader.take(line, found)
    if not reader.rows and not reader.bad:
        raise UnreadableError(Place(file), "rows beneath the heading; there are none")
    roster = reader.roster(file)
    return replace(roster, notes=(f"{before} rows above the heading were passed over",)) if before else roster


def _raw(lines: Iterable[str], file: str) -> Iterator[tuple[int, str]]:
    """Every line with its number; what is no text raises UnreadableError."""
    for number, line in enumerate(lines, 1):
        if "\0" in line:
            raise UnreadableError(Place(file, number), "a text table; this looks like a binary file")
        yield number, line.rstrip("\r\n").removeprefix(BOM if number == 1 else "")


def _whole(rows: Iterable[tuple[int, str]], delimiter: str | None = None) -> Iterator[tuple[int, str]]:
    """The rows, those with a line break inside a quoted cell in one piece; a quote left open for long is let be."""
    rows = iter(rows)
    for line, text in rows:
        if not says_something(text):
            continue
        whole = text
        for _ in range(MOST_LINES_A_ROW):
            if not _open(whole, delimiter or delimiter_of(text)):
                break
            more = next(rows, None)
            if more is None:
                break
            whole = f"{whole}\n{more[1]}"
        yield line, whole


def _open(text: str, delimiter: str) -> bool:
    """Whether a quoted cell has not ended where the text does."""
    if '"' not in text:
        return False
    at_start, quoted = True, False
    for letter in text:
        if quoted:
            quoted = letter != '"'
        elif letter == '"' and at_start:
            quoted, at_start = True, True  # a doubled quote opens it again
            continue
        at_start = letter == delimiter or (at_start and (quoted or letter in ' "'))
    return quoted


def _cells(text: str, delimiter: str) -> list[str]:
    if "\n" not in text:
        return cells_of(text, delimiter)
    try:
        return next(csv.reader([line + "\n" for line in text.split("\n")], delimiter=delimiter, skipinitialspace=True))
    except (csv.Error, StopIteration):
        return text.replace("\n", " ").split(delimiter)


@dataclass(slots=True)
class _Reader:
    """What has been read so far."""

    columns: RosterColumns
    rows: list[RosterRow] = field(default_factory=list)
    bad: list[RosterFault] = field(default_factory=list)
    doubts: list[RosterFault] = field(default_factory=list)
    seen: dict[tuple[str, str], int] = field(default_factory=dict)

    def take(self, line: int, cells: Sequence[str]) -> None:
        """Take one row, or name its bad cells."""
        typed = {name: cells[at] if at < len(cells) else "" for name, at in self.columns.places.items()}
        faults: list[RosterFault] = []
        values: dict[str, str | float | None] = {}
        for name, text in typed.items():
            try:
                values[name] = _value(name, text)
            except BadCellError as bad:
                faults.append(self._fault(line, name, text=text, expected=bad.expected))
        faults += self._of_row(line, values, cells=cells)
        faults += self._repeated(line, values)
        self.bad += faults
        if not faults:
            self.rows.append(RosterRow.of(line, {_FIELD.get(name, name): value for name, value in values.items()}))

    def _of_row(self, line: int, values: Mapping[str, object], *, cells: Sequence[str]) -> Iterator[RosterFault]:
        """What is wrong with a row as a whole, or with two of its cells together."""
        if any(cell.strip() for cell in cells[self.columns.width :]):
            over = next(cell for cell in cells[self.columns.width :] if cell.strip())
            expected = f"at most {self.columns.width} cells as in the heading; a comma inside a cell needs quotes"
            yield RosterFault(line, f"cell {self.columns.width + 1}", shortened(over), expected)
        own = VEHICLE if self.columns.kind is RosterKind.VEHICLES else ("unit_serial",)
        named = [name for name in own if name in self.columns.places]
        if all(name in values and values[name] is None for name in named):
            yield self._fault(line, named[0], text="", expected=f"one of {', '.join(named)}, to know it by")
        if {"lat", "lon"} <= set(values):
            yield from self._of_place(line, lat=values["lat"], lon=values["lon"])

    def _of_place(self, line: int, *, lat: object, lon: object) -> Iterator[RosterFault]:
        if (lat is None) != (lon is None):
            missing = "lat" if lat is None else "lon"
            yield self._fault(line, missing, text="", expected="both degrees of a place, or neither")
        elif lat == 0 and lon == 0:
            yield self._fault(line, "lat", text="0", expected="a place; 0, 0 is what is written where none is known")

    def _repeated(self, line: int, values: Mapping[str, object]) -> Iterator[RosterFault]:
        """The names of this row that a row above has as well."""
        for name in UNIQUE:
            value = values.get(name)
            if not isinstance(value, str):
                continue
            first = self.seen.setdefault((name, same(value)), line)
            if first != line:
                expected = f"each {name.replace('_', ' ')} once; it stands in row {first} already"
                yield self._fault(line, name, text=value, expected=expected)

    def _fault(self, line: int, name: str, *, text: str, expected: str) -> RosterFault:
        return RosterFault(line, self.columns.headings.get(name, name), shortened(text), expected)

    def roster(self, file: str) -> Roster:
        """What was read, with what is to be asked of it."""
        usual = {name: usual_digits([v for row in self.rows if (v := getattr(row, name))]) for name in UNIQUE}
        for row in self.rows:
            for name in (each for each in UNIQUE if getattr(row, each)):
                asked = doubt_of(getattr(row, name), name) or _short(getattr(row, name), usual[name])
                if asked:
                    self.doubts.append(self._fault(row.line, name, text=getattr(row, name), expected=asked))
        return Roster(
            file=file,
            kind=self.columns.kind,
            rows=tuple(self.rows),
            bad=tuple(self.bad),
            doubts=tuple(self.doubts),
            columns=dict(self.columns.headings),
            passed_over=self.columns.passed_over,
        )


_FIELD = {"lat": "lat_deg", "lon": "lon_deg"}


def _value(name: str, text: str) -> str | float | None:
    if name == "vin":
        return vin_of(text)
    if name == "day":
        return day_of(text)
    if name in ("lat", "lon"):
        return degrees_of(text, most=90.0 if name == "lat" else 180.0)
    return text_of(text, name)


def _short(value: str, usual: int | None) -> str | None:
    """What is to be asked of a number that is a few digits shorter than the others of its column."""
    if usual is None or not (value.isascii() and value.isdigit()) or not usual - NEARLY <= len(value) < usual:
        return None
    return f"{len(value)} digits where most have {usual}: did a spreadsheet drop zeros in front?"


def same(name: str) -> str:
    """A name as names are compared: without capitals, spaces, hyphens and dots.

    >>> same("LY-07 a") == same("ly 07A")
    True
    """
    return "".join(c for c in name.casefold() if c not in " -.\u00a0")
