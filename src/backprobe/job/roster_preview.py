"""What a roster would change, before it changes anything.

Each row is held against what is known: a vehicle is the same by its VIN, else by its plate, else by its fleet number; a
unit by its serial. An empty cell changes nothing. A row that would give a vehicle the plate of another, or plan one
unit for two vehicles, is bad.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from dataclasses import dataclass

from backprobe.evidence.roster import Roster, RosterFault, RosterKind, RosterRow
from backprobe.formats.roster_csv import same
from backprobe.stages.walkround.vin_number import CHECK_AT, check_digit, is_north_american

BY = {RosterKind.VEHICLES: ("vin", "plate", "fleet_number"), RosterKind.UNITS: ("unit_serial",)}
UNITS_OWN = ("unit_serial", "unit_id")


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
    matches = [there.match(row) for row in roster.rows]
    found = [_change(row, None if at is None else there.rows[at]) for row, at in zip(roster.rows, matches, strict=True)]
    twice = list(_taken_twice(found, matches, there=there))
    again = {fault.line for fault in twice}
    once = [change for change in found if change.row.line not in again]
    clashes = [*twice, *_shared(once, frozenset(matches), there=there)]
    clashes += [fault for change in once for fault in _other_vin(change, there)]
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
        self.by: dict[str, dict[str, int]] = {name: {} for name in self.names}
        for at, row in enumerate(self.rows):
            for name in self.names:
                if value := getattr(row, name):
                    self.by[name].setdefault(same(value), at)

    def match(self, row: RosterRow) -> int | None:
        """Which known row is the same vehicle or unit, by the first of the names that finds one."""
        found = (self.by[name].get(same(value)) for name in self.names if (value := getattr(row, name)))
        return next((at for at in found if at is not None), None)

    def fault(self, row: RosterRow, name: str, *, expected: str) -> RosterFault:
        """A fault at one cell of a row."""
        return RosterFault(row.line, self.roster.columns.get(name, name), str(getattr(row, name) or ""), expected)


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


def _taken_twice(
    found: Sequence[RosterChange], matches: Sequence[int | None], *, there: _Known
) -> Iterator[RosterFault]:
    """Rows that are about the same known vehicle or unit as a row above, though by another of its names."""
    first: dict[int, RosterChange] = {}
    for change, at in zip(found, matches, strict=True):
        if at is None or first.setdefault(at, change) is change:
            continue
        name = next(name for name in there.names if getattr(change.row, name))
        expected = f"another one; this is {there.rows[at].name}, as in row {first[at].row.line}"
        yield there.fault(change.row, name, expected=expected)


def _shared(found: Sequence[RosterChange], matched: Set[int | None], *, there: _Known) -> Iterator[RosterFault]:
    """Names and units that would be those of two once everything was taken, at each row that says them."""
    stay = [(row, None) for at, row in enumerate(there.rows) if at not in matched]
    last: list[tuple[RosterRow, RosterChange | None]] = [*stay, *((change.after, change) for change in found)]
    for name in (*there.names, *(each for each in UNITS_OWN if each not in there.names)):
        holders: dict[str, list[tuple[RosterRow, RosterChange | None]]] = {}
        for row, change in last:
            if value := getattr(row, name):
                holders.setdefault(same(value), []).append((row, change))
        for sharing in (each for each in holders.values() if len(each) > 1):
            yield from _at_each(sharing, name, there=there)


def _at_each(
    sharing: Sequence[tuple[RosterRow, RosterChange | None]], name: str, *, there: _Known
) -> Iterator[RosterFault]:
    """The fault at each row of the list that says a name which others have too."""
    planned = name in UNITS_OWN and there.roster.kind is RosterKind.VEHICLES
    verb = "is planned for" if planned else "is that of"
    for row, change in sharing:
        if change is not None and getattr(change.row, name):
            other = next(each for each, _ in sharing if each is not row)
            expected = f"a {_word(name)} of its own; it {verb} {other.name}"
            yield there.fault(change.row, name, expected=expected)


def _other_vin(change: RosterChange, there: _Known) -> Iterator[RosterFault]:
    """A VIN that contradicts the one that is known of the same plate or fleet number."""
    row, known = change.row, change.known
    if known is not None and known.vin and row.vin and same(row.vin) != same(known.vin):
        expected = f"the VIN {known.vin}, which is known of {known.name}; or another plate and number"
        yield there.fault(row, "vin", expected=expected)


def _vin_doubts(roster: Roster) -> Iterator[RosterFault]:
    """VINs of North America whose check digit is not what the other characters ask for."""
    for row in roster.rows:
        if row.vin and is_north_american(row.vin) and row.vin[CHECK_AT] != check_digit(row.vin):
            asked = f"its check digit (position 9) would be {check_digit(row.vin)}: is every character right?"
            yield RosterFault(row.line, roster.columns.get("vin", "vin"), row.vin, asked)


def _word(name: str) -> str:
    return {"vin": "VIN", "unit_serial": "unit"}.get(name, name.replace("_", " "))
