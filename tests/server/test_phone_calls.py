"""Phones enrol, hand in, fetch, and are turned away where they must be."""

from __future__ import annotations

import httpx
import pytest
from tests.samples.demo_jobs import demo_job
from tests.samples.journals import JOB, Phone
from tests.samples.served import Server

from backprobe.cases.enrol import withdraw
from backprobe.store.people import phones


def said(response: httpx.Response) -> tuple[int, str]:
    """Status and code of a refusal in the house's shape."""
    answer = response.json()
    assert answer["ok"] is False
    assert answer["error"]
    return response.status_code, answer["code"]


def test_a_phone_enrols_once_by_a_code(server: Server) -> None:
    """The answer has all the phone needs; the token is not in the store; the code is used up."""
    code = server.code(server.person("Ines Okafor"))
    body = {"code": f" {code.lower()} ", "device": "phone-a", "label": "Ines's phone"}
    with server.client() as client:
        first = client.post("/api/enrol", json=body)
        assert first.status_code == 200
        answer = first.json()
        assert set(answer) == {"token", "device", "organisation", "person", "server_time"}
        assert answer["person"] | {"id": ""} == {"id": "", "name": "Ines Okafor", "language": "es", "units": "us"}
        assert answer["organisation"] == {"id": "home", "name": "Backprobe"}
        assert said(client.post("/api/enrol", json=body)) == (403, "enrolment_code")
        day = client.get("/api/day", headers={"Authorization": f"Bearer {answer['token']}"})
        said_today = day.json()
        assert set(said_today.pop("marks")) == {"serials", "usual", "corners"}
        assert said_today | {"server_time": ""} == {
            "server_time": "",
            "jobs": [],
            "serials": [],
            "usual": [],
            "corners": None,
        }
    raw = (server.running.settings.data / "backprobe.sqlite3").read_bytes()
    raw += (server.running.settings.data / "backprobe.sqlite3-wal").read_bytes()
    assert answer["token"].encode() not in raw
    assert code.encode() not in raw


def test_the_same_device_goes_on_and_nobody_takes_it_over(server: Server) -> None:
    """Enrolled again for the same person its old token ends; for another person it is refused."""
    ines, marta = server.person("Ines"), server.person("Marta")
    with server.client() as client:
        tokens = [
            client.post("/api/enrol", json={"code": server.code(ines), "device": "phone-a"}).json()["token"]
            for _ in range(2)
        ]
        states = [client.get("/api/day", headers={"Authorization": f"Bearer {token}"}).status_code for token in tokens]
        assert states == [401, 200]
        other = client.post("/api/enrol", json={"code": server.code(marta), "device": "phone-a"})
        assert said(other) == (409, "device_taken")


@pytest.mark.parametrize("device", ["folder", "server", "key-0011", "Phone", "a b", "../a", "-a"])
def test_some_names_are_not_for_phones(server: Server, device: str) -> None:
    """And the code is not used up by the attempt."""
    code = server.code(server.person("Ines"))
    with server.client() as client:
        assert said(client.post("/api/enrol", json={"code": code, "device": device})) == (422, "request")
        assert client.post("/api/enrol", json={"code": code, "device": "phone-a"}).status_code == 200


def test_guessing_codes_is_slowed_down(server: Server) -> None:
    """After 20 tries the 21st is told when to come again."""
    with server.client() as client:
        body = {"code": "WRONG", "device": "phone-a"}
        states = [client.post("/api/enrol", json=body).status_code for _ in range(20)]
        late = client.post("/api/enrol", json=body)
    assert states == [403] * 20
    assert said(late) == (429, "too_many")
    assert 1 <= int(late.headers["retry-after"]) <= 15


