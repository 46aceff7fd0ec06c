"""Logs opened on a phone with no line: told by what they hold, judged there, and judged alike by the server."""

from __future__ import annotations

import base64
import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.engine_worker import asked_with
from tests.journeys.test_probe import JOB
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import held_by_server, judged
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.demo_jobs import DEMO
from tests.samples.receiver_world import World, log_lines

from backprobe.job.opened_door import opened_text

BLOCKED = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(30.0, 150.0, 70.0, 20.0))


@pytest.fixture
def receiver_log(tmp_path: Path) -> Path:
    """Twenty minutes of a receiver with metal on one side."""
    path = tmp_path / "yard 3.txt"
    path.write_bytes("\r\n".join(log_lines(BLOCKED)).encode())
    return path


@pytest.fixture
def bus_log(tmp_path: Path) -> Path:
    """A key cycle as candump writes it."""
    path = tmp_path / "start.log"
    path.write_text("\n".join(aligned(key_cycle())) + "\n", encoding="utf-8")
    return path


def to_stage(phone: Phone, stage: str) -> Page:
    """A stage's page of the job."""
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/{stage}")
    expect(phone.page.get_by_role("heading", level=1)).to_contain_text("LY 07")
    if stage == "prove":
        phone.page.locator("details", has=phone.page.locator(".files")).locator("summary").first.click()
    return phone.page


def open_file(page: Page, path: Path) -> None:
    """Opens a file."""
    page.get_by_label("Open a file").set_input_files(path)


def test_a_receivers_log_is_judged_with_no_line(phone: Phone, receiver_log: Path) -> None:
    """What was heard stands on the mount page with its sky; the server says the same, and has the same bytes."""
    phone.offline()
    page = to_stage(phone, "mount")
    open_file(page, receiver_log)
    expect(page.get_by_role("status").filter(has_text="taken for a receiver's log")).to_be_visible()
    expect(page.locator(".files > ul:not(.findings) li")).to_have_text("nmea/yard 3.txt")
    expect(page.locator(".findings").first).to_contain_text("blocked", ignore_case=True)
    expect(page.locator("figure .picture svg").first).to_be_visible()
    must_be_reachable(phone)
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    [body] = [entry["body"] for entry in map(json.loads, texts) if entry["kind"] == "reception"]
    assert blobs[body["sha256"]] == receiver_log.read_bytes()
    told = json.loads(opened_text('{"file": "yard 3.txt"}', receiver_log.read_bytes()))
    assert body == {
        "file": "nmea/yard 3.txt",
        "sha256": body["sha256"],
        "bytes": len(blobs[body["sha256"]]),
        **told["more"],
    }
    said = {each["id"]: each for each in judged(texts, blobs)["findings"]}
    assert said["reception_blocked"]["verdict"] in ("thin", "fails")
    expect(page.locator(".findings").first).to_contain_text(said["reception_blocked"]["because"])


def test_a_bus_log_is_judged_with_no_line(phone: Phone, bus_log: Path) -> None:
    """A candump text opened at the proof: what it came to stands there, and the server says the same as the phone."""
    phone.offline()
    page = to_stage(phone, "prove")
    open_file(page, bus_log)
    expect(page.get_by_role("status").filter(has_text="taken for a bus log")).to_be_visible()
    expect(page.locator(".files > ul:not(.findings) li")).to_have_text("bus/start.log")
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    found = {each["id"]: each for each in judged(texts, blobs)["findings"] if each["id"].startswith("bus_")}
    assert found
    for each in found.values():
        expect(page.locator(".files .findings")).to_contain_text(each["because"])


