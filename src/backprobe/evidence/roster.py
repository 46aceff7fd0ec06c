"""A roster: the vehicles that are to be fitted, or the units to fit into them, as an office lists them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from enum import StrEnum


class RosterKind(StrEnum):
    """What a row of the list is about."""

    VEHICLES = "vehicles"
    UNITS = "units"


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterRow:
    """One vehicle with what is planned for it, or one unit; what the list does not say is None.

    `day` is written 2026-03-31; `line` is the first line of the row in its file.
    """

    line: int
    plate: str | None = None
    fleet_number: str | None = None
    vin: str | None = None
    type: str | None = None
    yard: str | None = None
    lat_deg: float | None = None
    lon_deg: float | None = None
    unit_serial: str | None = None
    unit_type: str | None = None
    unit_id: str | None = None
    day: str | None = None
    installer: str | None = None

    @property
    def name(self) -> str:
        """What people call it: plate, fleet number, VIN, else the unit's serial."""
        return self.plate or self.fleet_number or self.vin or self.unit_serial or f"line {self.line}"

    def values(self) -> dict[str, str | float]:
        """Everything that is said of it, by name; without the line."""
        found = {name: getattr(self, name) for name in VALUES}
        return {name: value for name, value in found.items() if value is not None}

    @classmethod
    def of(cls, line: int, values: Mapping[str, str | float | None]) -> RosterRow:
        """A row of values by name.

        >>> RosterRow.of(2, {"plate": "LY 07", "lat_deg": 51.0}).lat_deg
        51.0
        """
        text = {name: value if isinstance(value, str) else None for name, value in values.items()}
        number = {name: value if isinstance(value, float) else None for name, value in values.items()}
        return cls(
            line=line,
            plate=text.get("plate"),
            fleet_number=text.get("fleet_number"),
            vin=text.get("vin"),
            type=text.get("type"),
            yard=text.get("yard"),
            lat_deg=number.get("lat_deg"),
            lon_deg=number.get("lon_deg"),
            unit_serial=text.get("unit_serial"),
            unit_type=text.get("unit_type"),
            unit_id=text.get("unit_id"),
            day=text.get("day"),
            installer=text.get("installer"),
        )


VALUES = tuple(field.name for field in fields(RosterRow) if field.name != "line")


@dataclass(frozen=True, slots=True)
class RosterFault:
    """One cell that cannot be taken as it is, or should not be without a second look.

    `column` is its heading in the file, `text` what stands there, `expected` what should; for a doubt, what is asked.
    """

    line: int
    column: str
    text: str
    expected: str

    def as_json(self) -> dict[str, object]:
        """The fault as plain JSON values."""
        return {"row": self.line, "column": self.column, "text": self.text, "expected": self.expected}

    def __str__(self) -> str:
        return f'row {self.line}, {self.column}: "{self.text}" ({self.expected})'


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """What a file holds. A row with one bad cell is not among `rows`; `doubts` are on rows that are.

    `columns` maps our names to the file's own headings, `passed_over` lists headings that mean nothing here.
    """

    file: str
    kind: RosterKind
    rows: tuple[RosterRow, ...]
    bad: tuple[RosterFault, ...] = ()
    doubts: tuple[RosterFault, ...] = ()
    columns: Mapping[str, str]
    passed_over: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
