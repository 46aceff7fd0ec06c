"""Where a recording's rows begin and what stands in each of its columns, told from its first lines."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.recording import Quantity
from backprobe.formats.cells import BOM, DELIMITERS, cells_of
from backprobe.formats.figures import read_figure
from backprobe.formats.recording_names import (
    MODULE_VOLTAGE,
    Heading,
    Kind,
    is_unit,
    plain_name,
    read_heading,
    with_unit,
)
from backprobe.formats.stamps import Stamps, stamps_of

HEAD_LINES = 160  # how many lines are looked at to understand a file
HEADER_WITHIN = 100  # a header stands within so many lines
PREAMBLE_ROWS = 20  # a header may follow so soon upon a line that looks like one
# what stands in a cell that holds no value
NOTHING = frozenset(
    (
        "",
        "-",
        "--",
        "---",
        "ol",
        "0l",
        "o.l",
        ".ol",
        "nan",
        "n/a",
        "na",
        "null",
        "none",
        "#n/a",
        "?",
        "over",
        "overload",
    )
)
FEW_FIGURES = 0.1  # a column with fewer figures than this holds words
COUNTING_ROWS = 10
MOST_V = 80.0  # beyond this a figure is no voltage of a vehicle: common practice, no source
MOST_RPM = 20_000.0
_CLOCKS = (Kind.TIME, Kind.DATE, Kind.RUN_TIME, Kind.DURATION)  # the better one first


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A channel: its place in the row, and `times`/`by` that turn its figures into V or rpm.

    Values outside `least`..`most` are lost contact or another unit; `digits` are the decimals written, in V or rpm.
    """

    name: str
    quantity: Quantity
    place: int
    times: float
    by: float
    least: float
    most: float
    digits: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How a recording is laid out.

    `skip` lines stand before the first row; `width` columns are named; `widths` are the numbers of cells that rows
    have; `needed` is how many cells a row must have. `run_time` says that the clock counts only while the engine
    runs. `unit_place` is the column that holds the unit of the one channel's figures row by row, as meters that change
    their range write it. `notes` are the columns passed over that look as if they had been meant.
    """

    file: str
    delimiter: str
    skip: int
    width: int
    widths: frozenset[int]
    needed: int
    time_place: int
    stamps: Stamps
    run_time: bool
    columns: tuple[Column, ...]
    key_place: int | None
    unit_place: int | None = None
    notes: tuple[Skipped, ...] = ()


@dataclass(frozen=True, slots=True)
class _Header:
    """A line that may be the header, with the rows below it."""

    place: Place
    delimiter: str
    headings: tuple[Heading, ...]
    rows: tuple[list[str], ...]
    skip: int

    def cells(self, place: int) -> list[str]:
        """The cells below a heading that hold something."""
        return [row[place] for row in self.rows if place < len(row) and row[place].lower() not in NOTHING]


def layout_of(head: Sequence[str], *, file: str) -> Layout:
    """The layout of a recording that begins with the lines `head`; raises UnreadableError where there is none.

    >>> layout = layout_of(["Time;Red (mV);Index", "0,00;12600;1", "0,01;12580;2"], file="f")
    >>> [(column.name, column.place, column.digits) for column in layout.columns], layout.skip
    ([('Red', 1, 3)], 1)
    """
    fault: UnreadableError | None = None
    for number in range(1, min(len(head), HEADER_WITHIN) + 1):
        for header in _headers(head, number, file=file):
            try:
                return _layout(header, file=file)
            except UnreadableError as refused:
                fault = fault or refused
    if fault is not None:
        raise fault
    if not any(line.strip(BOM + " \r\n\t") for line in head):
        raise UnreadableError(Place(file), "a header line such as time_s,battery,red, and rows below it")
    first = next(n for n, line in enumerate(head, 1) if line.strip(BOM + " \r\n\t"))
    raise UnreadableError(Place(file, first, head[first - 1]), "a header line such as time_s,battery,red")


def _headers(head: Sequence[str], number: int, *, file: str) -> list[_Header]:
    """What line `number` would say as a header, once for each delimiter that makes sense."""
    line = head[number - 1].strip(BOM + "\r\n").removeprefix("#").strip(" ")
    found = []
    for delimiter in (*DELIMITERS, "|"):
        cells = cells_of(line, delimiter)
        if len([cell for cell in cells if cell]) < 2:
            continue
        headings = tuple(read_heading(cell) for cell in cells)
        below = [(n, cells_of(row.rstrip("\r\n"), delimiter)) for n, row in enumerate(head[number:], number + 1)]
        rows = [(n, row) for n, row in below if any(row) and not row[0].startswith("#")]
        skip = number
        if rows and any(is_unit(cell) for cell in rows[0][1]) and all(is_unit(cell) or not cell for cell in rows[0][1]):
            skip, units = rows.pop(0)
            units += [""] * (len(headings) - len(units))
            headings = tuple(with_unit(heading, unit) for heading, unit in zip(headings, units, strict=False))
        if any(heading.kind in _CLOCKS for heading in headings) and not _another(cells, rows[:PREAMBLE_ROWS]):
            place = Place(file, number, head[number - 1].rstrip("\r\n"))
            found.append(_Header(place, delimiter, headings, tuple(row for _, row in rows), skip))
    return found


def _another(cells: list[str], rows: Sequence[tuple[int, list[str]]]) -> bool:
    """Whether one of the next rows is the header instead: lines above it such as 'Time,14:46' only look like one."""

    def names(row: list[str]) -> bool:
        words = [cell for cell in row if cell and read_figure(cell) is None]
        return len(words) > 1 and any(read_heading(word).kind in _CLOCKS for word in words)

    return any(row != cells and names(row) for _, row in rows)


def _layout(header: _Header, *, file: str) -> Layout:
    if not header.rows:
        raise UnreadableError(header.place, "rows below the header")
    time_place, stamps = _clock(header)
    channels, notes = _channels(header, besides=time_place)
    columns = tuple(_column(header, place) for place in channels)
    if not any(column.quantity is Quantity.VOLTAGE for column in columns):
        hint = f"; {notes[0].expected}" if notes else ""
        raise UnreadableError(header.place, f"a column with voltages beside the time{hint}")
    _refuse_doubles(header, columns)
    keys = [place for place, heading in enumerate(header.headings) if heading.kind is Kind.KEY]
    unit_place = _unit_place(header, channels)
    return Layout(
        file=file,
        delimiter=header.delimiter,
        skip=header.skip,
        width=len(header.headings),
        widths=_widths(header),
        needed=1 + max(time_place, *channels, *keys[:1], unit_place or 0),
        time_place=time_place,
        stamps=stamps,
        run_time=header.headings[time_place].kind is Kind.RUN_TIME,
        columns=columns,
        key_place=keys[0] if keys else None,
        unit_place=unit_place,
        notes=notes,
    )


def _widths(header: _Header) -> frozenset[int]:
    """How many cells the rows have: as many as the header, one more for a trailing delimiter, or what is usual."""
    counts = Counter(len(row) for row in header.rows)
    usual = (width for width, count in counts.items() if count >= 0.05 * len(header.rows) and count > 1)
    return frozenset((len(header.headings), len(header.headings) + 1, *usual))


def _clock(header: _Header) -> tuple[int, Stamps]:
    """The best column that can be read as a time."""
    for kind in _CLOCKS:
        for place, heading in enumerate(header.headings):
            stamps = stamps_of(header.cells(place), heading.per_unit) if heading.kind is kind else None
            if stamps is not None:
                return place, stamps
    raise UnreadableError(
        header.place, "below the time a count of seconds, or a date and time such as 2024-05-01 08:30:00"
    )


def _channels(header: _Header, *, besides: int) -> tuple[list[int], tuple[Skipped, ...]]:
    """The places of the channels, and a note on each column whose figures look as if they had been meant as one."""
    engine_data = any(plain_name(heading.name) == MODULE_VOLTAGE for heading in header.headings)
    units = any(heading.kind is Kind.UNIT for heading in header.headings)
    places, notes = [], []
    for place, heading in enumerate(header.headings):
        sure = heading.kind in (Kind.VOLTAGE, Kind.ENGINE_SPEED)
        if place == besides or not (sure or (heading.kind is Kind.UNSURE and not engine_data)):
            continue
        cells = header.cells(place)
        values = [figure.value() for cell in cells if (figure := read_figure(cell))]
        words = cells and len(values) < FEW_FIGURES * len(cells)
        if not sure and (_counts(values) or (words and not values)):
            continue
        if not sure and (words or (not units and values and abs(median(values)) > MOST_V)):
            hint = "mostly words" if words else f"{values[0]:g} and the like: is (mV) missing in its name?"
            says = f"voltages in V; {heading.name} holds {hint}"
            notes.append(Skipped(Place(header.place.file, header.place.line, heading.name), says))
            continue
        places.append(place)
    return places, tuple(notes)


def _unit_place(header: _Header, channels: Sequence[int]) -> int | None:
    """The column of units, where there is one channel that has no unit of its own."""
    places = [place for place, heading in enumerate(header.headings) if heading.kind is Kind.UNIT]
    single = len(channels) == 1 and header.headings[channels[0]].per_unit is None
    return places[0] if places and single else None


def _counts(values: list[float]) -> bool:
    """Whether these are the running numbers of the rows, and so many that no ramp of volts would do."""
    return len(values) >= COUNTING_ROWS and all(b - a == 1 for a, b in pairwise(values))


def _column(header: _Header, place: int) -> Column:
    heading = header.headings[place]
    times, by = heading.per_unit or (1.0, 1.0)
    figures = [figure for cell in header.cells(place) if (figure := read_figure(cell))]
    decimals = max((figure.decimals - figure.power for figure in figures), default=0)
    speed = heading.kind is Kind.ENGINE_SPEED
    return Column(
        name=heading.name or f"channel {place + 1}",
        quantity=Quantity.ENGINE_SPEED if speed else Quantity.VOLTAGE,
        place=place,
        times=times,
        by=by,
        least=0.0 if speed else -MOST_V,
        most=MOST_RPM if speed else MOST_V,
        digits=min(9, max(0, decimals + (3 if by == 1000.0 else 0))),
    )


def _refuse_doubles(header: _Header, columns: Sequence[Column]) -> None:
    """Two channels of one name, or two key columns: which of them counts cannot be known."""
    names = ["".join(column.name.split()).casefold() for column in columns]
    names += ["key" for heading in header.headings if heading.kind is Kind.KEY]
    for name in names:
        if names.count(name) > 1:
            raise UnreadableError(header.place, f"each channel once; {name} stands there {names.count(name)} times")
