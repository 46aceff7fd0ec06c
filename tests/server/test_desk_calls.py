"""The desk sees all jobs, makes and gives them, and decides on what is in quarantine."""

from __future__ import annotations

import hashlib

import httpx
import pytest
from tests.samples.demo_jobs import DEMO, demo_job
from tests.samples.journals import Phone
from tests.samples.served import Server
from tests.samples.sheets import job_sheet

UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")


def made(desk: httpx.Client, job: str, **named: str) -> httpx.Response:
    """A new job from the desk."""
    return desk.post("/api/desk/jobs", json={"job.toml": job_sheet(job, **named), "unit.toml": UNIT})


def test_a_new_job_reaches_the_phone_it_is_given_to(server: Server, desk: httpx.Client, phone: httpx.Client) -> None:
    """Made at the desk, given to Ines: on her phone with its sheets; its unit is taken for it."""
    assert made(desk, "LY/01", serial="LN2-1").json() == {"id": "LY/01"}
    assert made(desk, "LY/01").json()["code"] == "exists"
    assert phone.get("/api/day").json()["jobs"] == []
    [ines] = desk.get("/api/desk/people").json()["people"]
    answer = desk.post("/api/desk/jobs/LY%2F01/assign", json={"people": [ines["id"]]})
    assert answer.status_code == 200
    day = phone.get("/api/day").json()
    [job] = day["jobs"]
    assert (job["id"], job["name"], job["state"]) == ("LY/01", "LY 01", "new")
    assert job["files"] == {"job.toml": job_sheet("LY/01", serial="LN2-1"), "unit.toml": UNIT}
    assert day["serials"] == [{"serial": "LN2-1", "job": "LY/01", "vehicle": "LY 01"}]
    kinds = {entry["text"].split('"kind":"')[1].split('"')[0] for entry in phone.get("/api/entries").json()["entries"]}
    assert kinds == {"job", "unit_sheet", "unit_claimed"}


def test_a_unit_planned_twice_is_a_finding_that_fails(desk: httpx.Client) -> None:
    """And that job stands first in the list."""
    made(desk, "LY-01", serial="LN2-1")
    made(desk, "LY-02", serial="LN2-1", plate="LY 02")
    page = desk.get("/api/desk/jobs").json()
    assert [(row["id"], row["verdict"]) for row in page["jobs"]] == [("LY-02", "fails"), ("LY-01", "open")]
    findings = desk.get("/api/desk/jobs/LY-02").json()["answer"]["findings"]
    [elsewhere] = [finding for finding in findings if finding["id"] == "unit_elsewhere"]
    assert (elsewhere["verdict"], elsewhere["because"]) == (
        "fails",
        "this serial number is in another vehicle: job LY-01",
    )


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_desk_speaks_of_pages(desk: httpx.Client, language: str) -> None:
    """A job not begun names no file and no command, in the list and on its own page."""
    made(desk, "LY-01")
    [row] = desk.get("/api/desk/jobs", params={"language": language}).json()["jobs"]
    shown = desk.get("/api/desk/jobs/LY-01", params={"language": language}).json()["answer"]
    said = [row["next"], shown["next"], *(finding["next"] or "" for finding in shown["findings"])]
    assert [each for each in said if ".toml" in each or ".csv" in each or "backprobe " in each] == []


@pytest.mark.parametrize(
    ("sheet", "code"),
    [("nonsense", "unreadable"), ("[vehicle]\nsystem_V = 13\n", "unreadable"), ('[unit]\nsheet = "u"\n', "unreadable")],
)
def test_a_sheet_that_cannot_be_read_makes_no_job(desk: httpx.Client, sheet: str, code: str) -> None:
    """The place of the fault comes back."""
    answer = desk.post("/api/desk/jobs", json={"job.toml": sheet, "unit.toml": UNIT})
    assert (answer.status_code, answer.json()["code"]) == (422, code)
    assert answer.json()["place"]["file"] == "job.toml"
    assert desk.get("/api/desk/jobs").json()["jobs"] == []


