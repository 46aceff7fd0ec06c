"""Lists of jobs as other programs read them."""

from __future__ import annotations

import csv
import io
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.job_row import COLUMNS, JobRow
from backprobe.formats.jobs_export import harmless, jobs_csv, jobs_geojson, jobs_json

JOB = JobRow(
    id="0198",
    name="LY 07",
    state="proven",
    verdict="fails",
    fails=1,
    next='move the "supply", then look again',
    plate="LY 07",
    lat_deg=-33.1234567,
    lon_deg=151.2,
    yard="Große Straße; Hof 2",
)


def rows(text, **form):
    """What a reader of CSV makes of a text."""
    return list(csv.reader(io.StringIO(text, newline=""), **form))


def test_csv():
    """A heading, every value, figures to six decimals, lines ending in CR LF."""
    text = jobs_csv([JOB])
    heading, row = rows(text)
    assert tuple(heading) == COLUMNS
    found = dict(zip(heading, row, strict=True))
    assert found["next"] == 'move the "supply", then look again'
    assert (found["lat_deg"], found["lon_deg"], found["fails"], found["vin"]) == ("-33.123457", "151.2", "1", "")
    assert text.count("\r\n") == 2
    assert text.replace("\r\n", "").count("\n") == 0


def test_json():
    """Every value as it is."""
    answer = json.loads(jobs_json([JOB]))
    assert answer["ok"] is True
    assert answer["jobs"][0]["yard"] == "Große Straße; Hof 2"
    assert answer["jobs"][0]["lat_deg"] == -33.123457
    assert list(answer["jobs"][0]) == list(COLUMNS)


def test_geojson():
    """East first; the place is the geometry, the id the feature's own."""
    (feature,) = json.loads(jobs_geojson([JOB]))["features"]
    assert feature["geometry"] == {"type": "Point", "coordinates": [151.2, -33.123457]}
    assert feature["id"] == "0198"
    assert {"lat_deg", "lon_deg", "id"} & set(feature["properties"]) == set()
    assert feature["properties"]["verdict"] == "fails"


def test_half_a_place_is_none():
    """One degree alone gives no point."""
    job = JobRow(id="1", name="a", state="open", verdict="open", lat_deg=5.0)
    assert json.loads(jobs_geojson([job]))["features"][0]["geometry"] is None


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@SUM(A1)", " =1", "\t=1", "＝1+1", "|calc", "%0A", "\n=1", '=HYPERLINK("http://x")']
)
def test_what_a_spreadsheet_would_work_out_is_made_harmless(text):
    """An apostrophe before the first sign that counts."""
    assert harmless(text).lstrip()[0] == "'"


def test_a_spreadsheet_with_another_delimiter_begins_no_formula():
    """A semicolon or a tab inside a cell parts it there; each part is harmless."""
    job = JobRow(id="1", name="a;=1+1", state="open\t@x", verdict="b; +1")
    for delimiter in ";\t":
        for cell in (cell for row in rows(jobs_csv([job]), delimiter=delimiter) for cell in row):
            assert not cell.strip().startswith(tuple("=+-@"))


def test_figures_keep_their_sign():
    """A place in the south is no formula: it is a figure of ours."""
    assert '"-33.123457"' in jobs_csv([JOB])


texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)


@given(st.lists(texts, max_size=4))
def test_what_is_written_is_read(names):
    """By the csv module, cell for cell, as `harmless` leaves them; and by the json module as they were."""
    jobs = [JobRow(id=str(at), name=name, state="open", verdict="open", next=name) for at, name in enumerate(names)]
    read = rows(jobs_csv(jobs))
    assert [row[1] for row in read[1:]] == [harmless(name) for name in names]
    assert [job["name"] for job in json.loads(jobs_json(jobs))["jobs"]] == names
    assert all(not row[1].lstrip().startswith(tuple("=+-@")) for row in read[1:])
