"""The second walkround of a day: eight touches and ten characters, each touch on a button that names what it says."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator
from contextlib import suppress

import httpx
import pytest
import zxingcpp
from playwright.sync_api import Locator, Page, Playwright, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.counted import Counted
from tests.journeys.crew import Lead, vin_of
from tests.journeys.test_camera import Lens
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import answer, corrected, judged, unfold
from tests.journeys.trucks import SHEET
from tests.samples.demo_jobs import DEMO

FIRST, SECOND = "LY-2026-07", "LY-2026-12"
VIN, SERIAL = vin_of("200588"), "LN2-00422"
ASKS, ASK_MS = 75, 200
MOST_TOUCHES, MOST_CHARACTERS = 8, 10

# what the first vehicle of the day takes by hand: nobody can take it over yet
FIRST_BY_HAND = [
    ("The work was allowed by", "Maud Linden"),
    ("A crank was allowed by", "Maud Linden"),
    ("Firmware", "4.2.1"),
    ("Firmware wanted", "4.2.1"),
    ("Has it a battery of its own?", "yes"),
    ("Its own battery [V]", "3.94"),
    ("Lowest that its maker states [V]", "3.6"),
]


@pytest.fixture(scope="module")
def lens(playwright_: Playwright, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lens]:
    """A browser with a camera."""
    held = Lens(playwright_, tmp_path_factory.mktemp("lens") / "seen.mjpeg")
    yield held
    held.browser.close()


@pytest.fixture
def phone(lens: Lens, yard: Yard) -> Iterator[Phone]:
    """Ines's phone with two trucks of Linden Yard, its touches counted."""
    sheet = SHEET.format(plate="LY 12", serial=SERIAL, job=SECOND).replace("5ZLDR7HV5KR200417", VIN)
    sheet = sheet.replace("bay 3", "bay 4").replace('maker = "Harrow', 'fleet_number = "12"\nmaker = "Harrow')
    with yard.desk.server.client() as client:
        unit = (DEMO / "unit.toml").read_text(encoding="utf-8")
        Lead(client).said("jobs", {"job.toml": sheet, "unit.toml": unit, "people": [yard.desk.person.id]})
    yard.desk.given.append(SECOND)
    context = lens.browser.new_context(**PHONE)
    held = Phone(context, yard)
    held.enrol()
    yield held
    context.close()
    assert held.faults == []


def to_walkround(phone: Phone, job: str) -> Page:
    """The page of a job's walkround."""
    phone.page.goto(f"{phone.yard.url}#/job/{job}/walkround")
    expect(section(phone.page, "Who allowed it")).to_be_visible()
    return phone.page


def section(page: Page, heading: str) -> Locator:
    """The part of the page under a heading."""
    return page.locator("section", has=page.get_by_role("heading", name=heading, exact=True))


def first_by_hand(phone: Phone) -> None:
    """The walkround of truck LY 07: whom it may be taken over from later."""
    page = to_walkround(phone, FIRST)
    for fold in page.locator("details.single:has(.typed)").all():
        fold.locator("summary").click()
    for question, given in FIRST_BY_HAND:
        answer(page, question, given)
    wait_for(phone, FIRST, table="unit", key="backup_least_V", value=3.6)


def wait_for(phone: Phone, job: str, *, table: str, key: str, value: object) -> None:
    """Waits until the server has an answer of the walkround: its entry, and then the sheet that it names."""
    given: object = None
    for _ in range(ASKS):
        with suppress(httpx.HTTPStatusError, IndexError):  # the sheet, or the first of its entries, is still to come
            given = walkround_of(phone, job).get(table, {}).get(key)
        if given == value:
            return
        phone.page.wait_for_timeout(ASK_MS)
    assert given == value


def scan(page: Page, line: str) -> None:
    """Opens the camera at a line; it shuts itself once it has read what is meant."""
    page.get_by_role("button", name=f"Scan: {line}").click()
    expect(page.locator(".scanner")).to_be_visible()
    expect(page.locator(".scanner")).to_have_count(0)