def test_one_job_with_everything(desk: httpx.Client, phone: httpx.Client, tmp_path) -> None:
    """The demo's job: judged, drawn, with its photos small and whole, and who sent what."""
    job = demo_job(tmp_path, "truck-07")
    for sha256, content in job.files.items():
        phone.put(f"/api/blobs/{sha256}", content=content)
    phone.post("/api/entries", json={"entries": job.texts})
    found = desk.get(f"/api/desk/jobs/{job.id}").json()
    assert found["fault"] is None
    assert found["job"]["verdict"] == found["answer"]["verdict"]
    assert found["answer"]["job"] == job.id
    assert set(found["drawings"]) >= {"wiring", "crank"}
    assert all(drawing["svg"].startswith("<svg") and drawing["alt"] for drawing in found["drawings"].values())
    limited = [str(at) for at, finding in enumerate(found["answer"]["findings"]) if finding["limit"]]
    assert list(found["bars"]) == limited
    assert {photo["kept"] for photo in found["photos"]} == {True}
    assert len(found["photos"]) == 3
    photo = found["photos"][0]["sha256"]
    assert desk.get(f"/api/desk/blobs/{photo}").content == job.files[photo]
    assert desk.get(f"/api/desk/blobs/{photo}", params={"size": "thumb"}).headers["content-type"] == "image/jpeg"
    assert {entry["person"] for entry in found["entries"] if entry["device"] == "folder"} == {"Ines Okafor"}
    assert found["faults"] == []
    assert desk.get("/api/desk/jobs/nothing").json()["code"] == "not_found"


def test_the_list_is_searched_and_read_page_by_page(desk: httpx.Client) -> None:
    """Five jobs in pages of two; by words of plate and id."""
    for number in range(5):
        made(desk, f"LY-{number}", plate=f"AB {number}")
    seen: list[str] = []
    params: dict[str, object] = {"limit": 2}
    while True:
        page = desk.get("/api/desk/jobs", params=params).json()
        seen += [row["id"] for row in page["jobs"]]
        if not page["more"]:
            break
        params["after"] = page["after"]
    assert sorted(seen) == [f"LY-{number}" for number in range(5)]
    assert len(seen) == 5
    assert page["counts"] == {"new": 5}
    assert [row["id"] for row in desk.get("/api/desk/jobs", params={"q": "ab 3"}).json()["jobs"]] == ["LY-3"]
    assert desk.get("/api/desk/jobs", params={"state": "proven"}).json()["jobs"] == []
    for after in ("x", "[]", "[1,2]", '[1,2,"a\\u0000"]', "[1e400,1,1]", f'[{2**70},0,"a"]'):
        assert desk.get("/api/desk/jobs", params={"after": after}).json()["code"] == "request"


def test_the_lead_takes_in_what_a_withdrawn_phone_held(server: Server, desk: httpx.Client, phone: httpx.Client) -> None:
    """Entry and file were in quarantine; taken in, the job is there and its file can be seen."""
    content = b"time,V\n0,12.6\n"
    sha256 = hashlib.sha256(content).hexdigest()
    [row] = desk.get("/api/desk/phones").json()["phones"]
    assert desk.post(f"/api/desk/phones/{row['id']}/withdraw").json()["withdrawn"]
    device = Phone()
    body = {"file": "recordings/a.csv", "sha256": sha256, "bytes": len(content), "stored": True}
    texts = [device.say("recording", body, blobs=(sha256,)).raw.decode(), device.reads("Red", "on", "1").raw.decode()]
    phone.put(f"/api/blobs/{sha256}", content=content)
    states = {each["state"] for each in phone.post("/api/entries", json={"entries": texts}).json()["results"]}
    assert states == {"quarantined"}
    assert desk.get("/api/desk/jobs").json()["jobs"] == []
    items = desk.get("/api/desk/quarantine").json()["items"]
    assert [item["text"] for item in items] == texts
    assert {(item["code"], item["phone"]) for item in items} == {("phone_withdrawn", "phone-a")}
    assert desk.post(f"/api/desk/quarantine/{items[0]['number']}", json={"decision": "take"}).status_code == 200
    assert desk.post(f"/api/desk/quarantine/{items[1]['number']}", json={"decision": "leave"}).status_code == 200
    again = desk.post(f"/api/desk/quarantine/{items[1]['number']}", json={"decision": "take"})
    assert again.json()["code"] == "not_found"
    assert desk.get("/api/desk/quarantine").json()["items"] == []
    found = desk.get("/api/desk/jobs/job-7").json()
    assert [entry["kind"] for entry in found["entries"]] == ["recording"]
    assert desk.get(f"/api/desk/blobs/{sha256}").content == content


