"""The lead at the desk: what fails first, one job whole, who works on it, phones, rosters, a login from elsewhere."""

from __future__ import annotations

import io
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Browser, Locator, Page, expect
from tests.journeys.conftest import ROOT
from tests.samples.demo_jobs import DEMO
from tests.samples.served import PASSWORD, Server, serving

from backprobe.cases.hand_in_folder import hand_in_folder
from backprobe.cases.login import add_lead
from backprobe.cases.tokens import fresh_id
from backprobe.job.entry import Entry
from backprobe.server.settings import Settings

AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
WIDE, SMALL = {"width": 1280, "height": 800}, {"width": 390, "height": 800}
ROSTER = "plate,fleet_number,vin\nLY 21,21,5ZLDR7HV5KR200417\nLY 22,22,NOTAVIN\n"
PAGES = ["jobs", "job/LY-2026-12", "new", "roster", "people", "feeds", "aside"]


@dataclass
class Desk:
    """A browser at the desk."""

    server: Server
    page: Page
    faults: list[str]

    def to(self, place: str) -> None:
        """Goes to a page of the desk and waits for its heading."""
        self.page.goto(f"{self.server.url}/desk.html#/{place}")
        expect(self.page.get_by_role("heading", level=1)).to_be_visible()


def desk_at(browser: Browser, server: Server) -> Iterator[Desk]:
    """A desk whose scripts must not fail."""
    context = browser.new_context(viewport=WIDE, locale="en-GB")
    faults: list[str] = []
    page = context.new_page()
    page.on("pageerror", lambda error: faults.append(str(error)))
    yield Desk(server, page, faults)
    context.close()
    assert faults == []


def claim(server: Server, *, job: str, serial: str) -> None:
    """A phone of Ines's says that another unit is in the vehicle."""
    with server.phone("Ines Okafor", device="phone-b") as phone:
        body = {"slot": "serial", "value": serial}
        entry = Entry(id=fresh_id(), job=job, kind="claim", device="phone-b", seq=1, prev=None, engine="0", body=body)
        said = phone.post("/api/entries", json={"entries": [entry.raw.decode()]}).json()
        assert [result["state"] for result in said["results"]] == ["kept"], said


def codes_in(shown: Locator) -> list[str]:
    """What a reader of codes makes of a part of the page as it is seen, and nothing but that."""
    seen = Image.open(io.BytesIO(shown.screenshot())).convert("L")
    return [found.text for found in zxingcpp.read_barcodes(np.asarray(seen))]


@pytest.fixture
def desk(built: Path, browser: Browser, tmp_path: Path) -> Iterator[Desk]:
    """The desk of Linden Yard, with the demo's two jobs given to Ines."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    with serving(Settings(data=tmp_path / "data", pages=built)) as server:
        ines = server.person("Ines Okafor")
        for name in ("truck-07", "truck-12"):
            hand_in_folder(server.yard, server.lead, folder=tmp_path / "demo" / name, people_ids=[ines.id])
        yield from desk_at(browser, server)


def test_what_fails_stands_first_and_is_found_again(desk: Desk) -> None:
    """Truck 12 fails and leads the list; a search for the other's serial leaves the other; a state counts its jobs."""
    desk.to("jobs")
    rows = desk.page.locator("tbody tr")
    expect(rows).to_have_count(2)
    expect(rows.first).to_contain_text("LY 12")
    expect(rows.first).to_contain_text("fails")
    desk.page.get_by_label("Plate, fleet number, VIN, serial").fill("00417")
    expect(rows).to_have_count(1)
    expect(rows.first).to_contain_text("LY 07")
    desk.page.get_by_label("Plate, fleet number, VIN, serial").fill("")
    desk.page.get_by_role("radio", name="abandoned").check(force=True)
    expect(desk.page.get_by_text("No job matches.")).to_be_visible()


def test_one_job_shows_everything(desk: Desk) -> None:
    """Findings with bars, the wiring, photos that load, what was entered, and the record as a PDF."""
    desk.to("job/LY-2026-07")
    expect(desk.page.get_by_role("heading", level=1)).to_have_text("LY 07")
    expect(desk.page.locator("figure svg").first).to_be_visible()
    photo = desk.page.locator(".photos img").first
    photo.scroll_into_view_if_needed()
    desk.page.wait_for_function("() => document.querySelector('.photos img').naturalWidth > 0")
    desk.page.locator(".stage details summary").first.click()
    expect(desk.page.locator(".findings li").first).to_be_visible()
    with desk.page.expect_download() as started:
        desk.page.get_by_role("link", name="The record (PDF)").click()
    assert started.value.path().read_bytes().startswith(b"%PDF-")