def test_lights_are_rows_and_are_put_right_by_opening_them_again(phone: Phone, tmp_path: Path) -> None:
    """Two lights; the file opened again with one pattern changed and one light gone: a correction and a withdrawal."""
    page = to_stage(phone, "prove")
    first, second = tmp_path / "a.csv", tmp_path / "b.csv"
    first.write_text("light,pattern,after_s\nnetwork,steady,41\npower,steady,2\n", encoding="utf-8")
    second.write_text("light,pattern,after_s\nnetwork,one flash a second,41\n", encoding="utf-8")
    said = page.get_by_role("status").filter(has_text="taken for what the lights showed")
    open_file(page, first)
    expect(said).to_contain_text("a.csv")
    open_file(page, second)
    expect(said).to_contain_text("b.csv")
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    entries = [json.loads(text) for text in texts]
    seen = [entry["body"]["light"] for entry in entries if entry["kind"] == "light_seen"]
    assert seen == ["network", "power"]
    [put_right] = [
        e["body"]["body"] for e in entries if e["kind"] == "correction" and e["body"]["kind"] == "light_seen"
    ]
    assert (put_right["light"], put_right["pattern"]) == ("network", "one flash a second")
    [gone] = [entry["body"]["entry"] for entry in entries if entry["kind"] == "withdrawn"]
    assert gone == [next(entry["id"] for entry in entries if entry["body"].get("light") == "power")]
    assert judged(texts, blobs)["ok"]


def test_what_cannot_be_kept_is_said_and_nothing_is_lost(phone: Phone, tmp_path: Path) -> None:
    """A BLF log goes to the desk, a letter is none of all; the page says so, and no entry was written."""
    page = to_stage(phone, "prove")
    blf, letter = tmp_path / "drive.blf", tmp_path / "letter.txt"
    blf.write_bytes(b"LOGG" + bytes(200))
    letter.write_text("dear all,\nsee you on Monday\n", encoding="utf-8")
    open_file(page, blf)
    expect(page.get_by_role("alert")).to_contain_text("form BLF: give it to the desk")
    open_file(page, letter)
    expect(page.get_by_role("alert")).to_contain_text("none of them")
    page.get_by_label("or paste the reports, headings first").fill("dear all, see you on Monday")
    page.get_by_role("button", name="Keep what was pasted").click()
    expect(page.get_by_role("alert")).to_contain_text("Not kept: reports, line 1")
    expect(page.get_by_label("or paste the reports, headings first")).to_have_value("dear all, see you on Monday")
    expect(page.locator(".files > ul:not(.findings) li")).to_have_count(0)
    expect(page.locator(".unsent")).to_have_text("All sent")
    kinds = {json.loads(text)["kind"] for text in phone.yard.desk.entries(JOB)}
    assert kinds <= {"job", "unit_sheet", "unit_claimed"}


def test_a_log_in_another_encoding_is_kept_to_the_byte(phone: Phone, tmp_path: Path) -> None:
    """A recording in Windows' code page with a degree sign: what is sent is what was opened, and it is judged alike."""
    crank = (DEMO / "truck-07" / "recordings" / "crank.csv").read_text(encoding="utf-8")
    path = tmp_path / "crank.csv"
    path.write_bytes(("# cab at 21 °C\r\n" + crank).encode("cp1252"))
    phone.offline()
    page = to_stage(phone, "probe")
    open_file(page, path)
    expect(page.locator(".files > ul:not(.findings) li")).to_have_text("recordings/crank.csv")
    expect(page.locator("figure")).to_contain_text("crank.csv: the supply while the starter turns")
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert path.read_bytes() in held_by_server(phone)[1].values()
    wide = tmp_path / "wide.csv"
    wide.write_bytes(crank.encode("utf-16"))
    open_file(page, wide)
    expect(page.locator(".files > ul:not(.findings) li")).to_have_count(2)


def test_the_worker_says_of_a_long_log_what_python_says(phone: Phone, built: Path) -> None:
    """4.5 MB of a receiver: the same bytes from the door in the browser's Python; how long it takes is printed."""
    lines = log_lines(World(seed=5, minutes=175, step_s=1))
    content = ("\r\n".join(lines) + "\r\n").encode()
    content = content[: content.rfind(b"\n", 0, 4_500_000) + 1]
    page = to_stage(phone, "mount")
    asked = '{"file": "long.nmea", "job.toml": null}'
    said, ms = asked_with(page, built, door="opened", text=asked, encoded=base64.b64encode(content).decode())
    print(f"\n{len(content) / 1e6:.2f} MB in the worker: {ms} ms")
    assert said == opened_text(asked, content)
