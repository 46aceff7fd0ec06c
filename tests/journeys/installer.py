"""An installer who does a whole job on the phone, stage after stage, touching no more than the pages ask for."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

import zxingcpp
from playwright.sync_api import Locator, Page, expect
from tests.journeys.conftest import Phone, Yard
from tests.journeys.crew import Lead, vin_of
from tests.journeys.test_camera import Labels
from tests.journeys.test_quick_probe import give, measure, settled
from tests.journeys.test_quick_prove import PLACE
from tests.journeys.test_quick_walkround import wait_for
from tests.journeys.test_sign_off import draw
from tests.journeys.test_stages import answer
from tests.journeys.trucks import SHEET
from tests.samples.demo_jobs import DEMO
from tests.samples.signing import key_folder, sign_job

from backprobe.cases.hand_in_folder import hand_in_folder
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Role

JOB, PLATE, SERIAL = "LY-2026-09", "LY 09", "LN2-00425"
VIN = vin_of("200609")
FIRST = "LY-2026-07"  # the job of the morning: who allowed the work is taken over from it
ALLOWED = [("The work was allowed by", "Maud Linden"), ("A crank was allowed by", "Maud Linden")]


def give_second_of_its_type(yard: Yard, place: Path) -> None:
    """A truck of the type was finished before, by somebody else; of the next one Ines knows the vehicle alone."""
    server = yard.desk.server
    lead = Caller(role=Role.LEAD, organisation=server.yard.organisation)
    shutil.copytree(DEMO, place / "yard", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    folder = place / "yard" / "truck-07"
    for name in ("job.toml", "walkround.toml", "reports.csv"):
        text = (folder / name).read_text(encoding="utf-8")
        text = text.replace('"LY-2026-07"', '"LY-2026-04"').replace("LY 07", "LY 04").replace('"07"', '"04"')
        text = text.replace("LN2-00417", "LN2-00404").replace("5ZLDR7HV5KR200417", vin_of("200404"))
        (folder / name).write_text(text, encoding="utf-8")
    sign_job(folder, key_folder(place / "keys"))
    hand_in_folder(server.yard, lead, folder=folder)
    judge_again(server.yard, lead.organisation, job_id="LY-2026-04")
    sheet = SHEET.format(plate=PLATE, serial=SERIAL, job=JOB).replace("5ZLDR7HV5KR200417", VIN)
    sheet = sheet.replace('maker = "Harrow', 'fleet_number = "09"\nmaker = "Harrow') + PLACE
    with server.client() as client:
        unit = (DEMO / "unit.toml").read_text(encoding="utf-8")
        Lead(client).said("jobs", {"job.toml": sheet, "unit.toml": unit, "people": [yard.desk.person.id]})
    yard.desk.given.append(JOB)


def choose_tools(phone: Phone) -> None:
    """Meter and lamp, chosen once per person."""
    page = phone.page
    page.goto(f"{phone.yard.url}#/settings")
    page.get_by_label("Workshop meter with a fast MIN hold (1 ms)").check(force=True)
    page.get_by_label("1.5 A", exact=True).check(force=True)


def allowed_this_morning(phone: Phone) -> None:
    """The first job of the day: who allowed work and crank, typed once."""
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{FIRST}/walkround")
    for question, given in ALLOWED:
        answer(page, question, given)
    wait_for(phone, FIRST, table="authority", key="crank_by", value=ALLOWED[1][1])
    page.goto(f"{phone.yard.url}#/")


def section(page: Page, heading: str) -> Locator:
    """The part of the page under a heading."""
    return page.locator("section", has=page.get_by_role("heading", name=heading, exact=True))


@dataclass
class Installer:
    """What a hand does at truck LY 09."""

    phone: Phone
    labels: Labels

    @property
    def page(self) -> Page:
        """The page on the phone that is in the hand now."""
        return self.phone.page

    def open_job(self) -> None:
        """From the day's list to the stage that is due."""
        row = self.page.locator(".jobs li", has=self.page.get_by_text(PLATE, exact=True))
        row.locator(".due").click()

    def onward(self, stage: str) -> None:
        """The one large button at the end of a stage."""
        self.page.get_by_role("link", name=f"On to: {stage}").last.click()

    def touch(self, name: str) -> None:
        """Touches a button that names what it says."""
        self.page.get_by_role("button", name=name).click()

    def scan(self, line: str, text: str, form: zxingcpp.BarcodeFormat) -> None:
        """Holds the phone to a label; the camera shuts itself once it has read what is meant."""
        self.labels.sees(text, form)
        self.page.get_by_role("button", name=f"Scan: {line}").click()
        expect(self.page.locator(".scanner")).to_be_visible()
        expect(self.page.locator(".scanner")).to_have_count(0)

    def walkround(self) -> None:
        """Before anything is touched."""
        expect(self.page.locator(".at-once")).to_have_count(6)
        self.touch("Allowed here, too, as in LY 07")
        self.scan("VIN", VIN, zxingcpp.BarcodeFormat.Code39)
        self.touch("I read it so on the vehicle, and hold its key")
        self.scan("Serial number", SERIAL, zxingcpp.BarcodeFormat.DataMatrix)
        self.touch("I see all of this on the unit")
        expect(self.page.get_by_label("Its own battery [V]")).to_be_focused()
        self.page.keyboard.type("3.94")
        self.touch("No lamp burns, no code stands")
        expect(section(self.page, "The vehicle before the work").get_by_label("Odometer [km]")).to_be_focused()
        self.page.keyboard.type("184220")
        self.touch("I looked: none of these")
        self.touch("I looked for it, and found none")
        expect(self.page.locator(".at-once")).to_have_count(0)

    def take_wires(self, *, first: int = 0) -> None:
        """The two wires of the last truck of the type, and the first figures that are asked for on them."""
        self.touch("Take these wires, as on LY 04")
        expect(self.page.locator(".wires label")).to_have_count(2)
        settled(self.page)
        for _ in range(first):
            give(self.page)

    def measure_wires(self) -> None:
        """Every figure that is still asked for; then on to the joints."""
        measure(self.page)
        self.page.locator(".next.now a.main").click()

    def join(self) -> None:
        """As on the last truck of the type, seen on each joint, the drop at the ground measured."""
        self.touch("Joined as on LY 04")
        self.touch("Each joint tugged at, strain-relieved, dry")
        self.touch("The unused lead: capped, tied back")
        self.page.get_by_label("Drop between the ground and the battery's negative [mV]").click()
        self.page.keyboard.type("18")

    def mount(self) -> None:
        """On the same shelf, and seen to be right."""
        self.touch("As in LY 04")
        for title in ("How it sits", "How the leads run"):
            part = section(self.page, title)
            part.get_by_role("button", name="Yes to each of these").click()
            expect(part.locator(".given")).to_have_count(0)

    def see_lights(self) -> None:
        """The lights, once all turns are done."""
        self.touch("All lights as they should be")
        expect(self.page.get_by_text("All turns done.")).to_be_visible()

    def hand_over(self) -> None:
        """How it ends, the state after, what the driver was told, and two signatures."""
        self.touch("All as before the work")
        section(self.page, "The driver").get_by_role("button", name="As in LY 04").click()
        self.touch("End as ")
        draw(self.page)
        self.touch("Sign and finish")
        expect(self.page.locator(".signed h2")).to_contain_text("by Ines Okafor")
