"""What a phone has already does not go over the line again."""

from __future__ import annotations

import httpx
from tests.samples.journals import JOB, Phone
from tests.samples.served import Server

from backprobe.server.unchanged import mark_of

MOST_BYTES = 600  # of a 304 with all its headers


def size(answer: httpx.Response) -> int:
    """The bytes of status, headers and body."""
    lines = [*(f"{name}: {value}" for name, value in answer.headers.items()), f"HTTP/1.1 {answer.status_code}"]
    return len("\r\n".join(lines)) + len(answer.content)


def test_an_unchanged_day_costs_few_bytes(phone: httpx.Client) -> None:
    """304 without a body, with the time; a new entry ends that."""
    device = Phone()
    phone.post("/api/entries", json={"entries": [device.claims("serial", "LN2-1").raw.decode()]})
    first = phone.get("/api/day")
    again = phone.get("/api/day", headers={"If-None-Match": first.headers["etag"]})
    assert (first.status_code, again.status_code, again.content) == (200, 304, b"")
    assert size(again) < MOST_BYTES
    assert again.headers["etag"] == first.headers["etag"]
    assert again.headers["date"].endswith("GMT")
    phone.post("/api/entries", json={"entries": [device.reads("Red", "on", "12.3").raw.decode()]})
    later = phone.get("/api/day", headers={"If-None-Match": first.headers["etag"]})
    assert later.status_code == 200
    assert later.headers["etag"] != first.headers["etag"]


def test_what_another_phone_does_to_a_unit_is_told(server: Server, phone: httpx.Client) -> None:
    """A unit goes into a vehicle elsewhere: the day of a phone with no job of its own changes, too."""
    before = phone.get("/api/day")
    with server.phone("Marta", device="phone-b") as other:
        claim = Phone("phone-b", job="job-b").claims("serial", "LN2-7")
        other.post("/api/entries", json={"entries": [claim.raw.decode()]})
    after = phone.get("/api/day", headers={"If-None-Match": before.headers["etag"]})
    assert after.status_code == 200
    assert [each["serial"] for each in after.json()["serials"]] == ["LN2-7"]


def test_parts_that_are_known_are_left_out(phone: httpx.Client) -> None:
    """After a reading the jobs come, not the units; asked with the same marks the whole has the same mark."""
    device = Phone()
    phone.post("/api/entries", json={"entries": [device.claims("serial", "LN2-1").raw.decode()]})
    marks = phone.get("/api/day").json()["marks"]
    phone.post("/api/entries", json={"entries": [device.reads("Red", "on", "12.3").raw.decode()]})
    some = phone.get("/api/day", params=marks)
    every = phone.get("/api/day")
    assert set(some.json()) == {"server_time", "jobs", "marks"}
    assert [job["id"] for job in some.json()["jobs"]] == [JOB]
    assert set(every.json()) == {"server_time", "jobs", "serials", "usual", "corners", "marks"}
    assert some.headers["etag"] == every.headers["etag"]
    assert set(phone.get("/api/day", params={**marks, "serials": "other"}).json()) == {*some.json(), "serials"}


def test_a_mark_is_of_what_is_said() -> None:
    """Not of the order of its names; another text has another mark."""
    assert mark_of({"a": "é", "b": 1}) == mark_of({"b": 1, "a": "é"})
    assert mark_of("a") != mark_of("b")
