"""A block of lines into columns: the quick way and the careful way must agree."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import Place
from backprobe.formats import recording_block
from backprobe.formats.recording_block import SMALL, Block, Faults, read_block, within_reason
from backprobe.formats.recording_layout import Layout, layout_of

HEADER = "time_s,red,blue (mV),key"
GOOD = ["0,12.6,100,off", "1,12.5,101,on", "2,12.4,99,on"]


def layout(*head: str) -> Layout:
    return layout_of(head or (HEADER, *GOOD), file="f")


def block_of(lines: list[str], of: Layout) -> tuple[Block, Faults]:
    faults = Faults()
    return read_block(lines, first=2, layout=of, faults=faults), faults


def test_columns():
    """Times, voltages in V and key words, with the line each row stands on."""
    block, faults = block_of(GOOD, layout())
    assert list(block.lines) == [2, 3, 4]
    assert block.times == [0.0, 1.0, 2.0]
    assert block.values == [[12.6, 12.5, 12.4], [0.1, 0.101, 0.099]]
    assert [word.strip() for word in block.keys or []] == ["off", "on", "on"]
    assert faults.count == 0


def test_one_odd_line_in_many():
    """The row is counted with its place; every other row is there, in order, with its line number."""
    lines = [f"{i},12.5,{i},on" for i in range(1000)]
    lines[700] = "torn"
    block, faults = block_of(lines, layout())
    assert len(block) == 999
    assert block.times == [float(i) for i in range(1000) if i != 700]
    assert list(block.lines) == [i + 2 for i in range(1000) if i != 700]
    assert faults.count == 1
    assert faults.places[0].place == Place("f", 702, "torn")


def test_only():
    """Some rows of a block, with everything that belongs to them."""
    block, _ = block_of(GOOD, layout())
    part = block.only([0, 2])
    assert (part.lines, part.times, part.values[0]) == ([2, 4], [0.0, 2.0], [12.6, 12.4])


def test_rows_that_slip_by_two_are_seen():
    """A row of five cells and one of three have eight together; neither is read for two rows of four."""
    lines = ["0,12.6,100,off,9", "1,12.5,101", *GOOD]
    block, faults = block_of(lines, layout())
    assert block.times == [0.0, 1.0, 2.0]
    assert faults.count == 2


def test_short_rows_as_a_habit():
    """Where only the first row carries the last columns, short rows are whole."""
    of = layout("Index,time_s,red,serial", "0,0,12.6,77", *[f"{i},{i},12.5" for i in range(1, 9)])
    block, faults = block_of(["9,9,12.4", "10,10,12.3"], of)
    assert block.values == [[12.4, 12.3]]
    assert faults.count == 0


def test_a_meter_that_changes_its_range():
    """The unit beside each figure counts: 350 mV is 0.35 V, and a resistance is no voltage."""
    of = layout("time_s,value,unit", "0,12.6,V", "1,12.6,V")
    block, faults = block_of(["0,12.6,V", "1,350,mV", "2,12.5,V", "3,470,ohm"], of)
    assert block.values[0][:3] == [12.6, 0.35, 12.5]
    assert math.isnan(block.values[0][3])
    assert [fault.place.line for fault in faults.places] == [5]


def test_a_row_torn_within_the_last_channel():
    """Where rows are usually longer, one that ends with the last channel may have lost part of its figure."""
    of = layout("time_s,red,remark", *[f"{i},12.5,ok" for i in range(9)])
    block, faults = block_of(["9,12.5,ok", "10,1"], of)
    assert block.times == [9.0]
    assert "torn" in faults.places[0].expected


def test_within_reason():
    """Values beyond the column's limits become NaN and are counted; NaN stays and is not."""
    column = layout().columns[0]
    faults = Faults()
    kept = within_reason([12.0, 99.0, math.nan, -81.0], column, lines=[2, 3, 4, 5], file="f", faults=faults)
    assert kept[0] == 12.0
    assert all(math.isnan(value) for value in kept[1:])
    assert [fault.place.line for fault in faults.places] == [3, 5]


def test_faults_keep_the_first_places_and_short_texts():
    """The count goes on where the places end; a text of a kilobyte is cut."""
    faults = Faults(most=2)
    for line in range(5):
        faults.add(Place("f", line, "x" * 1000), "less")
    assert (faults.count, len(faults.places)) == (5, 2)
    assert len(faults.places[0].place.text or "") == 80


CELL = st.sampled_from(
    ["0", "1.5", "-2", "12.6", "1e2", " 3", "", "-", "OL", "nan", "inf", "x", "1_2", "12 V", "٣", '"7"']
)
ROWS = st.lists(st.lists(CELL, min_size=2, max_size=6).map(",".join), min_size=1, max_size=30)


@given(ROWS, st.sampled_from([",", ";"]))
def test_both_ways_agree(rows, delimiter):
    """Whatever rows the quick way takes on, the careful way reads the same, and counts the same faults."""
    of = layout(HEADER.replace(",", delimiter), *(row.replace(",", delimiter) for row in GOOD))
    lines = [row.replace(",", delimiter) for row in rows]
    careful_faults = Faults()
    careful = recording_block._careful(lines, first=2, layout=of, faults=careful_faults)
    try:
        quick = recording_block._quick(lines, first=2, layout=of)
    except recording_block._NotQuickError:
        return
    rows_of_time = [i for i, time in enumerate(quick.times) if math.isfinite(time)]
    quick = quick.only(rows_of_time)
    assert list(quick.lines) == list(careful.lines)
    assert quick.times == careful.times
    for one, other in zip(quick.values, careful.values, strict=True):
        finite = [value if math.isfinite(value) else None for value in one]
        assert finite == [None if math.isnan(value) else value for value in other]


@pytest.mark.parametrize("count", [1, SMALL, SMALL + 1, 1000])
def test_a_block_of_nothing_but_damage(count):
    """Every line is counted, none is lost, however the block is cut."""
    block, faults = block_of(["damaged"] * count, layout())
    assert (len(block), faults.count) == (0, count)