def test_the_lead_decides_between_two_serials(desk: Desk) -> None:
    """A second serial arrives from a phone: the desk asks, one is chosen, and nothing is open any more."""
    claim(desk.server, job="LY-2026-07", serial="LN2-00499")
    desk.to("job/LY-2026-07")
    matter = desk.page.get_by_role("group", name="serial")
    expect(matter.get_by_role("button")).to_have_count(2)
    matter.get_by_role("button", name="LN2-00417").click()
    expect(matter).to_have_count(0)
    expect(desk.page.locator(".facts-line")).to_contain_text("LN2-00417")


def test_a_unit_that_was_taken_out_is_let_go(desk: Desk) -> None:
    """Truck 12 wants truck 07's unit: it fails until the unit is let go, then the finding is gone."""
    claim(desk.server, job="LY-2026-12", serial="LN2-00417")
    desk.to("job/LY-2026-12")
    elsewhere = desk.page.locator(".findings").get_by_text("in another vehicle")
    expect(elsewhere.first).to_be_visible()
    desk.to("job/LY-2026-07")
    desk.page.get_by_text("Let go of unit LN2-00417").click()
    desk.page.get_by_role("button", name="Let it go").click()
    expect(desk.page.get_by_text("Let go.")).to_be_visible()
    desk.to("job/LY-2026-12")
    expect(desk.page.get_by_role("group", name="serial")).to_be_visible()
    expect(elsewhere).to_have_count(0)


def test_a_photo_is_erased_for_good(desk: Desk) -> None:
    """With a reason: the picture is gone from the page and from the folder, its entry stays."""
    desk.to("job/LY-2026-07")
    photos = desk.page.locator(".photos img")
    expect(photos).to_have_count(3)
    desk.page.locator(".photos .erase summary").first.click()
    desk.page.get_by_label("Why").first.fill("a face is in it")
    desk.page.get_by_role("button", name="Erase for good").first.click()
    expect(photos).to_have_count(2)


def test_a_job_is_given_to_somebody_else(desk: Desk) -> None:
    """A person is added, gets the job, and the list says so."""
    desk.to("people")
    desk.page.get_by_label("Name").fill("Tomas Reed")
    desk.page.get_by_role("button", name="Add", exact=True).click()
    expect(desk.page.get_by_role("button", name="Enrol a phone for Tomas Reed")).to_be_visible()
    desk.to("job/LY-2026-12")
    desk.page.get_by_label("Ines Okafor").uncheck()
    desk.page.get_by_label("Tomas Reed").check()
    desk.page.get_by_role("button", name="Keep").click()
    expect(desk.page.get_by_text("Kept. Their phones get it")).to_be_visible()
    desk.to("jobs")
    expect(desk.page.locator("tbody tr", has_text="LY 12")).to_contain_text("Tomas Reed")


def test_a_phone_is_enrolled_by_its_code_and_withdrawn(desk: Desk, browser: Browser) -> None:
    """The desk shows a square code and its letters; a phone takes them; then it is withdrawn."""
    desk.to("people")
    desk.page.get_by_role("button", name="Enrol a phone for Ines Okafor").click()
    expect(desk.page.locator(".enrolment svg")).to_be_visible()
    code = desk.page.locator(".enrolment .code").inner_text()
    assert codes_in(desk.page.locator(".enrolment .picture")) == [f"{desk.server.url}/#enrol={code}"]
    with browser.new_context(viewport=SMALL, locale="en-GB") as context:
        phone = context.new_page()
        phone.goto(f"{desk.server.url}/#enrol={code}")
        phone.locator("form button[type=submit]").click()
        expect(phone.locator(".jobs li")).to_have_count(2)
    desk.page.reload()
    desk.page.get_by_role("button", name="Withdraw").click()
    desk.page.get_by_role("button", name="Yes").click()
    expect(desk.page.get_by_text("withdrawn", exact=False).first).to_be_visible()


