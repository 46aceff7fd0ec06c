"""Rosters as CSV: rows taken whole, bad ones named by row, column, text and what was expected."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.roster import RosterKind, RosterRow
from backprobe.formats.roster_csv import read_roster, roster_of, same

VINS = ("1M8GDM9AXKP042788", "1G4AH59H45G118341", "5GZCZ43D13S812715")
FULL = """\
Plate;Fleet No;VIN;Type;Depot;Latitude;Longitude;Serial;Day;Technician
LY 07;7;1M8GDM9AXKP042788;Box van;Linden Yard;51,0493;7,0172;00000417;31.03.2026;Ada Quill
LY 12;12;1G4AH59H45G118341;Tipper;Linden Yard;;;00000418;2026-04-01;
""".splitlines()


def read(*lines, **named):
    """The roster of a heading and rows."""
    return read_roster(lines, file="trucks.csv", **named)


def faults(found):
    """Row, column and text of each."""
    return [(fault.line, fault.column, fault.text) for fault in found]


def test_a_whole_roster():
    """Semicolons, decimal commas, usual headings, an empty place and an empty name."""
    roster = read(*FULL)
    assert roster.kind is RosterKind.VEHICLES
    assert (roster.bad, roster.doubts, roster.passed_over) == ((), (), ())
    assert roster.rows[0] == RosterRow(
        line=2,
        plate="LY 07",
        fleet_number="7",
        vin=VINS[0],
        type="Box van",
        yard="Linden Yard",
        lat_deg=51.0493,
        lon_deg=7.0172,
        unit_serial="00000417",
        day="2026-03-31",
        installer="Ada Quill",
    )
    assert (roster.rows[1].lat_deg, roster.rows[1].installer) == (None, None)


def test_a_roster_of_units():
    """Known by their serials."""
    roster = read("serial,unit type,unit_id", "0417,LN2,a417", ",LN2,a418")
    assert roster.kind is RosterKind.UNITS
    assert [row.name for row in roster.rows] == ["0417"]
    assert faults(roster.bad) == [(3, "serial", "")]


def test_a_row_with_one_bad_cell_is_not_taken():
    """Each bad cell is named, by the file's own heading."""
    roster = read("Reg,VIN,Day", f"LY 07,{VINS[0]},2026-03-31", "LY 08,1.2E+16,3/4/2026", f"LY 09,{VINS[1]},")
    assert [row.plate for row in roster.rows] == ["LY 07", "LY 09"]
    assert faults(roster.bad) == [(3, "VIN", "1.2E+16"), (3, "Day", "3/4/2026")]
    assert "large number" in roster.bad[0].expected


@pytest.mark.parametrize("other", ["ly07", "LY-07", "l y 0 7"])
def test_a_name_that_stands_there_twice(other):
    """However it is written the second time; the row above is named."""
    roster = read("plate", "LY 07", other)
    assert len(roster.rows) == 1
    assert roster.bad[0].expected == "each plate once; it stands in row 2 already"


def test_a_serial_that_stands_there_twice():
    """One unit cannot go into two vehicles."""
    roster = read("plate,serial", "LY 07,0417", "LY 08,0417", "LY 09,", "LY 10,")
    assert faults(roster.bad) == [(3, "serial", "0417")]
    assert len(roster.rows) == 3


def test_rows_that_nothing_tells_apart():
    """A vehicle needs a plate, a fleet number or a VIN; of a row without anything nothing is said."""
    roster = read("plate,vin,yard", ",,Linden Yard", ",,", f",{VINS[0]},")
    assert faults(roster.bad) == [(2, "vin", "")]
    assert len(roster.rows) == 1


def test_half_a_place_and_no_place():
    """One degree without the other; 0, 0, which stands for 'not known'."""
    roster = read("plate;lat;lon", "A1;51,0;", "A2;0;0,0", "A3;51;7")
    assert faults(roster.bad) == [(2, "lon", ""), (3, "lat", "0")]
    assert roster.rows[0].lat_deg == 51.0


def test_too_many_cells():
    """A comma inside a cell that is not in quotes moves the rest to the right."""
    roster = read("plate,yard", "A1,Linden Yard, north", "A2,Linden Yard,")
    assert faults(roster.bad) == [(2, "cell 3", "north")]
    assert len(roster.rows) == 1


def test_zeros_that_were_dropped_are_asked_about():
    """Five serials of eight digits, one of three, one of seven: the three are too few to be the same kind."""
    rows = [f"T{n},0000041{n}" for n in range(5)]
    roster = read("plate,serial", *rows, "T8,0000418", "T9,419")
    assert faults(roster.doubts) == [(7, "serial", "0000418")]
    assert "7 digits where most have 8" in roster.doubts[0].expected
    assert len(roster.rows) == 7


