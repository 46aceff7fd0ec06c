"""The mount stage on a phone with no line: a place described, its sky predicted; the standard case in three touches."""

from __future__ import annotations

import json
import shutil
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.counted import Counted
from tests.journeys.engine_worker import asked_twice
from tests.journeys.test_probe import JOB
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import held_by_server, judged
from tests.samples.demo_jobs import DEMO
from tests.samples.signing import key_folder, sign_job

from backprobe.cases.hand_in_folder import hand_in_folder
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Role
from backprobe.job.places_door import places_text

HERE = {"latitude": 51.480123, "longitude": -0.010456, "accuracy": 12}
NEXT = "LY-2026-09"


@pytest.fixture
def outside(browser: Browser, yard: Yard) -> Iterator[Phone]:
    """Ines's phone, which knows where it is."""
    context = browser.new_context(**PHONE, permissions=["geolocation"], geolocation=HERE)
    held = Phone(context, yard)
    held.enrol()
    yield held
    context.close()
    assert held.faults == []


def to_mount(phone: Phone, job: str = JOB) -> Page:
    """The mount page of a job."""
    phone.page.goto(f"{phone.yard.url}#/job/{job}/mount")
    return phone.page


def pick(page: Page, question: str, given: str) -> None:
    """Touches one of several answers to a question, where it stands once the page stands still."""
    answer = page.get_by_role("group", name=question, exact=True).get_by_label(given)
    answer.click()
    expect(answer).to_be_checked()


def described_shelf(page: Page) -> None:
    """A shelf a hand below a roof of glass fibre, glass fibre before it, the rest metal."""
    page.get_by_label("Overhead shelf", exact=True).click()
    pick(page, "Straight above it", "glass fibre")
    pick(page, "How far above?", "a hand")
    pick(page, "In front of it", "glass fibre")


def last_of(texts: list[str], blobs: dict[str, bytes], file: str) -> str:
    """A sheet as it was written last."""
    bodies = [json.loads(text)["body"] for text in texts]
    said = [body.get("body", body) for body in bodies]
    return blobs[[body["sha256"] for body in said if body.get("file") == file][-1]].decode()


def test_a_place_is_described_and_its_sky_predicted_with_no_line(outside: Phone, built: Path) -> None:
    """Four touches describe a place; with the phone's own position its sky stands there, the same as Python's own."""
    outside.offline()
    page = to_mount(outside)
    described_shelf(page)
    expect(page.get_by_text("Where the vehicle stands is not known yet")).to_be_visible()
    page.get_by_role("button", name="Take this phone's position").click()
    expect(page.get_by_text("Where the vehicle stands is not known yet")).to_have_count(0)
    expect(page.get_by_role("group", name="The place that is taken")).to_contain_text("% of the day")
    expect(page.locator("figure.sky:not(.behind) svg")).to_be_visible()
    must_be_reachable(outside)
    page.get_by_role("button", name="Describe another place").click()
    page.get_by_label("Top of the dash", exact=True).click()
    pick(page, "The windscreen", "coated glass")
    ranked = page.get_by_role("group", name="The place that is taken").locator("label")
    expect(ranked.nth(1)).to_contain_text("fails")
    expect(ranked.nth(0)).to_contain_text("Overhead shelf")
    shown = page.locator("figure.sky .picture").inner_html()
    outside.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = held_by_server(outside)
    mount, job = last_of(texts, blobs, "mount.toml"), tomllib.loads(last_of(texts, blobs, "job.toml"))
    assert tomllib.loads(mount) == {
        "chosen": "Overhead shelf",
        "place": [
            {
                "name": "Overhead shelf", "sits": "shelf",
                "above": "fibreglass", "above_near": "hand", "ahead": "fibreglass",
            },
            {"name": "Top of the dash", "sits": "dash", "ahead": "coated_glass"},
        ],
    }  # fmt: skip
    assert job["place"] == {"lat": 51.480123, "lon": -0.010456, "accuracy_m": 12}
    assert job["mount"] == {"place": "Overhead shelf", "windscreen": False}
    question = json.dumps({"mount.toml": mount, "lat": 51.480123, "lon": -0.010456, "date": "2026-03-31"})
    said = places_text(question)
    (first, first_ms), (again, again_ms) = asked_twice(page, built, door="places", text=question)
    print(f"\nplaces in the worker: {first_ms} ms, once more {again_ms} ms")
    assert first == again == said
    same = "svg => { const held = document.createElement('div'); held.innerHTML = svg; return held.innerHTML; }"
    assert page.evaluate(same, json.loads(said)["svg"]) == shown
    found = {each["id"]: each for each in judged(texts, blobs)["findings"]}
    assert found["mount_sky"]["value"] == round(100 * json.loads(said)["places"][0]["fix_share"], 1)