def test_what_is_no_entry_can_only_be_left_out(desk: httpx.Client, phone: httpx.Client) -> None:
    """Taking it in is refused, and it stays in the list."""
    phone.post("/api/entries", json={"entries": ["no entry"]})
    [item] = desk.get("/api/desk/quarantine").json()["items"]
    answer = desk.post(f"/api/desk/quarantine/{item['number']}", json={"decision": "take"})
    assert (answer.status_code, answer.json()["code"]) == (422, "journal")
    assert len(desk.get("/api/desk/quarantine").json()["items"]) == 1


def test_a_photo_is_erased_on_request(desk: httpx.Client, phone: httpx.Client, tmp_path) -> None:
    """From the desk: gone for desk and phone; the job is shown without it."""
    job = demo_job(tmp_path, "truck-07")
    for sha256, content in job.files.items():
        phone.put(f"/api/blobs/{sha256}", content=content)
    phone.post("/api/entries", json={"entries": job.texts})
    photo = desk.get(f"/api/desk/jobs/{job.id}").json()["photos"][0]["sha256"]
    body = {"blobs": [photo], "why": "the person asked for it"}
    assert desk.post(f"/api/desk/jobs/{job.id}/erase", json=body).json() == {"erased": 1}
    assert desk.get(f"/api/desk/blobs/{photo}").json()["code"] == "not_found"
    answer = phone.put(f"/api/blobs/{photo}", content=job.files[photo])
    assert (answer.status_code, answer.json()["code"]) == (410, "erased")
    shown = {each["sha256"]: each["kept"] for each in desk.get(f"/api/desk/jobs/{job.id}").json()["photos"]}
    assert shown[photo] is False


def test_two_serials_are_decided_between(server: Server, desk: httpx.Client, phone: httpx.Client) -> None:
    """Open at first, with both values; decided, there is one; half a decision is refused."""
    phone.post("/api/entries", json={"entries": [Phone().claims("serial", "LN2-1").raw.decode()]})
    with server.phone("Marta", device="phone-b") as other:
        claim = Phone("phone-b", ids=50).claims("serial", "LN2-2")
        other.post("/api/entries", json={"entries": [claim.raw.decode()]})
    asked = desk.get("/api/desk/jobs/job-7").json()["to_decide"]
    assert asked == {"slots": [{"name": "serial", "values": ["LN2-1", "LN2-2"]}], "disputes": []}
    half = desk.post("/api/desk/jobs/job-7/decide", json={"slot": "serial"})
    assert (half.status_code, half.json()["code"]) == (422, "request")
    done = desk.post("/api/desk/jobs/job-7/decide", json={"slot": "serial", "value": "LN2-2"})
    assert done.json() == {"entries": 1}
    assert desk.get("/api/desk/jobs/job-7").json()["to_decide"] == {"slots": [], "disputes": []}


def test_a_unit_is_moved_to_another_vehicle(desk: httpx.Client) -> None:
    """Planned twice, the second job fails; let go of at the desk, it has the unit."""
    made(desk, "LY-01", serial="LN2-1")
    made(desk, "LY-02", serial="LN2-1", plate="LY 02")
    assert desk.post("/api/desk/units/release", json={"serial": "LN2-1"}).json() == {"job": "LY-01"}
    findings = desk.get("/api/desk/jobs/LY-02").json()["answer"]["findings"]
    assert [finding for finding in findings if finding["id"] == "unit_elsewhere"] == []
    assert desk.post("/api/desk/units/release", json={"serial": "none"}).json()["code"] == "not_found"
