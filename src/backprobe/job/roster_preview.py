"""What a roster would change, before it changes anything.

Each row is held against what is known: a vehicle is the same by its VIN, else by its plate, else by its fleet number; a
unit by its serial. An empty cell changes nothing. A row that would give a vehicle the plate of another, or plan one
unit for two vehicles, is bad.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.roster import VALUES, Roster, RosterFault, RosterKind, RosterRow
from backprobe.formats.roster_csv import same
from backprobe.stages.walkround.vin_number import CHECK_AT, check_digit, is_north_american

BY = {RosterKind.VEHICLES: ("vin", "plate", "fleet_number"), RosterKind.UNITS: ("unit_serial",)}
CELL_OF = {"lat_deg": "lat", "lon_deg": "lon"}


@dataclass(frozen=True, slots=True)
class RosterChange:
    """A row, what is known of the same vehicle or unit (None where it is new), and both together.

    `changes` are the values that differ: name, before (None for none), after.
    """

    row: RosterRow
    known: RosterRow | None
    after: RosterRow
    changes: tuple[tuple[str, str | float | None, str | float], ...]

    def as_json(self) -> dict[str, object]:
        """The change as plain JSON values."""
        changes = [{"what": what, "before": before, "after": after} for what, before, after in self.changes]
        return {"row": self.row.line, "name": self.after.name, "changes": changes}


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterPreview:
    """What a roster would do: rows that are new, that change something, that change nothing, and those that are bad.

    `doubts` may be right; they are to be looked at before the roster is taken.
    """

    roster: Roster
    new: tuple[RosterChange, ...]
    changed: tuple[RosterChange, ...]
    unchanged: tuple[RosterChange, ...]
    bad: tuple[RosterFault, ...]
    doubts: tuple[RosterFault, ...]

    @property
    def writes(self) -> tuple[RosterChange, ...]:
        """What would be written, in the order of the file."""
        return tuple(sorted((*self.new, *self.changed), key=lambda change: change.row.line))

    @property
    def bad_rows(self) -> int:
        """How many rows have a bad cell."""
        return len({fault.line for fault in self.bad})

    def as_json(self) -> dict[str, object]:
        """The preview as plain JSON values."""
        return {
            "ok": True,
            "file": self.roster.file,
            "kind": str(self.roster.kind),
            "columns": dict(self.roster.columns),
            "passed_over": list(self.roster.passed_over),
            "new": [change.as_json() for change in self.new],
            "changed": [change.as_json() for change in self.changed],
            "unchanged": len(self.unchanged),
            "bad_rows": self.bad_rows,
            "bad": [fault.as_json() for fault in self.bad],
            "doubts": [fault.as_json() for fault in self.doubts],
            "notes": list(self.roster.notes),
        }


def preview_roster(roster: Roster, known: Iterable[RosterRow] = ()) -> RosterPreview:
    """Hold a roster against the rows that are known.

    >>> roster = Roster(file="t.csv", kind=RosterKind.VEHICLES, rows=(RosterRow(line=2, plate="LY 07"),), columns={})
    >>> [change.after.name for change in preview_roster(roster).new]
    ['LY 07']
    """
    there = _Known(known, roster)
    found = [_change(row, there.match(row)) for row in roster.rows]
    clashes = [fault for change in found for fault in there.clashes(change)]
    clashes += _planned_twice(found, there)
    refused = {fault.line for fault in clashes}
    good = [change for change in found if change.row.line not in refused]
    return RosterPreview(
        roster=roster,
        new=tuple(change for change in good if change.known is None),
        changed=tuple(change for change in good if change.known is not None and change.changes),
        unchanged=tuple(change for change in good if change.known is not None and not change.changes),
        bad=tuple(sorted((*roster.bad, *clashes), key=lambda fault: fault.line)),
        doubts=tuple(sorted((*roster.doubts, *_vin_doubts(roster)), key=lambda fault: fault.line)),
    )


class _Known:
    """What is known, found by any of its names."""

    def __init__(self, rows: Iterable[RosterRow], roster: Roster) -> None:
        self.roster = roster
        self.names = BY[roster.kind]
        self.rows = [row for row in rows if any(getattr(row, name) for name in self.names)]
        self.by: dict[str, dict[str, RosterRow]] = {name: {} for name in self.names}
        for row in self.rows:
            for name in self.names:
                if value := getattr(row, name):
                    self.by[name].setdefault(same(value), row)

    def match(self, row: RosterRow) -> RosterRow | None:
        """The known row that is the same vehicle or unit, by the first of the names that finds one."""
        found = (self.by[name].get(same(value)) for name in self.names if (value := getattr(row, name)))
        return next((one for one in found if one is not None), None)

    def clashes(self, change: RosterChange) -> Iterator[RosterFault]:
        """Names of a row that are those of another known one, and a VIN that contradicts the one that is known."""
        row = change.row
        for name in self.names:
            value = getattr(row, name)
            other = self.by[name].get(same(value)) if value else None
            if other is not None and other is not change.known:
                yield self.fault(row, name, expected=f"a {_word(name)} of its own; it is that of {other.name}")
        if change.known is not None and change.known.vin and row.vin and same(row.vin) != same(change.known.vin):
            expected = f"the VIN {change.known.vin}, which is known of {change.known.name}; or another plate and number"
            yield self.fault(row, "vin", expected=expected)

    def fault(self, row: RosterRow, name: str, *, expected: str) -> RosterFault:
        """A fault at one cell of a row."""
        cell = CELL_OF.get(name, name)
        return RosterFault(row.line, self.roster.columns.get(cell, cell), str(getattr(row, name) or ""), expected)


def _change(row: RosterRow, known: RosterRow | None) -> RosterChange:
    """What a row makes of what is known; spaces and capitals alone change no name."""
    before = {} if known is None else known.values()
    changes = tuple(
        (name, before.get(name), value)
        for name, value in row.values().items()
        if not _is_same(name, before=before.get(name), after=value)
    )
    after = RosterRow.of(row.line, {**before, **{name: value for name, _, value in changes}})
    return RosterChange(row, known, after, changes)


def _is_same(name: str, *, before: str | float | None, after: str | float) -> bool:
    if name in ("vin", "plate", "unit_serial") and isinstance(before, str) and isinstance(after, str):
        return same(before) == same(after)
    return before == after


def _planned_twice(found: Sequence[RosterChange], there: _Known) -> Iterator[RosterFault]:
    """Units that are planned for one vehicle here and stay planned for another that is known."""
    if there.roster.kind is not RosterKind.VEHICLES:
        return
    changed = {id_of(change.known) for change in found if change.known is not None}
    held = {same(row.unit_serial): row for row in there.rows if row.unit_serial and id_of(row) not in changed}
    held |= {same(c.after.unit_serial): c.after for c in found if c.after.unit_serial and not c.row.unit_serial}
    for change in found:
        serial = change.row.unit_serial
        other = held.get(same(serial)) if serial else None
        if other is not None:
            yield there.fault(change.row, "unit_serial", expected=f"a unit of its own; it is planned for {other.name}")


def id_of(row: RosterRow) -> tuple[str | float | None, ...]:
    """Everything that a known row says, to tell it from others."""
    return tuple(getattr(row, name) for name in VALUES)


def _vin_doubts(roster: Roster) -> Iterator[RosterFault]:
    """VINs of North America whose check digit is not what the other characters ask for."""
    for row in roster.rows:
        if row.vin and is_north_american(row.vin) and row.vin[CHECK_AT] != check_digit(row.vin):
            asked = f"its check digit (position 9) would be {check_digit(row.vin)}: is every character right?"
            yield RosterFault(row.line, roster.columns.get("vin", "vin"), row.vin, asked)


def _word(name: str) -> str:
    return "VIN" if name == "vin" else name.replace("_", " ")