@pytest.fixture
def second_of_its_type(outside: Phone, yard: Yard, tmp_path: Path) -> Phone:
    """The demo's truck 7 was finished with a mount sheet, under another number; Ines has the next of its type."""
    lead = Caller(role=Role.LEAD, organisation=yard.desk.server.yard.organisation)
    shutil.copytree(DEMO, tmp_path / "yard", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    folder = tmp_path / "yard" / "truck-07"
    sheet = (folder / "job.toml").read_text(encoding="utf-8")
    (folder / "job.toml").write_text(sheet.replace('"LY-2026-07"', '"LY-2026-06"'), encoding="utf-8")
    sign_job(folder, key_folder(tmp_path / "keys"))
    hand_in_folder(yard.desk.server.yard, lead, folder=folder)
    judge_again(yard.desk.server.yard, lead.organisation, job_id="LY-2026-06")
    yard.desk.give(NEXT, "LY 09", "LN2-00425")
    outside.page.reload()
    expect(outside.page.get_by_role("link", name="LY 09")).to_be_visible()
    return outside


def test_the_standard_case_takes_three_touches(second_of_its_type: Phone) -> None:
    """The place as in the last vehicle of the type, seven things seen of it, seven of the leads' way."""
    phone = second_of_its_type
    counted = Counted(phone.context)
    page = to_mount(phone, NEXT)
    page.reload()
    counted.begin()
    page.get_by_role("button", name="As in LY 07").click()
    expect(page.get_by_role("group", name="The place that is taken").locator("label.chosen")).to_contain_text(
        "on the overhead shelf"
    )
    for title in ("How it sits", "How the leads run"):
        section = page.locator("section", has=page.get_by_role("heading", name=title, exact=True))
        expect(section.locator(".given dt")).to_have_count(7)  # each thing is named above the button
        section.get_by_role("button", name="Yes to each of these").click()
        expect(section.locator(".given")).to_have_count(0)
    assert counted.touches == ["As in LY 07", "Yes to each of these", "Yes to each of these"]
    assert counted.characters == ""
    must_be_reachable(phone)
    expect(page.locator(".unsent")).to_have_text("All sent")
    texts, blobs = phone.yard.desk.entries(NEXT), {}
    client = phone.yard.desk.client
    for digest in {blob for text in texts for blob in json.loads(text)["blobs"]}:
        blobs[digest] = client.get(f"/api/blobs/{digest}").raise_for_status().content
    written = tomllib.loads(last_of(texts, blobs, "job.toml"))
    seen = dict.fromkeys(("solid", "reachable", "dry", "cool", "quiet", "tied", "clear"), True)
    assert written["mount"] == {"place": "on the overhead shelf", **seen}
    way = ("grommets", "sheathed", "held", "drip_loop", "clear_of_heat", "clear_of_fuel", "clear_of_moving")
    assert written["route"] == dict.fromkeys(way, True)
    assert last_of(texts, blobs, "mount.toml").count("[[place.part]]") == 6
