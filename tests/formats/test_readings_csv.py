"""A readings table in, readings out; what cannot be read is counted with its place."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import ReadingsTable, WireFacts
from backprobe.formats.readings_csv import MOST_ROWS, read_readings

SAMPLES = Path(__file__).parents[1] / "samples" / "readings"
HEADER = "wire,key,volts,capture,after_min,load_A,circuit,marks"


def table(*rows: str, header: str = HEADER, system_V: int = 12) -> ReadingsTable:
    return read_readings([header, *rows], file="readings.csv", system_V=system_V)


def read_or_refusal(lines: list[str]) -> ReadingsTable | UnreadableError:
    try:
        return read_readings(lines, file="f", system_V=12)
    except UnreadableError as refusal:
        return refusal


def sample(name: str) -> ReadingsTable:
    return read_readings((SAMPLES / name).read_text(encoding="utf-8").splitlines(), file=name, system_V=12)


def test_a_full_row():
    """Every column of a row arrives in the reading."""
    reading = table("Red 12,After,12.55,display,30,1.5,F14,twisted").readings[0]
    assert (reading.wire, reading.key, reading.volts, reading.typed) == ("Red 12", Key.AFTER, 12.55, "12.55")
    assert (reading.count_V, reading.capture, reading.after_min) == (0.01, Capture.DISPLAY, 30.0)
    assert (reading.load_A, reading.line) == (1.5, 2)


def test_plain_columns_are_enough():
    """Without the optional columns the capture is display and nothing else is claimed."""
    reading = table("Red,on,12.3", header="wire,key,volts").readings[0]
    assert (reading.capture, reading.after_min, reading.load_A) == (Capture.DISPLAY, None, None)


def test_after_without_minutes_means_ten():
    """`after` is 10 minutes after key-off."""
    assert table("Red,after,12.6").readings[0].after_min == 10.0


def test_header_alone_is_valid():
    """A table just begun is an empty table, not an error."""
    assert table() == ReadingsTable()


def test_declared_wire():
    """A wire without key and volts stands in `wires`, in order of appearance."""
    read = table("Blue,,", "Red,on,12.3", "Green,,")
    assert read.wires == ("Blue", "Red", "Green")
    assert [reading.wire for reading in read.readings] == ["Red"]
    assert read.skipped == ()


@pytest.mark.parametrize("word", ["na", "NA", "n/a", "N/A"])
def test_na_is_a_position_that_does_not_exist(word):
    """'na' makes the position absent on the vehicle and declares the wire."""
    read = table(f"Red,accessory,{word}")
    assert read.absent_keys == {Key.ACCESSORY}
    assert read.wires == ("Red",)


def test_na_against_a_reading_is_skipped():
    """Where one wire was read the position exists: the 'na' of another wire cannot mean the vehicle."""
    read = table("Red,crank,na", "Blue,crank,9.9,min")
    assert read.absent_keys == frozenset()
    assert [(skipped.place.line, skipped.expected) for skipped in read.skipped] == [
        (2, "a figure: this vehicle has crank, line 3 was read there")
    ]


def test_repeats_are_kept():
    """The same wire and key may be read again: both figures stay."""
    assert [r.volts for r in table("Red,on,12.3", "Red,on,12.4").readings] == [12.3, 12.4]


def test_facts_are_gathered_over_the_rows_of_a_wire():
    """Circuit and marks may stand on any row, split by ; or |, in order, none twice."""
    read = table('Red,on,12.3,,,,"F14; trailer",twisted', "Red,off,0,,,,F14|body builder,yellow|twisted", "Blue,,")
    assert read.facts["Red"] == WireFacts(circuits=("F14", "trailer", "body builder"), marks=("twisted", "yellow"))
    assert read.facts["Blue"] == WireFacts()


def test_a_mark_on_a_refused_row_is_not_lost():
    """That a wire is yellow counts even where its figure cannot be taken."""
    assert table("Red,on,120,,,,,yellow", "Blue,on,12").facts["Red"].marks == ("yellow",)


def test_refused_figure_is_asked_for_again():
    """120 V: skipped with its place, unread, and the wire is declared."""
    read = table("Red,on,120", "Blue,on,12.3")
    assert read.wires == ("Red", "Blue")
    assert read.unread == (("Red", Key.ON),)
    assert str(read.skipped[0]) == "readings.csv, line 2: Red,on,120 (-0.5 to 18 V in a 12 V system)"


def test_read_again_further_down():
    """Once the place was read again it is no longer unread; the bad line stays counted."""
    read = table("Red,on,120", "Red,on,12.0")
    assert read.unread == ()
    assert len(read.skipped) == 1


def test_blank_volts_with_a_key():
    """A place not filled in is unread and reported, yet a form of nothing else is no bad input."""
    read = table("Red,on,", "Red,crank,")
    assert read.unread == (("Red", Key.ON), ("Red", Key.CRANK))
    assert [skipped.place.line for skipped in read.skipped] == [2, 3]


@pytest.mark.parametrize(
    ("row", "says", "unread"),
    [
        ("Red,onn,12.3", "a key position: off, accessory, on, crank, running, after, isolated, charging", False),
        ("Red,,12.3", "a key position", False),
        ("Red,on,12.3,peak", "display, min, max, logged", True),
        ("Red,after,12.3,,-5", "minutes since key-off", True),
        ("Red,on,12.3,,,-1", "the load in amperes", True),
        (",on,12.3", "a wire name", False),
        ("Red,on", "at least wire, key and volts", False),
        ("Re", "at least wire, key and volts", False),
        ("R\x07d,on,12.3", "plain characters", False),
        (f"{'R' * 81},on,12.3", "at most 80", False),
        ("Red,on,12,30,,,,,x", "at most 8 cells", True),
        ("green 1,on,12.3", 'already written as "Green 1"', False),
        ("Green1,on,12.3", 'already written as "Green 1"', False),
    ],
)
def test_skipped_rows(row, says, unread):
    """Each bad row is skipped with its place, and the next row is read."""
    read = table("Green 1,on,12.1", row, "Blue,on,12.2")
    assert [reading.wire for reading in read.readings] == ["Green 1", "Blue"]
    assert [(skipped.place.line, skipped.place.text) for skipped in read.skipped] == [(3, row)]
    assert says in read.skipped[0].expected
    assert bool(read.unread) is unread


def test_mistyped_key_still_declares_its_wire():
    """A figure with an unknown key word shows that the wire is there; junk without a figure declares nothing."""
    assert table("Red,onn,12.3", "some junk,more,junk", "Blue,on,12").wires == ("Red", "Blue")


def test_unquoted_decimal_comma_in_a_comma_table():
    """12,30 between commas is never read as 12 V."""
    read = table("Red,on,12,30", "Blue,on,12.3", header="wire,key,volts")
    assert [reading.wire for reading in read.readings] == ["Blue"]
    assert "decimal comma" in read.skipped[0].expected


@pytest.mark.parametrize(
    "lines",
    [
        ["wire;key;volts", "Red;on;12,30"],
        ["wire\tkey\tvolts", "Red\ton\t12,30"],
        ["wire,key,volts", 'Red,on,"12,30"'],
        ["\ufeffwire,key,volts\r\n", "\r\n", "Red,on,12.30\r\n"],
        ["# from the yard", "", "volts,KEY, Wire ", "12.30 V,ON,Red"],
        ["wire,connector,key,cavity,volts,note", 'Red,X12,on,7,12.30,"under the dash, left"'],
    ],
)
def test_ways_of_writing(lines):
    """Delimiters, decimal commas, byte order marks, notes and foreign columns give the same reading."""
    read = read_readings(lines, file="f", system_V=12)
    assert [(r.wire, r.key, r.volts, r.count_V) for r in read.readings] == [("Red", Key.ON, 12.3, 0.01)]
    assert read.skipped == ()


@pytest.mark.parametrize(
    ("lines", "line", "says"),
    [
        ([], None, "a header line"),
        (["", "# nothing"], None, "a header line"),
        (["Red,on,12.3"], 1, "missing: wire, key, volts"),
        (["wire,key,volts,key"], 1, "key stands there 2 times"),
        (["wire,key,volts", "Red,on,120"], 2, "not one of 1 rows can be read"),
        (["wire,key,volts", "rubbish", "more rubbish"], 2, "not one of 2 rows can be read"),
        (["wire,key,volts", "Red,on,1\0"], 2, "binary"),
        (["wire,key,volts", *["Red,on,12"] * (MOST_ROWS + 1)], MOST_ROWS + 2, "is this a recording"),
    ],
)
def test_unreadable(lines, line, says):
    """Where nothing sensible can be read the whole table is refused, with place and expectation."""
    with pytest.raises(UnreadableError) as refusal:
        read_readings(lines, file="f", system_V=12)
    assert refusal.value.place.file == "f"
    assert refusal.value.place.line == line
    assert says in refusal.value.expected


def test_ten_thousand_rows_are_read():
    """The limit itself is allowed."""
    assert len(table(*["Red,on,12"] * MOST_ROWS).readings) == 10_000


def test_an_endless_table_is_refused_early():
    """Lines come one by one: an endless stream is refused after 10,000 rows, not gathered."""

    def endless():
        yield "wire,key,volts"
        while True:
            yield "Red,on,12"

    with pytest.raises(UnreadableError, match="at most 10,000 rows"):
        read_readings(endless(), file="f", system_V=12)


def test_sample_of_many_defects():
    """A table as a cold hand writes it: seven good readings, every defect counted on its line."""
    read = sample("many-defects.csv")
    assert len(read.readings) == 7
    assert [skipped.place.line for skipped in read.skipped] == [6, 7, 9, 11, 13]
    assert read.wires == ("Red 12", "Orange", "Violet", "Grey")
    assert read.absent_keys == {Key.ACCESSORY}


CELLS = st.sampled_from(
    [
        "Red",
        "red",
        "Blue 1",
        "",
        "on",
        "crank",
        "after",
        "12.3",
        "-3",
        "120",
        "na",
        "min",
        "350mV",
        '"',
        '"1,2"',
        "nan",
        "#",
    ]
)


@given(st.lists(st.lists(CELLS, max_size=9).map(",".join), max_size=12), st.sampled_from([12, 24]))
def test_every_row_is_accounted_for(rows, system_V):
    """A row is a reading, a declaration, an 'na', or skipped; never lost and never two things at once."""
    try:
        read = read_readings([HEADER, *rows], file="f", system_V=system_V)
    except UnreadableError:
        return
    lines = [r.line for r in read.readings] + [s.place.line for s in read.skipped]
    assert len(lines) == len(set(lines))
    unaccounted = [row for n, row in enumerate(rows, 2) if n not in lines and row.strip() and not row.startswith("#")]
    for row in unaccounted:
        cells = row.replace('"', "").split(",")
        assert cells[1:3] == ["", ""] or "na" in cells
    assert all(r.wire in read.wires for r in read.readings)
    assert all(-0.5 <= r.volts <= 1.5 * system_V for r in read.readings)


@given(st.lists(st.text()))
def test_any_text(lines):
    """Arbitrary text gives a table or the project's own refusal, nothing else."""
    read = read_or_refusal(lines)
    assert isinstance(read, ReadingsTable) or read.place.file == "f"


@given(st.lists(st.text(alphabet=st.characters(codec="utf-8"))))
def test_any_text_below_a_header(rows):
    """The same with a header above it, so that rows are reached."""
    read = read_or_refusal([HEADER, *rows])
    assert set(read.facts) == set(read.wires) if isinstance(read, ReadingsTable) else read.place.file == "f"
