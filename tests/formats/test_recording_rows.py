"""The rows of a recording, block by block, from any start."""

from __future__ import annotations

import pytest

from backprobe.formats.recording_block import Faults
from backprobe.formats.recording_layout import layout_of
from backprobe.formats.recording_rows import BLOCK_LINES, Rows, Start, rows_from


def lines_of(rows: int) -> list[str]:
    return ["time_s,red", *(f"{i * 0.5},{12 + i % 10 / 10}" for i in range(rows))]


def read(lines: list[str], start: Start | None = None) -> tuple[list[Rows], Faults]:
    layout, faults = layout_of(lines[:50], file="f"), Faults()
    return list(rows_from(start or Start(1), iter(lines), layout=layout, faults=faults)), faults


def test_blocks():
    """10,000 rows come in three blocks that follow on from one another."""
    blocks, _ = read(lines_of(10_000))
    assert [len(rows.block) for rows in blocks] == [BLOCK_LINES, BLOCK_LINES, 10_000 - 2 * BLOCK_LINES]
    assert [rows.start.row for rows in blocks] == [0, BLOCK_LINES, 2 * BLOCK_LINES]
    assert blocks[1].steps[0] == 0.5
    assert blocks[2].start == blocks[1].after


def test_taken_up_again():
    """From the start of any block the rest is read just as the first time."""
    lines = lines_of(10_000)
    lines[5000] = "torn"
    lines[6000] = "1.0,12"  # falls back
    blocks, _ = read(lines)
    again, _ = read(lines, blocks[1].start)
    assert [rows.block.times for rows in again] == [rows.block.times for rows in blocks[1:]]
    assert [list(rows.block.lines) for rows in again] == [list(rows.block.lines) for rows in blocks[1:]]
    assert [rows.start for rows in again] == [rows.start for rows in blocks[1:]]


def test_a_block_of_damage_yields_nothing():
    """Five thousand lines of damage: no empty block, every line counted, and what follows is read."""
    blocks, faults = read([*lines_of(20), *["damage"] * 9000, "50,12.1", "51,12.2"])
    assert [len(rows.block) for rows in blocks] == [20, 2]
    assert faults.count == 9000
    assert blocks[1].block.times == [50.0, 51.0]


@pytest.mark.parametrize("rows", [5, BLOCK_LINES, BLOCK_LINES + 1])
def test_a_torn_end(rows):
    """The last line is compared with those above it, also across the end of a block."""
    lines = ["time_s,red", *(f"{i}.0,12.60" for i in range(rows)), f"{rows}.0,1"]
    blocks, faults = read(lines)
    assert sum(len(each.block) for each in blocks) == rows
    assert faults.places[0].place.line == rows + 2
    assert "end of the last line is missing" in faults.places[0].expected


def test_the_last_line_may_end_in_an_empty_cell():
    """A trailing delimiter, an empty last cell or a blank last line is no torn end."""
    for end in ("9.0,12.6,", "9.0,,", ""):
        lines = ["time_s,red,blue", *(f"{i}.0,12.60,1.25" for i in range(9)), end]
        _, faults = read(lines)
        assert faults.count == 0
