"""Rosters taken whole or not at all."""

from __future__ import annotations

import openpyxl
import pytest

from backprobe.cases.roster import KnownRoster, preview_of, roster_in, take_roster
from backprobe.errors import InputError, UnreadableError
from backprobe.evidence.roster import RosterKind


class Kept:
    """A store in memory that writes all or nothing, and may break while it writes or be changed before."""

    def __init__(self) -> None:
        self.rows = {}
        self.writes = 0
        self.breaks = False
        self.meanwhile = None

    def known_roster(self, kind):
        """All of a kind, marked by how often something was written."""
        found = KnownRoster(tuple(row for (of, _), row in self.rows.items() if of is kind), str(self.writes))
        if self.meanwhile:
            self.meanwhile()
        return found

    def take_roster(self, kind, changes, *, mark):
        """Into a copy first."""
        if mark != str(self.writes):
            return False
        rows = dict(self.rows)
        for change in changes:
            if self.breaks and len(rows) > len(self.rows):
                raise OSError("the disk is full")
            rows[kind, change.after.name] = change.after
        self.rows, self.writes = rows, self.writes + 1
        return True


@pytest.fixture
def store():
    """An empty one."""
    return Kept()


def roster(tmp_path, *lines):
    """A roster as a file of CSV."""
    path = tmp_path / "trucks.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return roster_in(path)


def test_a_good_roster_is_taken(tmp_path, store):
    """Every row; the same again changes nothing; a changed one changes its row alone."""
    first = roster(tmp_path, "plate,yard", "LY 07,Linden", "LY 08,Linden")
    assert len(take_roster(first, store).new) == 2
    assert len(take_roster(first, store).unchanged) == 2
    again = take_roster(roster(tmp_path, "plate,yard", "LY 07,Ash", "LY 08,Linden"), store)
    assert [change.after.name for change in again.changed] == ["LY 07"]
    assert {row.name: row.yard for row in store.rows.values()} == {"LY 07": "Ash", "LY 08": "Linden"}


def test_one_bad_cell_and_nothing_is_taken(tmp_path, store):
    """Of a hundred rows; which cell it is, is said."""
    listed = roster(tmp_path, "plate,day", *(f"T{n},2026-03-31" for n in range(99)), "T99,soon")
    assert len(preview_of(listed, store).new) == 99
    with pytest.raises(InputError, match='1 row cannot be taken, so nothing was: row 101, day: "soon"'):
        take_roster(listed, store)
    assert store.rows == {}


def test_a_doubt_waits_for_somebody(tmp_path, store):
    """A serial a zero short of the others: taken once somebody says that it is right."""
    listed = roster(tmp_path, "plate,serial", *(f"T{n},0000041{n}" for n in range(5)), "T8,418")
    assert len(preview_of(listed, store).doubts) == 0
    listed = roster(tmp_path, "plate,serial", *(f"T{n},0000041{n}" for n in range(5)), "T8,0000418")
    with pytest.raises(InputError, match="1 cell to be looked at first: row 7, serial"):
        take_roster(listed, store)
    assert store.rows == {}
    assert len(take_roster(listed, store, doubts_are_right=True).new) == 6


def test_a_store_that_breaks_keeps_what_it_had(tmp_path, store):
    """In the middle of writing."""
    take_roster(roster(tmp_path, "plate", "LY 07"), store)
    store.breaks = True
    with pytest.raises(OSError, match="the disk is full"):
        take_roster(roster(tmp_path, "plate", "LY 08", "LY 09"), store)
    assert [row.name for row in store.rows.values()] == ["LY 07"]


def test_what_was_changed_meanwhile_is_not_written_over(tmp_path, store):
    """Another roster is taken between the look and the writing."""
    other = roster(tmp_path, "plate", "LY 01")

    def meanwhile():
        store.meanwhile = None
        take_roster(other, store)

    listed = roster(tmp_path, "plate", "LY 07")
    store.meanwhile = meanwhile
    with pytest.raises(InputError, match="changed by somebody else meanwhile"):
        take_roster(listed, store)
    assert [row.name for row in store.rows.values()] == ["LY 01"]


def test_units_beside_vehicles(tmp_path, store):
    """A list of units changes no vehicle."""
    take_roster(roster(tmp_path, "plate,serial", "LY 07,0417"), store)
    assert len(take_roster(roster(tmp_path, "serial,unit_type", "0417,LN2"), store).new) == 1
    assert {kind for kind, _ in store.rows} == {RosterKind.VEHICLES, RosterKind.UNITS}


def test_a_workbook_is_known_by_its_content(tmp_path):
    """Whatever it is called."""
    path = tmp_path / "trucks.csv"
    book = openpyxl.Workbook()
    book.active.append(["plate"])
    book.active.append(["LY 07"])
    book.save(path)
    assert [row.name for row in roster_in(path).rows] == ["LY 07"]


@pytest.mark.parametrize(
    "content", [b"\xff\xd8\xff\xe0" + bytes(99), b"", b"\xd0\xcf\x11\xe0" + bytes(99), b"%PDF-1.7"]
)
def test_what_is_no_roster(tmp_path, content):
    """A photo, nothing, an old workbook, a PDF; a folder, and no file."""
    path = tmp_path / "trucks.csv"
    path.write_bytes(content)
    for given in (path, tmp_path, tmp_path / "none.csv"):
        with pytest.raises(UnreadableError):
            roster_in(given)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_encodings(tmp_path, encoding):
    """As spreadsheets write them."""
    path = tmp_path / "trucks.csv"
    path.write_bytes("plate;yard\r\nLY 07;Große Straße\r\n".encode(encoding))
    assert roster_in(path).rows[0].yard == "Große Straße"
