"""The server's sentences in the language that a page accepts first."""

from __future__ import annotations

import base64

import httpx
import pytest
from tests.samples.demo_jobs import DEMO

from backprobe.server.spoken import say_of
from backprobe.tongues.speaker import plain

SPANISH = {"Accept-Language": "es"}
ODD = "plate,vin,unit_serial\nLY 07,5ZLDR7HV5KR200418,LN2-1\nLY 07,,LN2-2\n"
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
HERE = {"file": "trucks.csv", "unit.toml": UNIT, "system_V": 12}


@pytest.mark.parametrize("accepted", ["", "en", "en-US, es;q=0.5", "fi", "*", "esperanto"])
def test_other_languages_get_english(accepted: str) -> None:
    """Only Spanish put first is Spanish."""
    assert say_of({"accept-language": accepted}) is plain


def test_a_refusal_is_said_in_spanish(desk: httpx.Client) -> None:
    """Of a job that is not there, of a call that is not there, of a code that is wrong; the codes stay."""
    answers = [
        desk.get("/api/desk/jobs/none/record.pdf", headers=SPANISH),
        desk.get("/api/none", headers=SPANISH),
        desk.post("/api/enrol", json={"code": "X", "device": "phone-a", "label": ""}, headers=SPANISH),
    ]
    assert [(answer.json()["code"], answer.json()["error"]) for answer in answers] == [
        ("not_found", "no hay tal trabajo"),
        ("not_found", "no hay tal llamada"),
        ("enrolment_code", "este código es erróneo, caducó o ya se usó; pida otro en la oficina"),
    ]


def test_a_roster_is_looked_at_in_spanish(desk: httpx.Client) -> None:
    """What is expected of a bad cell, and why nothing was taken; rows, columns and texts stay as they are."""
    call = {"content": ODD.encode(), "headers": {**SPANISH, "Content-Type": "text/csv"}}
    shown, plainly = (
        desk.post(
            "/api/desk/rosters/preview?file=trucks.csv", **{**call, "headers": {**call["headers"], **more}}
        ).json()
        for more in ({}, {"Accept-Language": "en"})
    )
    cells = [("bad", cell) for cell in shown["bad"]] + [("doubts", cell) for cell in shown["doubts"]]
    assert cells
    for (kind, cell), other in zip(cells, [*plainly["bad"], *plainly["doubts"]], strict=True):
        assert {**cell, "expected": ""} == {**other, "expected": ""}, kind
        assert cell["expected"] != other["expected"]
    refused = desk.post("/api/desk/rosters/import?file=trucks.csv", **call)
    assert refused.status_code == 422
    assert "así que no se tomó nada" in refused.json()["error"]
    content = base64.b64encode(ODD.encode()).decode()
    again = desk.post("/api/desk/rosters/import-with-jobs", json={**HERE, "content": content}, headers=SPANISH)
    assert "así que no se tomó nada" in again.json()["error"]
