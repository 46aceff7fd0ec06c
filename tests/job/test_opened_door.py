"""The door for a file that is opened at a job."""

from __future__ import annotations

import json

from tests.samples.demo_jobs import DEMO

from backprobe.job.opened_door import opened_text

SHEET = (DEMO / "truck-07" / "job.toml").read_text(encoding="utf-8")
MAP = '\n[reports.columns]\nunit_id = "Box"\nt = "Sent"\nignition = "Key"\n'


def said(content: bytes, **asked: object) -> dict[str, object]:
    """What the door says of a file."""
    return dict(json.loads(opened_text(json.dumps({"file": "a.csv", **asked}), content)))


def test_kind_name_and_rows_come_out() -> None:
    """The lights of the demo's truck 7: a file and its rows."""
    found = said((DEMO / "truck-07" / "lights.csv").read_bytes())
    assert (found["ok"], found["kind"], found["file"], found["more"]) == (True, "lights_file", "lights.csv", {})
    assert [row["kind"] for row in found["rows"]] == ["light_seen", "light_seen"]  # type: ignore[attr-defined]


def test_the_job_sheet_names_the_columns_of_the_reports() -> None:
    """With the sheet's column map a table is reports, without it none of all; a broken sheet is passed over here."""
    content = b"Box,Sent,Key\nL1,2026-03-31T08:05:00Z,1\n"
    assert said(content, **{"job.toml": SHEET + MAP})["kind"] == "reports"
    assert said(content, **{"job.toml": "["})["ok"] is False
    assert said(b"t,red\n0,12.1\n1,12.2\n", **{"job.toml": "["})["kind"] == "recording"


def test_refusals_have_the_shape_of_all() -> None:
    """A file that is none of all, and a question that is none."""
    assert "none of them" in str(said(b"hello\nyou\n")["error"])
    assert json.loads(opened_text("[", b""))["ok"] is False


def test_it_is_said_in_spanish_but_kept_as_it_is() -> None:
    """The refusal and the count in words; what the journal is to hold is the same in every language."""
    assert "entréguelo en la oficina" in str(said(b"LOGG\x90", language="es", voice="phone")["error"])
    lights = (DEMO / "truck-07" / "lights.csv").read_bytes()
    english, spanish = said(lights), said(lights, language="es")
    assert (english.pop("counted"), spanish.pop("counted")) == ("2 lights", "2 luces")
    assert english == spanish
