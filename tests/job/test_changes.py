"""What an import adds: everything the first time, nothing the second, and after an edit just what changed."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.journals import JOB, Phone

from backprobe.errors import JournalError, UnreadableError
from backprobe.evidence.reading import ReadingsTable
from backprobe.formats.readings_csv import read_readings
from backprobe.job.changes import MOVED_IN_ONE, changes
from backprobe.job.entry import Entry
from backprobe.job.fold import fold
from backprobe.job.journal import continued, journal_of
from backprobe.job.rows import Row, rows_of

FILE = "readings.csv"
HEADER = "wire,key,volts,capture,after_min,load_A,circuit,marks"
SHA = "a" * 64

cells = st.tuples(
    st.sampled_from(("Red", "Blue", "Grey", "red", "")),
    st.sampled_from(("on", "off", "crank", "after", "onn", "")),
    st.sampled_from(("12.30", "12.3", "0.02", "350 mV", "120", "na", "")),
    st.sampled_from(("", "min", "guess")),
    st.sampled_from(("", "30")),
    st.sampled_from(("", "1.5")),
    st.sampled_from(("", "F14", "airbag")),
    st.sampled_from(("", "twisted;yellow")),
)
sheets = st.lists(cells.map(",".join), max_size=8)


def table_of(rows: list[str]) -> ReadingsTable:
    """What the rows hold; an empty table where not one can be read."""
    try:
        return read_readings([HEADER, *rows], file=FILE, system_V=12)
    except UnreadableError:
        return ReadingsTable()


def imported(entries: list[Entry], rows: tuple[Row, ...]) -> list[Entry]:
    """The entries with those behind them that an import of `rows` adds."""
    drafts = changes(entries, rows, job=JOB)
    return [*entries, *continued(journal_of(entries), drafts, job=JOB, device="folder", engine="0.1.0")]


def edited(*sheets: list[str]) -> list[Entry]:
    """The entries after the sheets were imported one after the other."""
    entries: list[Entry] = []
    for rows in sheets:
        entries = imported(entries, rows_of(table_of(rows), FILE))
    return entries


def unworded(table: ReadingsTable) -> ReadingsTable:
    """The table without what was expected of skipped lines: the wording first given stays with the line."""
    return replace(table, skipped=tuple(replace(one, expected="") for one in table.skipped))


def kinds(entries: list[Entry]) -> Counter[str]:
    return Counter(entry.kind for entry in entries)


@given(sheets)
def test_the_fold_gives_the_table_back(rows):
    """Whatever the table, its entries fold to an equal one: figures, places, order, lines and all."""
    state = fold(edited(rows))
    assert state.table == table_of(rows)
    assert state.settled


@given(sheets)
def test_a_second_import_adds_nothing(rows):
    """The same rows again: not one entry."""
    entries = edited(rows)
    assert changes(entries, rows_of(table_of(rows), FILE), job=JOB) == ()


@given(st.lists(sheets, min_size=2, max_size=4))
def test_after_any_edits_the_fold_gives_the_last_table(versions):
    """However a table was edited between imports, the fold is the table as it stands now, and its chain is whole."""
    entries = edited(*versions)
    assert unworded(fold(entries).table) == unworded(table_of(versions[-1]))
    assert journal_of(entries).faults == ()


@given(st.lists(sheets, min_size=1, max_size=3))
def test_importing_again_elsewhere_makes_the_same_entries(versions):
    """The same edits imported on another machine give the same bytes."""
    assert edited(*versions) == edited(*versions)


@given(sheets, sheets)
def test_an_earlier_entry_is_never_touched(before, after):
    """Imports only append."""
    assert edited(before, after)[: len(edited(before))] == edited(before)


def test_a_changed_figure_is_one_correction():
    """12.30 becomes 12.90: one entry, naming the reading it replaces."""
    before = edited(["Red,on,12.30,,,,,", "Blue,on,0.02,,,,,"])
    after = edited(["Red,on,12.30,,,,,", "Blue,on,0.02,,,,,"], ["Red,on,12.90,,,,,", "Blue,on,0.02,,,,,"])
    (added,) = after[len(before) :]
    assert (added.kind, added.body["kind"]) == ("correction", "reading")
    assert added.body["replaces"] == next(entry.id for entry in before if entry.body.get("volts") == "12.30")


def test_changed_back_and_forth():
    """12.30, 12.90, 12.30, 12.90: three corrections, each of the one before, under ids of their own."""
    entries = edited(*([f"Red,on,{volts},,,,,"] for volts in ("12.30", "12.90", "12.30", "12.90")))
    one, two, three = (entry for entry in entries if entry.kind == "correction")
    assert (two.body["replaces"], three.body["replaces"]) == (one.id, two.id)
    assert fold(entries).table.readings[0].typed == "12.90"


def test_a_removed_row_is_withdrawn():
    """The reading and its wire are gone, and that is said twice."""
    entries = edited(["Red,on,12.30,,,,,", "Blue,on,0.02,,,,,"], ["Red,on,12.30,,,,,"])
    assert kinds(entries[4:]) == {"withdrawn": 2}
    assert fold(entries).table.wires == ("Red",)


def test_a_removed_row_that_comes_back():
    """It is a new entry: the withdrawn one stays withdrawn."""
    row = ["Red,on,12.30,,,,,"]
    entries = edited(row, [], row)
    assert kinds(entries) == {"wire_declared": 2, "reading": 2, "withdrawn": 2}
    assert fold(entries).table == table_of(row)


def test_a_row_put_in_above_moves_the_others_and_changes_none():
    """One reading more; the two below it are noted as moved in a single entry."""
    rows = ["Red,on,12.30,,,,,", "Red,off,12.60,,,,,"]
    entries = edited(rows, ["Red,crank,10.50,,,,,", *rows])
    assert kinds(entries[3:]) == {"reading": 1, "rows_moved": 1}
    assert fold(entries).table == table_of(["Red,crank,10.50,,,,,", *rows])


def test_moved_back_and_forth():
    """Two rows change places three times: three notes, under ids of their own, though two say the same."""
    rows = ["Red,on,12.30,,,,,", "Red,off,12.60,,,,,"]
    entries = edited(rows, rows[::-1], rows, rows[::-1])
    assert kinds(entries[3:]) == {"rows_moved": 3}
    assert fold(entries).table == table_of(rows[::-1])


def test_a_repeated_reading_put_in_above_changes_none():
    """Three readings of one wire at one key: the new one is new, the old ones keep their entries."""
    rows = ["Red,on,12.30,,,,,", "Red,on,12.40,,,,,"]
    entries = edited(rows, ["Red,on,12.50,,,,,", *rows])
    assert kinds(entries[3:]) == {"reading": 1, "rows_moved": 1}


def test_many_moved_rows_are_noted_in_parts():
    """2,500 rows moved by one line: three entries, none over 64 kB."""
    rows = [f"W{at},on,12.30,,,,," for at in range(5 * MOVED_IN_ONE // 2)]
    entries = edited(rows, ["Red,on,1.00,,,,,", *rows])
    moved = [entry for entry in entries if entry.kind == "rows_moved"]
    parts = [len(entry.body["moved"]) for entry in moved]
    assert sorted(parts) == [1_000] * 5  # 2,500 readings and 2,500 wires stand one place further down
    assert fold(entries).table == table_of(["Red,on,1.00,,,,,", *rows])


def test_another_wording_of_what_was_expected_is_no_change():
    """A later version may say better what it expected; the line the technician wrote is the same."""
    rows = rows_of(table_of(["Red,on,12.30,,,,,", "Red,onn,12.30,,,,,"]), FILE)
    reworded = tuple(replace(row, body=row.body | {"expected": "…"}) if "expected" in row.body else row for row in rows)
    assert reworded != rows
    assert changes(imported([], rows), reworded, job=JOB) == ()


def test_a_person_signs_what_was_imported():
    """Every entry names the person's entry, the person's own names nobody; the name itself stands nowhere."""
    rows = (Row("person", {"sha256": SHA}, (SHA,)), *rows_of(table_of(["Red,on,12.30,,,,,"]), FILE))
    entries = imported([], rows)
    person = entries[0]
    assert [entry.by for entry in entries] == [None, person.id, person.id]
    more = imported(entries, (*rows, Row("readings_file", {"file": FILE, "sha256": SHA, "bytes": 1})))
    assert [entry.by for entry in more[3:]] == [person.id]


def test_what_a_later_version_imported_is_not_imported_over():
    """An entry that is not understood here may be one of the rows: nothing is added."""
    with pytest.raises(JournalError, match="later version"):
        changes([Phone().say("hologram", {})], (), job=JOB)
