"""What stands beside the findings."""

from __future__ import annotations

import base64
import json
import re
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.photos import as_file, four_corners

from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.readings_grid import GridRow, ReadingsGrid
from backprobe.paper.content import (
    ChoiceRow,
    JoinedRow,
    OwedRow,
    Picture,
    RecordContent,
    ReportedBlock,
    ShownPhoto,
    SignOffBlock,
)
from backprobe.paper.sections import (
    BY_TWO,
    LEAST_PX_PER_MM,
    ONE_ROW,
    choice,
    driver_told,
    framed,
    grid,
    joined,
    owed,
    photo_size_mm,
    photos,
    reported,
    sections,
    signed,
)
from backprobe.paper.setter import Setter

SETTER = Setter(frozenset("漢"))
JPEG = as_file(four_corners())
GROUND = ShownPhoto(
    jpeg=JPEG, width_px=120, height_px=80, shows="The ground point", note="M8 漢", source="photos/a.jpg", alt="漢"
)


def test_a_bare_job_has_none_of_it(record: Callable[..., RecordContent]):
    """Each part is empty or None, and the template leaves it out."""
    found = sections(record(choices=(), pictures=()), SETTER)
    assert {name: value for name, value in found.items() if value and name != "photos"} == {}
    assert found["photos"] == {"columns": 3, "width_mm": 56.0, "height_mm": 33.0, "shown": []}


def test_all_of_it_is_plain_json(record: Callable[..., RecordContent]):
    """Everything survives JSON."""
    full = sections(
        record(
            readings=ReadingsGrid(("off",), (GridRow("Red", (("12.62 V",),)),)),
            photos=(GROUND,),
            joined=(JoinedRow(lead="power", joined="to Red", undo=None),),
            driver_told=("call the yard",),
        ),
        SETTER,
    )
    assert json.loads(json.dumps(full)) == full


def test_readings_keep_their_cells():
    """A wire, a list of figures in each column; an empty cell stays empty."""
    found = grid(ReadingsGrid(("off", "on"), (GridRow("漢", (("12.62 V", "12.6 V"), ())),)), SETTER)
    assert found == {
        "keys": [["off"], ["on"]],
        "rows": [{"wire": [{"code": "U+6F22"}], "cells": [[["12.62 V"], ["12.6 V"]], []]}],
        "long_names": False,
    }
    assert grid(ReadingsGrid(("off",), (GridRow("x" * 21, ((),)),)), SETTER)["long_names"] is True


@pytest.mark.parametrize(("count", "room"), [(1, ONE_ROW), (3, ONE_ROW), (4, BY_TWO), (12, BY_TWO)])
def test_up_to_three_photos_stand_in_one_row(count: int, room: tuple[float, ...]):
    """More of them by two, larger."""
    found = photos((GROUND,) * count, SETTER)
    assert (found["columns"], found["width_mm"], found["height_mm"]) == room
    shown = found["shown"]
    assert isinstance(shown, list)
    assert len(shown) == count


def test_a_photo_has_its_caption_and_its_words():
    """120 × 80 points in 56 × 33 mm: 49.5 mm wide, 33 mm high; what is heard keeps its letters."""
    (row,) = photos((GROUND,), SETTER)["shown"]  # type: ignore[misc]
    assert (row["width_mm"], row["height_mm"]) == (49.5, 33.0)
    assert (row["shows"], row["note"], row["alt"]) == (["The ground point"], ["M8 ", {"code": "U+6F22"}], "漢")


@given(st.integers(1, 720), st.integers(1, 720), st.sampled_from([ONE_ROW[1:], BY_TWO[1:]]))
def test_every_shape_fits_its_room(width_px: int, height_px: int, room_mm: tuple[float, float]):
    """In its own proportions, never wider or higher than the room, never blown up."""
    width_mm, height_mm = photo_size_mm((width_px, height_px), room_mm)
    assert width_mm <= room_mm[0]
    assert height_mm <= room_mm[1]
    assert width_mm * LEAST_PX_PER_MM <= width_px + 0.02
    assert width_mm * height_px == pytest.approx(height_mm * width_px, abs=0.01 * (width_px + height_px))


def test_the_photo_travels_inside_a_picture():
    """Byte for byte, in the form in which all pictures reach the page."""
    data = re.search(r"base64,([^\"]+)", framed(GROUND))
    assert data is not None
    assert base64.b64decode(data[1]) == JPEG


def test_an_undo_that_nobody_wrote_down_says_so():
    """The column is never empty."""
    assert joined(JoinedRow(lead="power", joined="to Red", undo=None), SETTER)["undo"] == ["not written down"]
    assert joined(JoinedRow(lead="power", joined="to Red", undo="cut it"), SETTER)["undo"] == ["cut it"]


def test_what_the_driver_was_told():
    """Nothing before the hand-over; afterwards also that nothing was written down."""
    assert driver_told(None, SETTER) is None
    assert driver_told((), SETTER) == [["Nothing was written down."]]
    assert driver_told(("a", "b"), SETTER) == [["a"], ["b"]]


def test_a_choice_and_a_sign_off_become_words():
    """Field by field."""
    assert choice(ChoiceRow(lead="supply", wire=None), SETTER) == {
        **dict.fromkeys(("wire", "place", "note")),
        "lead": ["supply"],
    }
    block = SignOffBlock(end="proven", lines=("a",), signed="by 漢", key="4a80")
    assert signed(block, SETTER)["signed"] == ["by ", {"code": "U+6F22"}]


def test_what_the_unit_reported(record: Callable[..., RecordContent], a_waveform: Callable[..., Picture]):
    """Picture, findings, names of those that stand elsewhere, notes; None where nobody proved anything."""
    finding = Finding(id="f", stage=Stage.PROVE, what="Lights", verdict=Verdict.HOLDS, because="network 漢")
    block = ReportedBlock(
        picture=a_waveform(), findings=(finding,), others=("Pattern: inverted (fails)",), notes=("n",)
    )
    found = reported(block, SETTER)
    assert found["others"] == [["Pattern: inverted (fails)"]]
    assert found["notes"] == [["n"]]
    (row,) = found["findings"]  # type: ignore[misc]
    assert row["because"] == ["network ", {"code": "U+6F22"}]
    assert reported(ReportedBlock(picture=None, findings=()), SETTER)["picture"] is None
    assert sections(record(), SETTER)["reported"] is None


def test_what_is_owed_says_when_nobody_was_named():
    """A name and a day, or that there is none."""
    assert owed(OwedRow(what="a night", owed_by="the yard", until="2026-04-07"), SETTER) == {
        "what": ["a night"],
        "owed_by": ["the yard"],
        "until": ["2026-04-07"],
    }
    bare = owed(OwedRow(what="a night", owed_by=None, until=None), SETTER)
    assert (bare["owed_by"], bare["until"]) == (["nobody is named"], ["no day is named"])