def test_entries_go_in_and_come_back(phone: httpx.Client) -> None:
    """Byte for byte, with cursors; sent again they are known."""
    device = Phone()
    sent = [device.reads("Red", "on", f"12.{n}").raw.decode() for n in range(3)]
    first, again = (phone.post("/api/entries", json={"entries": sent}).json() for _ in range(2))
    assert [each["state"] for each in first["results"]] == ["kept"] * 3
    assert [each["state"] for each in again["results"]] == ["known"] * 3
    assert first["cursor"] == again["cursor"] == 3
    page = phone.get("/api/entries", params={"after": 1, "limit": 1, "job": JOB}).json()
    assert (page["cursor"], page["more"]) == (2, True)
    assert [(each["cursor"], each["text"]) for each in page["entries"]] == [(2, sent[1])]
    assert phone.get("/api/entries", params={"job": "a\0b"}).json()["entries"] == []


def test_the_day_holds_the_jobs_with_their_sheets(server: Server, phone: httpx.Client, tmp_path) -> None:
    """The demo's job: its vehicle, place and unit, its sheets to the letter, its unit among those in vehicles."""
    job = demo_job(tmp_path, "truck-07")
    for sha256, content in job.files.items():
        assert phone.put(f"/api/blobs/{sha256}", content=content).status_code == 201
    answer = phone.post("/api/entries", json={"entries": job.texts}).json()
    assert {each["state"] for each in answer["results"]} == {"kept"}
    day = phone.get("/api/day").json()
    [found] = day["jobs"]
    assert found["id"] == job.id
    assert found["name"] == "LY 07"
    assert found["vehicle"]["vin"] == "5ZLDR7HV5KR200417"
    assert found["vehicle"]["type"] == "Harrow & Vale Drover 7 2019"
    assert found["unit"]["serial"] == "LN2-00417"
    assert found["cursor"] == answer["cursor"]
    assert found["said"] == {
        "verdict": "holds",
        "fails": 0,
        "open": 1,  # nobody has signed it
        "stage": "hand over",
        "cursor": answer["cursor"],
    }
    assert found["files"]["job.toml"].encode() == (job.folder / "job.toml").read_bytes()
    assert set(found["files"]) == {"job.toml", "unit.toml", "walkround.toml", "mount.toml"}
    assert day["serials"] == [{"serial": "LN2-00417", "job": job.id, "vehicle": "LY 07"}]
    with server.phone("Marta", device="phone-b") as other:
        assert other.get("/api/day").json()["jobs"] == []
        assert other.get("/api/entries", params={"job": job.id}).json()["entries"] == []
        assert other.get("/api/day").json()["serials"] == day["serials"]


def test_a_withdrawn_phone_may_still_hand_in(server: Server, phone: httpx.Client) -> None:
    """Reading is refused, entries and files go to quarantine."""
    with server.yard.store.reading() as connection:
        [row] = phones(connection, server.yard.organisation)
    withdraw(server.yard, server.lead, phone_id=row["id"])
    entry = Phone().reads("Red", "on", "12.3").raw.decode()
    result = phone.post("/api/entries", json={"entries": [entry]}).json()["results"][0]
    assert (result["state"], result["code"]) == ("quarantined", "phone_withdrawn")
    for path in ("/api/day", "/api/entries"):
        assert said(phone.get(path)) == (403, "phone_withdrawn")


def test_who_is_not_enrolled_is_told_so(server: Server) -> None:
    """Without a token, and with one that is not known."""
    with server.client() as client:
        assert said(client.get("/api/day")) == (401, "not_enrolled")
        assert said(client.get("/api/day", headers={"Authorization": "Bearer nonsense"})) == (401, "not_enrolled")


@pytest.mark.parametrize(
    "body", [b"", b"{", b"[]", b'{"entries": 7}', b'{"entries": [7]}', b'{"entries": [], "more": 1}', b"\xff"]
)
def test_a_body_that_makes_no_sense_is_said(phone: httpx.Client, body: bytes) -> None:
    """With the place of the fault."""
    answer = phone.post("/api/entries", content=body, headers={"Content-Type": "application/json"})
    assert said(answer) in [(422, "request"), (400, "request")]