def test_a_walkround_takes_eight_touches(phone: Phone, lens: Lens) -> None:
    """With no line; then the server's side finds nothing wrong and nothing open on the walkround."""
    first_by_hand(phone)
    counted = Counted(phone.context)
    page = to_walkround(phone, SECOND)
    page.reload()
    expect(page.locator(".at-once")).to_have_count(6)
    phone.offline()
    counted.begin()
    page.get_by_role("button", name="Allowed here, too, as in LY 07").click()
    lens.sees(VIN, zxingcpp.BarcodeFormat.Code39)
    scan(page, "VIN")
    page.get_by_role("button", name="I read it so on the vehicle, and hold its key").click()
    lens.sees(SERIAL, zxingcpp.BarcodeFormat.DataMatrix)
    scan(page, "Serial number")
    page.get_by_role("button", name="I see all of this on the unit (firmware as in LY 07)").click()
    expect(page.get_by_label("Its own battery [V]")).to_be_focused()
    page.keyboard.type("3.94")
    page.get_by_role("button", name="No lamp burns, no code stands").click()
    expect(section(page, "The vehicle before the work").get_by_label("Odometer [km]")).to_be_focused()
    page.keyboard.type("184220")
    page.get_by_role("button", name="I looked: none of these").click()
    page.get_by_role("button", name="I looked for it, and found none").click()
    expect(page.locator(".at-once")).to_have_count(0)
    must_be_reachable(phone)
    touched, typed = counted.touches, counted.characters
    assert len(touched) <= MOST_TOUCHES, touched
    assert len(typed) <= MOST_CHARACTERS, typed
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    written = walkround_of(phone, SECOND)
    assert written["authority"] == {"work_by": "Maud Linden", "crank_by": "Maud Linden"}
    read = {"vin": VIN, "vin_read": "scanned", "plate": "LY 12", "fleet_number": "12", "key_with": "Ines Okafor"}
    assert written["vehicle"] == read
    assert written["before"] == {"lamps": "none", "codes": "none", "odometer_km": 184220}
    assert written["unit"]["backup_V"] == 3.94
    assert set(written["hazards"].values()) == {False}
    found = judged(*held(phone, SECOND))["findings"]
    assert {each["verdict"] for each in found if each["stage"] == "walkround"} == {"holds"}


def held(phone: Phone, job: str) -> tuple[list[str], dict[str, bytes]]:
    """A job's entries and files as the server has them."""
    texts = phone.yard.desk.entries(job)
    digests = {blob for text in texts for blob in json.loads(text)["blobs"]}
    client = phone.yard.desk.client
    return texts, {each: client.get(f"/api/blobs/{each}").raise_for_status().content for each in digests}


def arrived(phone: Phone, job: str, *, count: int) -> None:
    """Waits until the server has so many entries of a job, and the files that they name."""
    for _ in range(ASKS):
        if len(phone.yard.desk.entries(job)) >= count:
            break
        phone.page.wait_for_timeout(ASK_MS)
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    assert len(phone.yard.desk.entries(job)) >= count


def walkround_of(phone: Phone, job: str) -> dict[str, dict[str, object]]:
    """The walkround that stands."""
    texts, blobs = held(phone, job)
    said = [entry["body"] for entry in map(json.loads, texts) if entry["kind"] in ("walkround", "correction")]
    bodies = [body["body"] if "replaces" in body else body for body in said]
    return tomllib.loads(blobs[[body for body in bodies if body["file"] == "walkround.toml"][-1]["sha256"]].decode())


def test_a_touch_is_taken_back_and_a_hand_is_never_overwritten(phone: Phone) -> None:
    """A trailer said by hand stays through the touch that names the rest; the touch is taken back, the trailer not."""
    page = to_walkround(phone, SECOND)
    hazards = section(page, "What can hurt somebody")
    hazards.locator("summary").click()
    answer(hazards, "A trailer?", "yes")
    expect(hazards.locator(".given")).not_to_contain_text("A trailer?")
    page.get_by_role("button", name="I looked: none of these").click()
    expect(hazards.locator(".answered")).to_contain_text("A trailer: yes")
    expect(hazards.locator(".answered")).to_contain_text("A 48 V system: no")
    hazards.get_by_role("button", name="Take back what the touch said").click()
    expect(hazards.locator(".answered")).to_have_text("A trailer: yes")
    expect(hazards.locator(".given")).to_contain_text("A 48 V system?")
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert walkround_of(phone, SECOND)["hazards"] == {"trailer": True}


