"""Rosters out of workbooks, and workbooks that are refused."""

from __future__ import annotations

import zipfile
from datetime import date, datetime

import openpyxl
import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.roster import RosterRow
from backprobe.files.roster_xlsx import is_workbook, read_workbook

VIN = "1M8GDM9AXKP042788"


def book(path, *rows, formats=()):
    """A workbook with rows in its first sheet; `formats` gives cells number formats."""
    made = openpyxl.Workbook()
    sheet = made.active
    for row in rows:
        sheet.append(row)
    for cell, number_format in formats:
        sheet[cell].number_format = number_format
    made.save(path)
    return path


@pytest.fixture
def trucks(tmp_path):
    """Where a workbook goes."""
    return tmp_path / "trucks.xlsx"


def test_a_roster(trucks):
    """Texts, numbers, a day, an empty cell; blank rows keep the numbers of those beneath."""
    rows = [
        ["Plate", "VIN", "Latitude", "Longitude", "Serial", "Day"],
        ["LY 07", VIN, 51.0493, 7, "00000417", datetime(2026, 3, 31)],
        [],
        ["LY 12", None, None, None, 418, date(2026, 4, 1)],
    ]
    roster = read_workbook(book(trucks, *rows))
    assert is_workbook(trucks)
    assert roster.bad == ()
    assert roster.rows == (
        RosterRow(
            line=2, plate="LY 07", vin=VIN, lat_deg=51.0493, lon_deg=7.0, unit_serial="00000417", day="2026-03-31"
        ),
        RosterRow(line=4, plate="LY 12", unit_serial="418", day="2026-04-01"),
    )
    assert roster.notes == ("read from the sheet 'Sheet'",)


def test_a_title_above_the_table(trucks):
    """Two rows of it, one of them blank."""
    roster = read_workbook(book(trucks, ["Trucks of Linden Yard"], [], ["plate"], ["LY 07"]))
    assert [(row.line, row.plate) for row in roster.rows] == [(4, "LY 07")]
    assert roster.notes[0] == "1 rows above the heading were passed over"


def test_zeros_that_a_cell_shows_are_kept(trucks):
    """The number 417 in the format 00000000 is read as it is seen."""
    path = book(trucks, ["plate", "serial"], ["A", 417], ["B", 418], formats=[("B2", "00000000")])
    assert [row.unit_serial for row in read_workbook(path).rows] == ["00000417", "418"]


def test_numbers_too_long_for_a_spreadsheet(trucks):
    """Nineteen digits, of which the cell has kept fifteen: asked about, and said."""
    roster = read_workbook(book(trucks, ["plate", "serial"], ["A", 1234567890123450000]))
    assert roster.rows[0].unit_serial == "1234567890123450000"
    assert "zeros behind the first 15" in roster.doubts[0].expected
    assert roster.notes[-1].startswith("1 numbers have more than 15 digits")


def test_a_day_with_a_time_is_no_day(trucks):
    """14:30 is not cut off silently."""
    roster = read_workbook(book(trucks, ["plate", "day"], ["A", datetime(2026, 3, 31, 14, 30)]))
    assert (roster.rows, roster.bad[0].text) == ((), "2026-03-31 14:30:00")


def test_formulas_are_not_worked_out(trucks):
    """One that no spreadsheet worked out is bad, and shown."""
    roster = read_workbook(book(trucks, ["plate", "fleet number"], ["A", "=1+1"]))
    assert roster.rows == ()
    assert (roster.bad[0].text, roster.bad[0].line) == ("=1+1", 2)
    assert "1 cells hold formulas" in roster.notes[1]