def test_a_roster_with_a_bad_row_is_named_and_not_taken(desk: Desk, tmp_path: Path) -> None:
    """The bad VIN is named by row and column and there is no button to take it; mended, both vehicles come in."""
    table = tmp_path / "roster.csv"
    table.write_text(ROSTER, encoding="utf-8")
    desk.to("roster")
    desk.page.get_by_label("Table").set_input_files(table)
    desk.page.get_by_role("button", name="Look at it").click()
    bad = desk.page.locator(".bad tbody tr")
    expect(bad.first).to_contain_text("NOTAVIN")
    expect(bad.first.locator("td").first).to_have_text("3")
    expect(desk.page.get_by_role("button", name="Bring it in")).to_have_count(0)
    table.write_text(ROSTER.replace(",NOTAVIN", ","), encoding="utf-8")
    desk.page.get_by_label("Table").set_input_files([])
    desk.page.get_by_label("Table").set_input_files(table)
    desk.page.get_by_role("button", name="Look at it").click()
    desk.page.get_by_role("button", name="Bring it in").click()
    expect(desk.page.get_by_role("status").filter(has_text="Brought in.")).to_be_visible()


def test_a_roster_makes_jobs(desk: Desk, tmp_path: Path) -> None:
    """After the tick a unit sheet is needed; then both vehicles have a job, and the list asks for none any more."""
    table = tmp_path / "roster.csv"
    table.write_text("plate,fleet_number\nLY 31,31\nLY 32,32\n", encoding="utf-8")
    desk.to("roster")
    desk.page.get_by_label("Table").set_input_files(table)
    desk.page.get_by_role("button", name="Look at it").click()
    desk.page.get_by_label("Make a job for each vehicle without one (2)").check()
    take = desk.page.get_by_role("button", name="Bring it in")
    expect(take).to_be_disabled()
    desk.page.get_by_label("Unit sheet (unit.toml)").set_input_files(DEMO / "unit.toml")
    desk.page.get_by_label("System of the vehicles").select_option("24")
    desk.page.get_by_label("Day, where the table has none").fill("2026-04-01")
    take.click()
    expect(desk.page.get_by_role("status").filter(has_text="Jobs made: 2.")).to_be_visible()
    desk.page.get_by_role("button", name="Look at it").click()
    expect(desk.page.locator(".tally")).to_be_visible()
    expect(desk.page.get_by_text("Make a job for each vehicle")).to_have_count(0)
    desk.to("jobs")
    for plate in ("LY 31", "LY 32"):
        expect(desk.page.get_by_role("link", name=plate)).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_of_the_desk_can_be_reached_by_everybody(desk: Desk, scheme: Any) -> None:
    """No violation found by axe, wide and narrow; nothing is wider than a phone."""
    desk.page.emulate_media(color_scheme=scheme)
    for size in (WIDE, SMALL):
        desk.page.set_viewport_size(size)  # type: ignore[arg-type]
        for place in PAGES:
            desk.to(place)
            desk.page.wait_for_load_state("networkidle")
            desk.page.evaluate(AXE.read_text(encoding="utf-8"))
            found = desk.page.evaluate("rules => axe.run({runOnly: rules})", RULES)["violations"]
            said = [f"{fault['id']}: {[node['target'] for node in fault['nodes']]}" for fault in found]
            assert said == [], f"{place}, {scheme}, {size['width']} px"
            assert desk.page.evaluate("document.documentElement.scrollWidth") <= size["width"], place


def test_the_desk_speaks_spanish(desk: Desk) -> None:
    """Chosen once, kept through a reload."""
    desk.to("jobs")
    desk.page.get_by_label("Language").select_option("es")
    expect(desk.page.get_by_role("heading", level=1)).to_have_text("Trabajos")
    desk.page.reload()
    expect(desk.page.get_by_role("heading", level=1)).to_have_text("Trabajos")


def test_from_elsewhere_the_desk_asks_for_a_login(built: Path, browser: Browser, tmp_path: Path) -> None:
    """A wrong password is refused in words, the right one opens the list, logging out closes it."""
    with serving(Settings(data=tmp_path / "data", pages=built)) as probe:
        port = probe.url.rpartition(":")[2]
    settings = Settings(data=tmp_path / "data", pages=built, origin=f"http://127.0.0.1:{port}", port=int(port))
    with serving(settings, port=int(port)) as server:
        add_lead(server.yard, "ada", password=PASSWORD)
        for desk in desk_at(browser, server):
            page = desk.page
            desk.to("jobs")
            page.get_by_label("Name").fill("ada")
            page.get_by_label("Password").fill("wrong")
            page.get_by_role("button", name="Log in").click()
            expect(page.get_by_role("alert")).to_be_visible()
            page.get_by_label("Password").fill(PASSWORD)
            page.get_by_role("button", name="Log in").click()
            expect(page.get_by_role("heading", level=1)).to_have_text("Jobs")
            page.get_by_role("button", name="Log out").click()
            expect(page.get_by_role("heading", level=1)).to_have_text("Log in")
