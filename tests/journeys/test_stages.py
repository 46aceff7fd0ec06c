"""The other stages on a phone with no line: written down, photographed, stamped; then judged alike by the server."""

from __future__ import annotations

import hashlib
import io
import json
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from playwright.sync_api import Locator, Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.test_probe import JOB
from tests.journeys.test_reach import must_be_reachable
from tests.samples.demo_jobs import DEMO
from tests.samples.prove_world import reports_text, world_of

from backprobe.job.journal import read_journal
from backprobe.job.journal_door import judge_journal_text

GPS_TAG, MAKER_TAG = 0x8825, 0x010F


def touch(target: Locator) -> None:
    """Touches one of several answers, and waits until it is kept."""
    target.click(force=True)
    expect(target).to_be_checked()


def answer(page: Page | Locator, question: str, given: str) -> None:
    """Answers one question: by a touch where there are two answers, else by typing."""
    group = page.get_by_role("group", name=question, exact=True)
    if given in ("yes", "no", "none"):
        touch(group.get_by_label(given, exact=True))
    else:
        line = page.get_by_label(question, exact=True).first
        line.fill(given)
        line.blur()


def unfold(page: Page | Locator) -> None:
    """Opens what is folded away because one touch would answer it, or because it is answered."""
    expect(page.locator("section h2").first).to_be_visible()
    shut = page.locator("details.single:not([open]) > summary")
    for _ in range(shut.count()):
        shut.first.click()


def held_by_server(phone: Phone) -> tuple[list[str], dict[str, bytes]]:
    """The job's entries and files as the server has them."""
    texts = phone.yard.desk.entries(JOB)
    digests = {blob for text in texts for blob in json.loads(text)["blobs"]}
    client = phone.yard.desk.client
    return texts, {each: client.get(f"/api/blobs/{each}").raise_for_status().content for each in digests}


def corrected(texts: list[str], blobs: dict[str, bytes]) -> str:
    """The sheet that the last correction put in another's place."""
    said = [entry["body"]["body"] for entry in map(json.loads, texts) if entry["kind"] == "correction"]
    return blobs[said[-1]["sha256"]].decode()


def judged(texts: list[str], blobs: dict[str, bytes]) -> dict[str, Any]:
    """What the engine in this Python says of what the server has."""
    readable = {name: content.decode() for name, content in blobs.items() if not content.startswith(b"\xff\xd8")}
    return dict(json.loads(judge_journal_text(json.dumps({"entries": texts, "blobs": readable, "voice": "phone"}))))


@pytest.fixture
def snapshot(tmp_path: Path) -> Path:
    """A photo as a camera makes it: larger than is kept, with the place where it was taken written beside it."""
    picture = Image.new("RGB", (3000, 2000), (120, 90, 60))
    exif = picture.getexif()
    exif[MAKER_TAG] = "Invented Cameras"
    exif.get_ifd(GPS_TAG)[2] = (52.0, 31.0, 0.0)
    picture.save(tmp_path / "snapshot.jpg", exif=exif)
    assert b"Invented Cameras" in (tmp_path / "snapshot.jpg").read_bytes()
    return tmp_path / "snapshot.jpg"


WALKROUND = [
    ("The work was allowed by", "Maud Linden"),
    ("A crank was allowed by", "Maud Linden"),
    ("VIN", "5ZLDR7HV5KR200417"),
    ("Plate", "LY 07"),
    ("Who holds the key", "Ines Okafor"),
    ("Serial number", "LN2-00417"),
    ("Is it activated?", "yes"),
    ("Lights that it shows", "none"),
    ("Odometer [km]", "184220"),
    ("Warning lamps that burn", "none"),
    ("Fault codes that stand", "none"),
    ("Electric or hybrid drive?", "no"),
    ("Restraint (airbag) wiring near the work?", "yes"),
    ("Two batteries?", "no"),
    ("A battery switch?", "no"),
    ("A dangerous-goods body?", "no"),
    ("A trailer?", "no"),
    ("A 48 V system?", "no"),
    ("Did you look for it?", "yes"),
]


def test_a_walkround_is_written_with_no_line(phone: Phone, snapshot: Path) -> None:
    """Nineteen answers and a photo, the page loaded anew in between; the server's side says the same of them."""
    phone.offline()
    page = phone.page
    page.get_by_role("link", name="LY 07").click()
    page.get_by_role("link", name="Walkround", exact=True).click()
    unfold(page)
    for question, given in WALKROUND[:8]:
        answer(page, question, given)
    page.reload()
    unfold(page)
    expect(page.get_by_label("The work was allowed by", exact=True)).to_have_value("Maud Linden")
    for question, given in WALKROUND[8:]:
        before_section = page.locator("section", has=page.get_by_role("heading", name="The vehicle before the work"))
        place = before_section if question in ("Warning lamps that burn", "Fault codes that stand") else page
        answer(place, question, given)
    page.locator(".photos input").first.set_input_files(snapshot)
    expect(page.locator(".photos img")).to_have_count(1)
    expect(page.locator(".findings")).to_contain_text("Restraint wiring near the work")
    must_be_reachable(phone)
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    assert read_journal(text.encode() for text in texts).faults == ()
    said = judged(texts, blobs)
    open_ones = {each["id"] for each in said["findings"] if each["stage"] == "walkround" and each["verdict"] == "open"}
    assert "hazard_restraint" in open_ones  # no procedure of the maker was named
    assert "authority" not in open_ones
    assert "Maud Linden" not in "".join(texts)  # names stand in files alone, so that they can be erased


