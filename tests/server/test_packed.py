"""Long answers are packed, short ones are not, and both say the same."""

from __future__ import annotations

import httpx
from tests.samples.journals import JOB, Phone

ROWS = 60


def test_a_long_answer_is_packed_for_who_takes_it(phone: httpx.Client) -> None:
    """60 entries: less than a third of the bytes on the way, the same texts; without gzip as they are."""
    device = Phone()
    sent = [device.reads("Red", "on", f"12.{n}").raw.decode() for n in range(ROWS)]
    phone.post("/api/entries", json={"entries": sent})
    answers = {}
    for encoding in ("gzip", "identity"):
        with phone.stream("GET", "/api/entries", headers={"Accept-Encoding": encoding}) as answer:
            raw = b"".join(answer.iter_raw())
            answers[encoding] = (answer.headers.get("content-encoding"), len(raw))
    assert answers["gzip"][0] == "gzip"
    assert answers["identity"][0] is None
    assert answers["gzip"][1] * 3 < answers["identity"][1]
    page = phone.get("/api/entries", params={"job": JOB})
    assert [each["text"] for each in page.json()["entries"]] == sent
    assert page.headers["vary"] == "Accept-Encoding"


def test_a_short_answer_is_not(phone: httpx.Client) -> None:
    """There is nothing to be won."""
    answer = phone.get("/api/entries")
    assert answer.json() == {"entries": [], "cursor": 0, "more": False}
    assert "content-encoding" not in answer.headers
