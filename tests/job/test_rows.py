"""A readings table as bodies of entries."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import JobError, Place, Skipped
from backprobe.evidence.keys import Key
from backprobe.evidence.reading import ReadingsTable, WireFacts
from backprobe.formats.figures import read_figure
from backprobe.formats.readings_csv import read_readings
from backprobe.job.canonical import canonical
from backprobe.job.kinds import misfit
from backprobe.job.rows import MOST_NAME, MOST_TEXT, Row, figure, plain, rows_of

CSV = [
    "wire,key,volts,capture,after_min,load_A,circuit,marks",
    'Red,after,"12,60",,30,1.5,F14,twisted;orange',
    "Blue,accessory,na,,,,,",
    "Blue,on,twelve,,,,,",
    "Grey,,",
]


def test_the_rows_of_a_table():
    """Each row of a small table, with what identifies it, the figure as typed and its line."""
    rows = rows_of(read_readings(CSV, file="readings.csv", system_V=12), "readings.csv")
    file = {"file": "readings.csv"}
    assert rows == (
        Row("wire_declared", file | {"wire": "Red", "order": 0}),
        Row("wire_declared", file | {"wire": "Blue", "order": 1}),
        Row("wire_declared", file | {"wire": "Grey", "order": 2}),
        Row("circuit", file | {"wire": "Red", "circuit": "F14", "marks": [], "order": 0}),
        Row("circuit", file | {"wire": "Red", "circuit": None, "marks": ["twisted"], "order": 1}),
        Row("circuit", file | {"wire": "Red", "circuit": None, "marks": ["orange"], "order": 2}),
        Row(
            "reading",
            file
            | {"wire": "Red", "key": "after", "volts": "12,60", "capture": "display"}
            | {"after_min": "30", "load_A": "1.5", "line": 2},
        ),
        Row("absent_key", file | {"key": "accessory"}),
        Row("unread", file | {"wire": "Blue", "key": "on", "order": 0}),
        Row(
            "skipped_line",
            file
            | {"text": "Blue,on,twelve,,,,,", "line": 4}
            | {"expected": "a figure in volts such as 12.30, or na where the vehicle lacks this position"},
        ),
    )


def test_every_row_can_be_an_entry():
    """Each body fits its kind and has canonical bytes."""
    for row in rows_of(read_readings(CSV, file="readings.csv", system_V=12), "readings.csv"):
        assert misfit(row.kind, row.body) is None
        assert canonical(row.body)


@given(st.floats(0, 100_000), st.integers(0, 5))
def test_amounts_read_back_as_typed(value, decimals):
    """What was typed with up to 15 digits comes back as the same value."""
    typed = float(f"{value:.{decimals}f}")
    text = figure(typed)
    assert text is not None
    again = read_figure(text)
    assert again is not None
    assert again.value() == typed


def test_broken_characters_are_written_out():
    """Half a character from a broken file name stays legible and can be stored."""
    assert plain("cr\udce4nk.csv") == "cr\\udce4nk.csv"
    table = ReadingsTable(wires=("Red",), facts={"Red": WireFacts(circuits=("F\udce414",))})
    assert [row.body.get("circuit") for row in rows_of(table, "readings.csv")][1:] == ["F\\udce414"]


def test_a_long_skipped_line_is_cut():
    """It is never judged, and stands whole in the file's blob."""
    table = ReadingsTable(skipped=(Skipped(Place("readings.csv", 2, "x" * 70_000), "cells"),))
    (row,) = rows_of(table, "readings.csv")
    assert row.body["text"] == "x" * MOST_TEXT


def test_a_long_circuit_is_refused():
    """A name cut short might lose the word that forbids the tap: it is refused, not cut."""
    name = "fuse " * (MOST_NAME // 5) + "airbag"
    table = ReadingsTable(wires=("Red",), facts={"Red": WireFacts(circuits=(name,))})
    with pytest.raises(JobError, match="a name of 2,006 characters"):
        rows_of(table, "readings.csv")


def test_absent_keys_have_one_order():
    """A set has none of its own; the rows come by name."""
    table = ReadingsTable(absent_keys=frozenset({Key.CRANK, Key.ACCESSORY}))
    assert [row.body["key"] for row in rows_of(table, "f")] == ["accessory", "crank"]