def test_a_photo_is_made_anew_before_it_is_kept(phone: Phone, snapshot: Path) -> None:
    """At most 2,048 pixels a side, without what the camera wrote beside it; its name is the digest of what is sent."""
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{JOB}/walkround")
    page.locator(".photos input").first.set_input_files(snapshot)
    expect(page.locator(".photos img")).to_have_count(1)
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    entry = next(json.loads(text) for text in texts if json.loads(text)["kind"] == "photo")
    content = blobs[entry["body"]["sha256"]]
    assert hashlib.sha256(content).hexdigest() == entry["body"]["sha256"]
    assert b"Invented Cameras" not in content
    picture = Image.open(io.BytesIO(content))
    assert (max(picture.size), dict(picture.getexif())) == (2048, {})


def test_a_unit_that_is_elsewhere_is_caught_with_no_line(phone: Phone) -> None:
    """The serial of a unit that is in truck LY 12 by the day's list: said at once, the server cannot be asked."""
    phone.yard.desk.give("LY-2026-12", "LY 12", "LN2-00422")
    phone.page.reload()
    expect(phone.page.locator(".jobs li")).to_have_count(2)
    phone.offline()
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/walkround")
    answer(phone.page, "Serial number", "LN2-00422")
    expect(phone.page.get_by_role("alert")).to_contain_text("This unit is in LY 12 already")


def test_joints_and_mount_are_written_into_the_job_sheet(phone: Phone) -> None:
    """The wire meant for the supply and the sheet's fuse stand there by themselves; the rest of the sheet stays."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    page = phone.page
    page.get_by_role("button", name="About X12/4 RD").click()
    touch(page.get_by_role("dialog").get_by_label("supply", exact=True))
    page.get_by_role("button", name="Close").click()
    page.goto(f"{phone.yard.url}#/job/{JOB}/join")
    power = page.locator(".lead").first
    power.locator("summary").first.click()
    touch(power.get_by_label("crimped butt connector"))
    expect(power.get_by_label("Vehicle's wire")).to_have_value("X12/4 RD")
    expect(power.get_by_label("Fuse at the joint [A]")).to_have_value("3")
    expect(page.locator("figure svg")).to_be_visible()
    must_be_reachable(phone)
    page.goto(f"{phone.yard.url}#/job/{JOB}/mount")
    page.locator("section", has=page.get_by_role("heading", name="How it sits")).locator("summary").click()
    answer(page, "Held firmly?", "yes")
    must_be_reachable(phone)
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    written = corrected(texts, blobs)
    assert '[[joint]]\nlead = "power"\nwire = "X12/4 RD"\nfuse_A = 3\nmethod = "crimped_butt"\n' in written
    assert "[mount]\nsolid = true\n" in written
    assert 'maker = "Harrow & Vale"' in written
    assert judged(texts, blobs)["ok"]


def test_how_the_leads_run_is_said_on_the_phone(phone: Phone) -> None:
    """No grommet: written into the job sheet."""
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{JOB}/mount")
    page.locator("section", has=page.get_by_role("heading", name="How the leads run")).locator("summary").click()
    answer(page, "A grommet in every hole in sheet metal?", "no")
    must_be_reachable(phone)
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    assert "[route]\ngrommets = false\n" in corrected(texts, blobs)


def test_a_recording_is_opened_on_the_phone_and_judged_there(phone: Phone) -> None:
    """The crank of the demo's truck 7, opened with no line: its wires are known, and the crank has its margin."""
    phone.offline()
    page = phone.page
    phone.to_wires()
    page.get_by_label("Open a file").set_input_files(DEMO / "truck-07" / "recordings" / "crank.csv")
    expect(page.locator(".files li")).to_have_text("recordings/crank.csv")
    expect(page.locator("figure")).to_contain_text("crank.csv: the supply while the starter turns")
    must_be_reachable(phone)
    expect(page.get_by_role("radio", name="X12/4 RD")).to_have_count(1)
    page.get_by_role("link", name="Back").click()
    page.locator(".stage summary", has_text="Wires").click()
    expect(page.locator(".findings")).to_contain_text("X12/4 RD: while the engine cranks")
    expect(page.locator(".picture svg").first).to_be_visible()


def test_the_reports_of_a_unit_are_pasted(phone: Phone) -> None:
    """Turns of the key and reports that answer them, with no line: the proof is no longer without evidence."""
    pasted = reports_text(world_of(None, 7))
    phone.offline()
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{JOB}/prove")
    page.locator("summary", has_text="Something else happened").click()
    page.locator(".turns").get_by_role("button", name="key off", exact=True).click()
    expect(page.locator(".stamped li")).to_have_count(1)
    page.locator("details", has=page.locator(".files")).locator("summary").first.click()
    page.get_by_label("or paste the reports, headings first").fill(pasted)
    page.get_by_role("button", name="Keep what was pasted").click()
    expect(page.locator(".files li")).to_have_text("reports.csv")
    expect(page.locator(".findings")).not_to_contain_text("no reports.csv")
    must_be_reachable(phone)
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(phone)
    assert pasted.encode() in blobs.values()
    assert judged(texts, blobs)["ok"]


def test_what_the_phone_says_is_what_the_server_says(phone: Phone) -> None:
    """The one next thing to do on the phone, and the same from the engine in this Python with the server's entries."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "12.62")
    phone.page.get_by_role("link", name="Back").click()
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    expect(phone.page.locator(".next .do:not(.behind)")).to_be_visible()
    assert phone.page.locator(".next .do").text_content() == judged(*held_by_server(phone))["next"]
