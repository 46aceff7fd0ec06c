"""A collector pushes by its own token, as JSON lines or CSV."""

from __future__ import annotations

from collections.abc import Iterator

import httpx
import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.served import Server

from backprobe.cases import reports_in
from backprobe.server.report_calls import MOST_BYTES

CSV = {"Content-Type": "text/csv; charset=utf-8"}
ROW = b"unit_id,t,supply_V\nLN2-1,2026-03-31T08:06:00Z,12.61\n"


@pytest.fixture
def collector(server: Server, desk: httpx.Client) -> Iterator[httpx.Client]:
    """A client with a feed's token."""
    token = desk.post("/api/desk/feeds", json={"label": "collector"}).json()["token"]
    with server.client(Authorization=f"Bearer {token}") as client:
        yield client


def test_a_push_reaches_the_phone(collector: httpx.Client, phone: httpx.Client) -> None:
    """The phone claims the unit, the collector pushes, the phone pulls an entry and its file."""
    phone.post("/api/entries", json={"entries": [Phone().claims("serial", "LN2-1").raw.decode()]})
    answer = collector.post("/api/reports", content=ROW, headers=CSV)
    assert (answer.status_code, answer.json()) == (200, {"kept": 1, "known": 0, "skipped": 0, "jobs": [JOB]})
    last = phone.get("/api/entries", params={"job": JOB}).json()["entries"][-1]["text"]
    assert '"device":"server"' in last
    sha256 = last.split('"sha256":"')[1][:64]
    assert b"12.61" in phone.get(f"/api/blobs/{sha256}").content


@pytest.mark.parametrize(
    ("content", "headers", "params", "said"),
    [
        (b'{"unit_id": "L", "t": "2026-03-31T08:06:00Z"}\n', {"Content-Type": "application/x-ndjson"}, {}, (200, None)),
        (b"Dev,When\nL,2026-03-31T08:06:00Z\n", CSV, {"columns": "unit_id=Dev,t=When"}, (200, None)),
        (b"Dev,When\nL,2026-03-31T08:06:00Z\n", CSV, {}, (422, "unreadable")),
        (b"", CSV, {}, (422, "unreadable")),
        (ROW, CSV, {"columns": "nonsense"}, (422, "option")),
        (ROW, {"Content-Type": "application/pdf"}, {}, (422, "request")),
        (b"\xff\xfe\x00\xd8", CSV, {}, (422, "unreadable")),
    ],
)
def test_forms_of_a_push(
    collector: httpx.Client, content: bytes, headers: dict[str, str], params: dict[str, str], said: tuple[int, str]
) -> None:
    """Both forms, other names by the call's own map; what cannot be read is refused."""
    answer = collector.post("/api/reports", content=content, headers=headers, params=params)
    assert (answer.status_code, answer.json().get("code")) == said


def test_a_phone_is_no_collector(server: Server, phone: httpx.Client) -> None:
    """Nor is nobody."""
    assert phone.post("/api/reports", content=ROW, headers=CSV).json()["code"] == "not_enrolled"
    with server.client() as client:
        assert client.post("/api/reports", content=ROW, headers=CSV).json()["code"] == "not_enrolled"


def test_what_is_too_much_is_refused_in_words(
    server: Server, collector: httpx.Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Too large a push: 413. One more than a token has a day: 429, and when to come again."""
    large = collector.post("/api/reports", content=b"x" * (MOST_BYTES + 1), headers=CSV)
    assert (large.status_code, large.json()["code"]) == (413, "too_large")
    monkeypatch.setattr(reports_in, "MOST_PUSHES_A_DAY", 1)
    assert collector.post("/api/reports", content=ROW, headers=CSV).status_code == 200
    late = collector.post("/api/reports", content=ROW, headers=CSV)
    assert (late.status_code, late.json()["code"]) == (429, "too_many")
    assert 0 < int(late.headers["retry-after"]) <= 86_400
    assert "push more reports at a time" in late.json()["error"]