def test_what_a_formula_came_to_is_taken(trucks):
    """As the spreadsheet stored it beside the formula: here 2 for =1+1."""
    path = book(trucks, ["plate", "fleet number"], ["A", "=1+1"])
    with zipfile.ZipFile(path) as old:
        parts = {part: old.read(part) for part in old.namelist()}
    sheet = "xl/worksheets/sheet1.xml"
    assert b"<v></v>" in parts[sheet] or b"<v/>" in parts[sheet] or b"<v />" in parts[sheet]
    for empty in (b"<v></v>", b"<v/>", b"<v />"):
        parts[sheet] = parts[sheet].replace(empty, b"<v>2</v>")
    with zipfile.ZipFile(path, "w") as new:
        for part, content in parts.items():
            new.writestr(part, content)
    assert read_workbook(path).rows == (RosterRow(line=2, plate="A", fleet_number="2"),)


def test_the_first_sheet_that_holds_something(trucks):
    """An empty one and a hidden one are passed over; the note says which was read."""
    made = openpyxl.Workbook()
    made.active.title = "Empty"
    hidden, last = made.create_sheet("Old"), made.create_sheet("Trucks")
    hidden.append(["plate"])
    hidden.append(["OLD"])
    hidden.sheet_state = "hidden"
    last.append(["plate"])
    last.append(["LY 07"])
    made.save(trucks)
    roster = read_workbook(trucks)
    assert [row.plate for row in roster.rows] == ["LY 07"]
    assert roster.notes == ("read from the sheet 'Trucks'",)


def refusal(path):
    """What is said of a file."""
    with pytest.raises(UnreadableError) as refused:
        read_workbook(path)
    return refused.value.message


def test_workbooks_without_a_roster(trucks):
    """All empty; another table; a heading alone."""
    assert "all are empty" in refusal(book(trucks))
    assert "a heading" in refusal(book(trucks, ["colour"], ["red"]))
    assert "rows beneath the heading" in refusal(book(trucks, ["plate"]))


def test_a_file_that_unpacks_to_too_much(trucks):
    """200 kB of zeros that would be 200 MB."""
    book(trucks, ["plate"], ["A"])
    with zipfile.ZipFile(trucks, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/worksheets/sheet9.xml", b" " * 101_000_000)
    assert trucks.stat().st_size < 300_000
    assert "unpacks to at most 100 MB" in refusal(trucks)


def test_xml_that_grows_while_it_is_read(trucks):
    """A document type with entities, also in UTF-16."""
    bomb = '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b "bbbbbbbbbb"><!ENTITY c "&b;&b;&b;">]><a>&c;</a>'
    for content in (bomb.encode(), bomb.encode("utf-16")):
        book(trucks, ["plate"], ["A"])
        with zipfile.ZipFile(trucks, "a") as archive:
            archive.writestr("xl/more.xml", content)
        assert "declares nothing of its own" in refusal(trucks)


def test_a_file_that_is_too_large(trucks, monkeypatch):
    """Looked at before anything is unpacked."""
    book(trucks, ["plate"], ["A"])
    monkeypatch.setattr("backprobe.files.roster_xlsx.MOST_FILE_BYTES", 1000)
    assert "this file is larger" in refusal(trucks)


def test_files_of_another_kind(tmp_path):
    """Another ZIP, a photo, a text, a folder, nothing at all."""
    other = tmp_path / "other.xlsx"
    with zipfile.ZipFile(other, "w") as archive:
        archive.writestr("readme.txt", "hello")
    assert "another kind of ZIP file" in refusal(other)
    for content in (b"\xff\xd8\xff\xe0" + bytes(99), b"plate\nA\n", b""):
        other.write_bytes(content)
        assert "a workbook" in refusal(other)
    assert refusal(tmp_path)
    assert "none of this name" in refusal(tmp_path / "none.xlsx")


def test_damaged_at_any_place(trucks):
    """Cut off or with a byte changed: the same rows, or a refusal in words, never anything else."""
    whole = book(trucks, ["plate"], ["LY 07"]).read_bytes()
    refused = 0
    for at in range(0, len(whole), 397):
        for content in (whole[:at], whole[:at] + bytes([whole[at] ^ 0x55]) + whole[at + 1 :]):
            trucks.write_bytes(content)
            try:
                assert len(read_workbook(trucks).rows) <= 1
            except UnreadableError:
                refused += 1
    assert refused > len(whole) // 397  # every cut, and some of the changes
