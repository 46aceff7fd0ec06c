"""A table of reports as a server exports it: one row a report, columns by name, any of them but the time absent.

`unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event`; delimiter comma, semicolon or
tab; decimal point, or decimal comma where the delimiter is another. Other names are read with a column map.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from operator import itemgetter

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.report import Event, Fix, Report, ReportNames, ReportsTable
from backprobe.formats.cells import cells_of, numbered
from backprobe.formats.instants import EXPECTED, read_instant
from backprobe.formats.report_columns import KNOWN, ReportColumns, plain_word, report_columns_of

MOST_ROWS = 5_000_000
SKIPPED_KEPT = 20
NO_FIX_DEG = 1e-6  # nearer to 0, 0 than this is what units send that have no position
NOTHING = frozenset({"", "null", "none", "na", "n/a", "nan", "-"})
ON_WORDS = frozenset({"1", "on", "true", "yes", "y", "1.0"})
OFF_WORDS = frozenset({"0", "off", "false", "no", "n", "0.0"})
EVENTS: dict[str, Event | None] = {str(event): event for event in Event} | dict.fromkeys(NOTHING)
# the widest figures that are taken for possible, by column
RANGES = {
    "lat": (-90.0, 90.0),
    "lon": (-180.0, 180.0),
    "accuracy_m": (0.0, 1e7),
    "speed_kmh": (0.0, 2e3),
    "sats": (0.0, 300.0),
    "hdop": (0.0, 1e3),
    "supply_V": (-100.0, 1e3),
}


def read_reports(
    lines: Iterable[str], *, file: str, names: ReportNames | None = None, may_be_empty: bool = False
) -> ReportsTable:
    """The reports that `lines` hold; `file` is the name shown in messages, `names` what the server calls things.

    A row without a readable time is skipped and counted; any other cell that cannot be read is left out of its
    report and counted. Raises UnreadableError where there is no usable header, no row unless it `may_be_empty`, or none
    that can be read.

    >>> rows = ["unit_id,t,ignition,event", "L1,2026-03-31T08:05:00Z,1,ignition_on", "L1,soon,0,"]
    >>> table = read_reports(rows, file="reports.csv")
    >>> table.reports[0].ignition_event, table.skipped_rows
    (True, 1)
    """
    rows = numbered(lines, file=file)
    number, header = next(rows, (None, ""))
    if number is None:
        raise UnreadableError(Place(file), f"a header line: {','.join(KNOWN)}")
    names = names or ReportNames()
    columns = report_columns_of(header, names, place=Place(file, number, header))
    reader = _Reader(file, columns, {**EVENTS, **names.events})
    for count, (line, text) in enumerate(rows, 1):
        if count > MOST_ROWS:
            raise UnreadableError(Place(file, line), f"at most {MOST_ROWS:,} rows")
        reader.take(line, text)
    return reader.table(may_be_empty=may_be_empty)


@dataclass(slots=True)
class _Reader:
    """What has been read so far."""

    file: str
    columns: ReportColumns
    events: dict[str, Event | None]
    reports: list[Report] = field(default_factory=list)
    skipped: list[Skipped] = field(default_factory=list)
    skipped_rows: int = 0
    bad_cells: int = 0
    zoneless: bool = False
    pick: Callable[[list[str]], tuple[str, ...]] = field(init=False)
    ids: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.pick = itemgetter(*(self.columns.place(name) for name in KNOWN))

    def take(self, line: int, text: str) -> None:
        """Take one row, or note why it was skipped."""
        plain = '"' not in text and " " not in text  # most rows: nothing to take off
        cells = text.split(self.columns.delimiter) if plain else cells_of(text, self.columns.delimiter)
        width = self.columns.width
        if len(cells) != width:
            if any(cells[width:]):
                self._skip(
                    line, text, expected=f"at most {width} cells as in the header; a decimal comma needs quotes, or ;"
                )
                return
            cells = [*cells[:width], *[""] * (width - len(cells))]
        cells.append("")  # stands for columns that are not there
        unit, t, received, lat, lon, accuracy, speed, sats, hdop, supply, ignition, event = self.pick(cells)
        arrived = self._received_s(received)
        own = read_instant(t) if t else None
        if own is None and not t and self.columns.place("t") < 0:
            own, t = (None if arrived is None else (arrived, True)), received
        if own is None:
            self._skip(line, text, expected=EXPECTED)
            return
        self.zoneless = self.zoneless or not own[1]
        fix = self._fix(lat, lon, accuracy=accuracy, hdop=hdop, sats=sats) if lat and lon else None
        self.reports.append(
            Report(
                self.ids.setdefault(unit, unit),  # one text for all rows of a unit
                own[0],
                t,
                arrived,
                fix,
                self._figure(speed, "speed_kmh") if speed else None,
                self._figure(supply, "supply_V") if supply else None,
                self._flag(ignition) if ignition else None,
                self.events.get(plain_word(event)) if event else None,
            )
        )

    def _received_s(self, text: str) -> float | None:
        if text.lower() in NOTHING:
            return None
        instant = read_instant(text)
        if instant is None:
            self.bad_cells += 1
            return None
        self.zoneless = self.zoneless or not instant[1]
        return instant[0]

    def _fix(self, lat: str, lon: str, *, accuracy: str, hdop: str, sats: str) -> Fix | None:
        north, east = self._figure(lat, "lat"), self._figure(lon, "lon")
        if north is None or east is None or (abs(north) < NO_FIX_DEG and abs(east) < NO_FIX_DEG):
            return None
        used = self._figure(sats, "sats") if sats else None
        return Fix(
            north,
            east,
            self._figure(accuracy, "accuracy_m") if accuracy else None,
            self._figure(hdop, "hdop") if hdop else None,
            None if used is None else int(used),
        )

    def _figure(self, text: str, column: str) -> float | None:
        least, most = RANGES[column]
        try:
            value = float(text)
        except ValueError:
            value = _comma_figure(text)
        if least <= value <= most:  # not-a-number compares False
            return value
        if text.lower() not in NOTHING:
            self.bad_cells += 1
        return None

    def _flag(self, text: str) -> bool | None:
        word = text.lower()
        if word in ON_WORDS:
            return True
        if word not in OFF_WORDS and word not in NOTHING:
            self.bad_cells += 1
        return False if word in OFF_WORDS else None

    def _skip(self, line: int, text: str, *, expected: str) -> None:
        self.skipped_rows += 1
        if len(self.skipped) < SKIPPED_KEPT:
            self.skipped.append(Skipped(Place(self.file, line, text), expected))

    def table(self, *, may_be_empty: bool) -> ReportsTable:
        """What was read; raises UnreadableError where that is nothing, unless there was nothing to read and it may."""
        if not self.reports and self.skipped:
            first = self.skipped[0]
            raise UnreadableError(first.place, f"{first.expected} (not one of {self.skipped_rows} rows can be read)")
        if not self.reports and not may_be_empty:
            raise UnreadableError(Place(self.file), "reports beneath the header; there are none")
        return ReportsTable(
            file=self.file,
            reports=tuple(self.reports),
            columns=frozenset(self.columns.places),
            zoneless=self.zoneless,
            skipped=tuple(self.skipped),
            skipped_rows=self.skipped_rows,
            bad_cells=self.bad_cells,
            units=Counter(report.unit_id for report in self.reports),
        )


def _comma_figure(text: str) -> float:
    """A figure with a decimal comma; not-a-number for anything else."""
    whole, comma, part = text.partition(",")
    try:
        return float(f"{whole}.{part}") if comma else float("nan")
    except ValueError:
        return float("nan")
