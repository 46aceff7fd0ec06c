"""Records, exports and rosters by the desk's calls."""

from __future__ import annotations

import base64
import json

import httpx
import pytest
from tests.samples.demo_jobs import DEMO, demo_job
from tests.samples.sheets import job_sheet

UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")


def test_a_record_is_a_pdf(desk: httpx.Client, phone: httpx.Client, tmp_path) -> None:
    """Of the demo's job; of others it is said why there is none."""
    job = demo_job(tmp_path, "truck-12")
    for sha256, content in job.files.items():
        phone.put(f"/api/blobs/{sha256}", content=content)
    phone.post("/api/entries", json={"entries": job.texts})
    answer = desk.get(f"/api/desk/jobs/{job.id}/record.pdf")
    assert (answer.status_code, answer.headers["content-type"]) == (200, "application/pdf")
    assert answer.content.startswith(b"%PDF")
    assert desk.get("/api/desk/jobs/none/record.pdf").json()["code"] == "not_found"


@pytest.mark.parametrize(
    ("form", "kind"),
    [("csv", "text/csv; charset=utf-8"), ("json", "application/json"), ("geojson", "application/geo+json")],
)
def test_jobs_go_out(desk: httpx.Client, form: str, kind: str) -> None:
    """As a file to save, of the right type."""
    desk.post("/api/desk/jobs", json={"job.toml": job_sheet("LY-01"), "unit.toml": UNIT})
    answer = desk.get(f"/api/desk/export.{form}")
    assert (answer.status_code, answer.headers["content-type"]) == (200, kind)
    assert answer.headers["content-disposition"] == f'attachment; filename="jobs.{form}"'
    assert "LY-01" in answer.text
    assert desk.get("/api/desk/export.xml").status_code == 422


def test_a_roster_comes_in(desk: httpx.Client) -> None:
    """Looked at, taken, listed; with a bad cell it is refused and nothing is there."""
    good, bad = b"plate,unit_serial\nLY 07,LN2-1\n", b"plate,vin\nLY 08,1.2E+16\n"
    preview = desk.post("/api/desk/rosters/preview", content=good, params={"file": "trucks.csv"}).json()
    assert (preview["file"], len(preview["new"]), preview["bad"]) == ("trucks.csv", 1, [])
    assert desk.post("/api/desk/rosters/import", content=bad).json()["code"] == "input"
    assert desk.get("/api/desk/rosters/vehicles").json()["rows"] == []
    assert desk.post("/api/desk/rosters/import", content=good).status_code == 200
    rows = desk.get("/api/desk/rosters/vehicles").json()["rows"]
    assert rows == [{"plate": "LY 07", "unit_serial": "LN2-1"}]
    named = {"columns": "plate=Kennzeichen"}
    other = desk.post("/api/desk/rosters/preview", content=b"Kennzeichen\nLY 09\n", params=named).json()
    assert len(other["new"]) == 1
    assert json.dumps(desk.post("/api/desk/rosters/preview", content=b"").json()["code"]) == '"unreadable"'


def test_a_roster_comes_in_with_jobs(desk: httpx.Client) -> None:
    """Two vehicles, two jobs; what is no base64, no day, or a voltage that there is not, is refused."""
    content = base64.b64encode(b"plate\nLY 07\nLY 08\n").decode()
    body = {"content": content, "unit.toml": UNIT, "system_V": 24, "people": [], "day": "2026-04-01"}
    for wrong in ({"content": "%"}, {"system_V": 13}, {"day": "soon"}):
        assert desk.post("/api/desk/rosters/import-with-jobs", json={**body, **wrong}).json()["code"] == "request"
    assert desk.get("/api/desk/jobs").json()["jobs"] == []
    assert desk.post("/api/desk/rosters/import-with-jobs", json=body).json()["jobs"] == 2
    assert sorted(job["name"] for job in desk.get("/api/desk/jobs").json()["jobs"]) == ["LY 07", "LY 08"]
