"""All jobs in each of the forms."""

from __future__ import annotations

import csv
import io
import json

import pytest
from tests.samples.demo_jobs import DEMO
from tests.samples.sheets import job_sheet
from tests.samples.stores import ORGANISATION

from backprobe.cases.export_jobs import MARK, TYPES, Form, exported
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")


def test_each_form_has_every_job(sqlite_yard: Yard) -> None:
    """Two jobs, one with a place: the same in all three."""
    place = "[place]\nlat = 51.5\nlon = -0.25\n"
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1") + place, UNIT))
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("b", plate="=1+1"), UNIT))
    table = exported(sqlite_yard, LEAD, form=Form.CSV)
    assert table.startswith(MARK)
    rows = list(csv.DictReader(io.StringIO(table.removeprefix(MARK))))
    assert [(row["id"], row["plate"], row["unit_serial"], row["lat_deg"]) for row in rows] == [
        ("a", "LY 01", "LN2-1", "51.5"),
        ("b", "'=1+1", "", ""),
    ]
    listed = json.loads(exported(sqlite_yard, LEAD, form=Form.JSON))
    assert [(row["id"], row["plate"]) for row in listed["jobs"]] == [("a", "LY 01"), ("b", "=1+1")]
    features = json.loads(exported(sqlite_yard, LEAD, form=Form.GEOJSON))["features"]
    assert [feature["geometry"] for feature in features] == [{"type": "Point", "coordinates": [-0.25, 51.5]}, None]
    assert set(TYPES) == set(Form)


def test_it_is_not_for_phones(sqlite_yard: Yard, ines: Caller) -> None:
    """They have their own jobs."""
    with pytest.raises(RefusedError):
        exported(sqlite_yard, ines, form=Form.CSV)
