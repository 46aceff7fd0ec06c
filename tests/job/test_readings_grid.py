"""The grid of readings."""

from __future__ import annotations

import pytest
from tests.samples.jobs import NAMED, ROWS, crank_recording, evidence, without

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.job.judge import judge_job
from backprobe.job.readings_grid import GridRow, ReadingsGrid, readings_grid, said


def grid(rows: str = ROWS, **given: dict[str, str]) -> ReadingsGrid | None:
    """The grid of the good job, with other readings or recordings."""
    return readings_grid(judge_job(evidence(rows=rows, named=NAMED, **given)))


def row(found: ReadingsGrid | None, wire: str) -> dict[str, tuple[str, ...]]:
    """The cells of a wire by the heads of their columns."""
    assert found is not None
    (one,) = (each for each in found.rows if each.wire == wire)
    return dict(zip(found.keys, one.cells, strict=True))


def test_every_figure_stands_in_its_place_as_typed():
    """Two readings at one position stand together; what was not read is empty."""
    found = grid()
    assert found is not None
    assert found.keys == ("off", "accessory", "on", "crank", "running", "after 10 min")
    assert row(found, "Red") == {
        "off": ("12.62 V",),
        "accessory": ("12.55 V",),
        "on": ("12.40 V", "12.29 V at 1.5 A"),
        "crank": ("11.40 V logged",),
        "running": ("14.02 V",),
        "after 10 min": ("12.58 V after 12 min",),
    }
    assert row(found, "Violet")["after 10 min"] == ()


def test_only_positions_that_were_read_have_a_column():
    """Nobody read while running or after: no such columns."""
    rows = without(ROWS, "Red,running", "Violet,running", "Red,after")
    found = grid(rows)
    assert found is not None
    assert found.keys == ("off", "accessory", "on", "crank")


def test_readings_out_of_recordings_are_there_too():
    """The lowest values while the starter turns come from the recording, and say so."""
    rows = without(ROWS, "Red,crank", "Violet,crank")
    crank = row(grid(rows, recordings={"crank.csv": crank_recording("Red", "Violet", "Grey")}), "Red")["crank"]
    assert len(crank) == 1
    assert crank[0].endswith(" V recorded")


def test_what_could_not_be_read_is_said():
    """A cell that holds words is neither empty nor a figure."""
    assert "not readable" in row(grid(ROWS.replace("Violet,on,12.37", "Violet,on,12.3.7")), "Violet")["on"]


def test_a_figure_that_fits_nothing_is_marked():
    """2.40 V between 12.55 and 12.62 V was mistyped, or read off another wire: it is shown, and set aside."""
    rows = ROWS.replace("Red,on,12.40,,,", "Red,on,2.40,,,") + "Red,on,12.41,,,\n"
    assert any("(set aside)" in text for text in row(grid(rows), "Red")["on"])


def test_wires_that_nobody_measured_keep_their_row():
    """A wire that was only declared is part of the table."""
    found = grid(ROWS + "Blue,,,,,\n")
    assert found is not None
    assert found.rows[-1] == GridRow("Blue", ((),) * 6)


def test_the_usual_ten_minutes_are_not_repeated():
    """The column says them; other minutes stand with the figure."""
    ten = ROWS.replace("Red,after,12.58,,12,", "Red,after,12.58,,10,")
    assert row(grid(ten), "Red")["after 10 min"] == ("12.58 V",)


def test_nothing_read_gives_no_grid():
    """A job whose table has not been begun."""
    assert grid("") is None


@pytest.mark.parametrize(
    ("typed", "capture", "text"),
    [
        ("12.3", Capture.DISPLAY, "12.3 V"),
        ("350 mV", Capture.DISPLAY, "350 mV"),
        ("10.81", Capture.MIN, "10.81 V MIN"),
        ("12.9", Capture.MAX, "12.9 V MAX"),
        ("10.2", Capture.LOGGED, "10.2 V logged"),
    ],
)
def test_how_the_meter_held_it_and_its_unit(typed: str, capture: Capture, text: str):
    """A display needs no word; a unit that was typed is kept."""
    reading = Reading(wire="Red", key=Key.CRANK, volts=12.0, typed=typed, count_V=0.1, capture=capture)
    assert said(reading) == text
    assert said(reading, recorded=True).endswith(" recorded")