def test_lines_inside_quoted_cells():
    """A row over two lines keeps the number of its first, and the next row its own."""
    roster = read(
        "plate,type,yard", 'LY 07,"Box', 'van, ""tall""",Linden', "LY 08,Tipper,Linden", "LY 08,Tipper,Linden"
    )
    assert roster.rows[0].type == 'Box van, "tall"'
    assert [row.line for row in roster.rows] == [2, 4]
    assert faults(roster.bad) == [(5, "plate", "LY 08")]


def test_a_quote_in_the_middle_is_a_letter():
    """Five inches; and one left open at a cell's start swallows fifty lines at most."""
    assert [row.type for row in read("plate,type", 'A,5" pipe', "B,van").rows] == ['5" pipe', "van"]
    roster = read("plate,type", 'A,"open', *(f"B{n},van" for n in range(200)))
    assert len(roster.rows) + len({fault.line for fault in roster.bad}) >= 150


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ([], "a heading"),
        (["# nothing"], "a heading"),
        (["colour,day", "red,2026-03-31"], "a heading with one of"),
        (["plate"], "rows beneath the heading"),
        (["plate", "", ","], "rows beneath the heading"),
        (["plate", "A\0B"], "binary"),
    ],
)
def test_what_is_no_roster(lines, said):
    """Nothing, comments, another table, no rows."""
    with pytest.raises(UnreadableError) as refused:
        read(*lines)
    assert said in refused.value.message


def test_too_many_rows():
    """50,000 are taken, one more is refused."""
    with pytest.raises(UnreadableError, match="at most 50,000 rows"):
        read("plate", *(f"P{n}" for n in range(50_001)))


def test_a_column_map():
    """Under the file's own names, which are also those of the faults."""
    roster = read("Kennz.,FIN", "LY 07,x", names={"plate": "Kennz.", "vin": "FIN"})
    assert faults(roster.bad) == [(2, "FIN", "x")]
    assert roster.columns == {"plate": "Kennz.", "vin": "FIN"}


def test_rows_above_the_heading():
    """A title with commas and a day; the heading is the first row that can be one, and the note counts those above."""
    roster = read("Linden Yard, trucks to be fitted, spring", "as of;31.03.2026", "Plate;Day", "LY 07;31.03.2026")
    assert [(row.line, row.plate, row.day) for row in roster.rows] == [(4, "LY 07", "2026-03-31")]
    assert roster.notes == ("2 rows above the heading were passed over",)


def test_a_heading_over_two_lines():
    """As spreadsheets write a cell with a line break; rows beneath keep their numbers."""
    roster = read('"Fleet', 'No";VIN', "7;", "8;x")
    assert [(row.line, row.fleet_number) for row in roster.rows] == [(3, "7")]
    assert faults(roster.bad) == [(4, "VIN", "x")]
    assert roster.columns["fleet_number"] == "Fleet No"


def test_the_row_that_comes_nearest_to_a_heading_is_named():
    """Where none can be one: here the second, which has a column twice."""
    with pytest.raises(UnreadableError) as refused:
        read("Trucks", "plate,day,plate", "LY 07,,")
    assert refused.value.place.line == 2
    assert "each column once" in refused.value.message


def test_cells_that_come_from_a_sheet():
    """The same rules for a table that is already in cells."""
    rows = [(3, ["Plate", "Serial"]), (4, ["LY 07", "0417"]), (5, ["", ""]), (6, ["ly07", ""])]
    roster = roster_of(rows, file="trucks.xlsx")
    assert [row.line for row in roster.rows] == [4]
    assert faults(roster.bad) == [(6, "Plate", "ly07")]


cells = st.text(st.sampled_from('ab# ,;"\n'), max_size=8).filter(lambda cell: "###" not in cell)


@given(st.lists(st.tuples(cells, cells), min_size=1, max_size=6))
def test_quoting_is_read_as_the_csv_module_writes_it(rows):
    """Whatever is in a cell: quotes, delimiters, line breaks."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["plate", "type", "yard"])
    for number, (one, two) in enumerate(rows):
        writer.writerow([f"P{number}", one, two])
    roster = read(*out.getvalue().split("\n"))
    plain = [(" ".join(one.split()) or None, " ".join(two.split()) or None) for one, two in rows]
    assert [(row.type, row.yard) for row in roster.rows] == plain


def test_names_are_the_same_without_spaces_and_capitals():
    """As people write plates."""
    assert same("LY-07 A") == same("ly07a")
    assert same("LY 07") != same("LY 70")