def test_of_a_vin_the_last_six_are_typed_and_the_rest_compared(phone: Phone) -> None:
    """Six characters alone say nothing; with a touch that names the other eleven they are a VIN, and told as that."""
    page = to_walkround(phone, SECOND)
    vehicle = section(page, "The vehicle, as you read it there")
    answer(vehicle, "VIN", "200588")
    rest = vehicle.get_by_role("button", name=f"I compared the rest: it reads {VIN[:11]}")
    expect(rest).to_be_visible()
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert all(json.loads(text)["kind"] != "walkround" for text in phone.yard.desk.entries(SECOND))
    must_be_reachable(phone)
    rest.click()
    expect(vehicle.get_by_label("VIN", exact=True)).to_have_value(VIN)
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert walkround_of(phone, SECOND)["vehicle"] == {"vin": VIN, "vin_read": "last_six"}


def test_last_six_of_another_vehicle_are_no_vin(phone: Phone) -> None:
    """They are kept as typed, and said to be another vehicle's at once."""
    page = to_walkround(phone, SECOND)
    vehicle = section(page, "The vehicle, as you read it there")
    answer(vehicle, "VIN", "200417")
    expect(vehicle.locator(".expected")).to_contain_text("Not what was read")
    expect(page.locator(".findings li", has_text="Vehicle as on the job sheet")).to_contain_text("fails")


def test_figures_are_asked_and_shown_in_the_person_s_units(phone: Phone) -> None:
    """Miles off the odometer stay miles; 39.2 °F at the battery are 4 °C in the sheet, and 39.2 °F when shown again."""
    phone.page.goto(f"{phone.yard.url}#/settings")
    phone.page.get_by_label("US (mi, in, °F)", exact=True).check(force=True)
    page = to_walkround(phone, SECOND)
    answer(section(page, "The vehicle before the work"), "Odometer [mi]", "114468")
    arrived(phone, SECOND, count=4)  # the job's two sheets, who writes, the walkround
    assert walkround_of(phone, SECOND)["before"] == {"odometer_mi": 114468}
    before = len(phone.yard.desk.entries(SECOND))
    page.goto(f"{phone.yard.url}#/job/{SECOND}/join")
    unfold(page)
    answer(page, "Its temperature [°F]", "39.2")
    arrived(phone, SECOND, count=before + 1)
    assert "temperature_C = 4\n" in corrected(*held(phone, SECOND))
    page.reload()
    unfold(page)
    expect(page.get_by_label("Its temperature [°F]")).to_have_value("39.2")
    phone.page.goto(f"{phone.yard.url}#/settings")
    phone.page.get_by_label("metric (km, mm, °C)", exact=True).check(force=True)
    page.goto(f"{phone.yard.url}#/job/{SECOND}/walkround")
    walked = section(page, "The vehicle before the work")
    expect(walked.get_by_label("Odometer [mi]")).to_have_value("114468")  # as it was read off the dash


def test_a_tracker_that_was_found_is_named(phone: Phone) -> None:
    """What it is, what became of it, by whose consent; that none was found is no longer offered."""
    page = to_walkround(phone, SECOND)
    page.get_by_text("One was found", exact=True).click()
    answer(page, "What it is", "an old tracker")
    page.get_by_role("group", name="What became of it").get_by_label("removed", exact=True).click(force=True)
    expect(page.get_by_role("heading", name="an old tracker")).to_be_visible()
    expect(page.get_by_role("button", name="I looked for it, and found none")).to_have_count(0)
    answer(page, "By whose consent", "Maud Linden")
    expect(page.locator(".findings li", has_text="Devices fitted before")).to_have_count(0)  # nothing is open about it
    must_be_reachable(phone)
    arrived(phone, SECOND, count=5)
    found = {"what": "an old tracker", "fate": "removed", "consent": "Maud Linden"}
    assert walkround_of(phone, SECOND)["devices"] == {"found": [found]}
