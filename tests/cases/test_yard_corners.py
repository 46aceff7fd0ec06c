"""The server's corners, and those of a phone's day."""

from __future__ import annotations

import json
import logging

import pytest
from tests.samples.demo_jobs import DEMO
from tests.samples.sheets import job_sheet
from tests.samples.stores import ORGANISATION

from backprobe.cases.day import day_of
from backprobe.cases.export_jobs import Form, exported
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.yard import Yard
from backprobe.cases.yard_corners import day_corners, yard_corners
from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.files.corner_file import write_corners
from backprobe.formats.corner_index import read_corner_index

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
NEAR, FAR = Corner(51.5, -0.25, ("Main Street", "Mill Lane")), Corner(52.5, -0.25, ("Far Road", "Hill Road"))
INDEX = CornerIndex(corners=(NEAR, FAR), attribution="© somebody", source="m.osm.pbf")
PLACE = "[place]\nlat = 51.5009\nlon = -0.25\n"  # 0.0009° north of the corner: 100 m


@pytest.fixture
def yard(sqlite_yard: Yard) -> Yard:
    """A yard with an index of two corners in its data folder."""
    write_corners(INDEX, sqlite_yard.made.parent / "corners.txt")
    return sqlite_yard


def test_without_an_index_there_is_none(sqlite_yard: Yard, ines: Caller) -> None:
    """The day has its jobs all the same."""
    assert yard_corners(sqlite_yard) is None
    assert day_of(sqlite_yard, ines)["corners"] is None


def test_a_newer_index_counts(yard: Yard) -> None:
    """The file is read again when it has changed, and only then."""
    assert yard_corners(yard) == INDEX
    assert yard_corners(yard) is yard_corners(yard)
    other = CornerIndex(corners=(NEAR,), attribution="© another", source="m.osm.pbf")
    write_corners(other, yard.made.parent / "corners.txt")
    assert yard_corners(yard) == other


def test_a_damaged_index_is_logged_and_left_out(yard: Yard, caplog: pytest.LogCaptureFixture) -> None:
    """Once; no phone goes without its jobs for it."""
    (yard.made.parent / "corners.txt").write_text("wire,key,volts\n", encoding="utf-8")
    with caplog.at_level(logging.WARNING):
        assert yard_corners(yard) is None
        assert day_corners(yard, [(51.5, -0.25)]) is None
    assert len([record for record in caplog.records if "is left out" in record.message]) == 1


def test_a_day_gets_the_corners_around_its_jobs(yard: Yard, ines: Caller) -> None:
    """The one 100 m off and not the one 111 km off; none where no job has a place."""
    assert day_of(yard, ines)["corners"] is None
    make_job(yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1") + PLACE, UNIT, (ines.person or "",)))
    text = day_of(yard, ines)["corners"]
    assert isinstance(text, str)
    assert read_corner_index(text, file="day").streets == ("Main Street", "Mill Lane")


def test_exports_name_the_place(yard: Yard) -> None:
    """With what is owed to the map; nothing of a job whose place is not known."""
    make_job(yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1") + PLACE, UNIT))
    make_job(yard, LEAD, new=NewJob(job_sheet("b", serial="LN2-2"), UNIT))
    listed = json.loads(exported(yard, LEAD, form=Form.JSON))["jobs"]
    assert [(job["corner"], job["attribution"]) for job in listed] == [
        ("corner of Main Street and Mill Lane, 100 m north", "© somebody"),
        (None, None),
    ]
