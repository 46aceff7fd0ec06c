"""A real browser at the size of a phone, the real server, and a line between them that can be cut."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Playwright, expect, sync_playwright
from tests.journeys.line import Line
from tests.journeys.trucks import Desk
from tests.samples.served import serving

from backprobe.server.settings import Settings

ROOT = Path(__file__).resolve().parents[2]
CHROMIUM = "/usr/bin/chromium"
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PHONE = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2}
PATIENCE_MS = 15_000
WAITED_IN_VAIN = ("TimeoutError", "(Locator|Page) expected ")

expect.set_options(timeout=PATIENCE_MS)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """All journeys run one after the other: two browsers at once would only wait for each other.

    A journey in which the browser was waited for in vain is taken once more, and the last lines count it; a wrong
    answer, a lost entry or a fault on the page is never tried again.
    """
    for item in items:
        if item.path.parent == Path(__file__).parent:
            item.add_marker(pytest.mark.xdist_group("browser"))
            item.add_marker(pytest.mark.flaky(reruns=1, only_rerun=[*WAITED_IN_VAIN]))


@pytest.fixture(scope="session")
def built(node: Path) -> Path:
    """The pages, built where they are not."""
    subprocess.run([sys.executable, ROOT / "web" / "build.py"], check=True, capture_output=True)
    return ROOT / "web" / "dist"


@pytest.fixture(scope="module")
def playwright_() -> Iterator[Playwright]:
    """Playwright with the system's browser; it ends with the module, and its event loop with it."""
    if shutil.which(CHROMIUM) is None:
        pytest.skip("there is no /usr/bin/chromium: apt-get install chromium")
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="module")
def browser(playwright_: Playwright) -> Iterator[Browser]:
    """A browser for those journeys that do not kill it."""
    started = playwright_.chromium.launch(executable_path=CHROMIUM, args=QUIET)
    yield started
    started.close()


@dataclass
class Yard:
    """The server, the line to it, and the desk that gives Ines her jobs."""

    line: Line
    desk: Desk

    @property
    def url(self) -> str:
        """Where phones find it."""
        return f"{self.line.url}/"

    def enrolment(self) -> str:
        """What the desk's QR holds."""
        return f"{self.url}#enrol={self.desk.server.code(self.desk.person)}"


@pytest.fixture
def yard(built: Path, tmp_path: Path) -> Iterator[Yard]:
    """A yard with one job: truck LY 07."""
    with serving(Settings(data=tmp_path / "data", pages=built)) as server:
        line = Line(server.url)
        desk = Desk.of(server, server.person("Ines Okafor"))
        desk.give("LY-2026-07", "LY 07")
        yield Yard(line, desk)
        desk.client.close()
        line.close()


class Phone:
    """A page on a phone, with what a hand does on it."""

    def __init__(self, context: BrowserContext, yard: Yard) -> None:
        self.context, self.yard = context, yard
        self.page = context.pages[0] if context.pages else context.new_page()
        self.faults: list[str] = []
        self.page.on("pageerror", lambda error: self.faults.append(str(error)))

    def enrol(self, language: str = "English") -> None:
        """Opens what the QR holds, enrols, and waits until the app is kept on the phone."""
        self.page.goto(self.yard.enrolment())
        self.page.locator("form button[type=submit]").click()
        expect(self.page.locator(".jobs li")).to_have_count(len(self.yard.desk.given))
        self.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        self.choose_language(language)

    def choose_language(self, language: str) -> None:
        """Chooses the language of the pages, and metric units."""
        self.page.goto(f"{self.yard.url}#/settings")
        self.page.get_by_label(language, exact=True).check(force=True)
        self.page.locator("input[value=metric]").check(force=True)
        self.page.goto(f"{self.yard.url}#/")

    def choose_meter(self, meter: str = "Low-cost hand meter") -> None:
        """Says which meter is in the hand, where the page asks."""
        self.page.get_by_role("button", name=meter).click()

    def to_wires(self, plate: str = "LY 07") -> None:
        """From the day's list to the wires of a truck."""
        self.page.get_by_role("link", name=plate).click()
        self.page.get_by_role("link", name="Wires", exact=True).click()

    def add_wire(self, connector: str, cavity: str, colour: str) -> None:
        """Adds a wire by its place and colour."""
        self.page.get_by_role("button", name="Add a wire").click()
        sheet = self.page.get_by_role("dialog")
        sheet.get_by_label("Connector").fill(connector)
        sheet.get_by_label("Cavity").fill(cavity)
        sheet.get_by_label(colour, exact=True).check(force=True)
        sheet.get_by_role("button", name="Add a wire").click()
        expect(sheet).to_be_hidden()

    def measure(self, wire: str, key: str, volts: str) -> None:
        """Chooses a wire and a position, touches the figure in, and waits until the page says it is kept."""
        self.choose(wire)
        self.choose(key, exact=True)
        for digit in volts:
            self.page.locator(".keys").get_by_role(
                "button", name="Point" if digit == "." else digit, exact=True
            ).click()
        self.page.get_by_role("button", name="Keep", exact=True).click()
        expect(self.page.locator("main > .said")).to_have_text(f"Kept: {wire}, {key}, {volts} V")

    def choose(self, name: str, *, exact: bool = False) -> None:
        """Touches one of several answers once it stands still, and waits until it is chosen."""
        answer = self.page.get_by_role("radio", name=name, exact=exact)
        self.page.locator("label", has=answer).click()
        expect(answer).to_be_checked()

    def unsent(self) -> int:
        """How many entries wait, as the page says."""
        return int(self.page.locator(".unsent").get_attribute("data-unsent") or "-1")

    def offline(self) -> None:
        """No line at all: the browser knows it, and nothing gets through either."""
        self.yard.line.cut()
        self.context.set_offline(True)

    def online(self) -> None:
        """The line is back."""
        self.yard.line.mend()
        self.context.set_offline(False)


@pytest.fixture
def phone(browser: Browser, yard: Yard) -> Iterator[Phone]:
    """Ines's phone, enrolled, in English."""
    context = browser.new_context(**PHONE)
    held = Phone(context, yard)
    held.enrol()
    yield held
    context.close()
    assert held.faults == []
