"""What the page said is kept stays kept: through a killed browser, a full phone, a cut line and a withdrawn phone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Playwright, expect
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard
from tests.journeys.killed import kill
from tests.journeys.test_probe import JOB, volts_of

from backprobe.cases.enrol import withdraw
from backprobe.job.journal import read_journal
from backprobe.store import people


class Handset:
    """A browser with a profile of its own, to be killed and started again."""

    def __init__(self, playwright_: Playwright, profile: Path, yard: Yard) -> None:
        self._playwright, self._profile, self._yard = playwright_, profile, yard
        self.context: BrowserContext | None = None

    def start(self, *, offline: bool = False) -> Phone:
        """Starts the browser; the phone in it is as it was left."""
        self.context = self._playwright.chromium.launch_persistent_context(
            self._profile, executable_path=CHROMIUM, args=QUIET, **PHONE
        )
        self.context.set_offline(offline)
        return Phone(self.context, self._yard)

    def kill(self) -> None:
        """The battery dies."""
        assert self.context is not None
        kill(self.context, self._profile)


@pytest.fixture
def handset(playwright_: Playwright, yard: Yard, tmp_path: Path) -> Iterator[Handset]:
    """A phone that can die."""
    held = Handset(playwright_, tmp_path / "profile", yard)
    yield held
    if held.context is not None:
        held.context.close()


def test_a_killed_browser_loses_nothing(handset: Handset, yard: Yard) -> None:
    """Two wires and two figures with no line, killed after each figure the moment the page shows it, then sent."""
    phone = handset.start()
    phone.enrol()
    phone.offline()
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "12.62")
    handset.kill()

    phone = handset.start(offline=True)
    phone.page.goto(yard.url)
    expect(phone.page.locator(".unsent")).to_have_text("4 entries not sent yet")  # person, wire, meter, figure
    phone.to_wires()
    phone.measure("X12/4 RD", "on", "12.40")
    handset.kill()

    phone = handset.start(offline=True)
    phone.page.goto(yard.url)
    expect(phone.page.locator(".unsent")).to_have_text("5 entries not sent yet")
    phone.online()
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    texts = yard.desk.entries(JOB)
    assert volts_of(texts) == [("X12/4 RD", "off", "12.62"), ("X12/4 RD", "on", "12.40")]
    assert read_journal(text.encode() for text in texts).faults == ()


FILL = """
async () => {
  const asked = indexedDB.open("backprobe");
  const base = await new Promise(done => asked.onsuccess = () => done(asked.result));
  const put = (name, bytes) => new Promise(done => {
    const writing = base.transaction("settings", "readwrite");
    const noise = Uint8Array.from({length: bytes}, () => Math.random() * 256);
    writing.objectStore("settings").put(noise, name);
    writing.oncomplete = () => done(true);
    writing.onabort = () => done(false);
  });
  let count = 0;
  for (const bytes of [4_000_000, 500_000, 50_000, 5_000, 500]) while (await put(`film ${count}`, bytes)) count += 1;
  base.close();
  return count;
}
"""
EMPTY = """
async () => {
  const asked = indexedDB.open("backprobe");
  const base = await new Promise(done => asked.onsuccess = () => done(asked.result));
  const writing = base.transaction("settings", "readwrite");
  const films = IDBKeyRange.bound("film ", "film ~");
  writing.objectStore("settings").delete(films);
  await new Promise(done => writing.oncomplete = done);
  base.close();
}
"""
ROOM_BYTES = 60_000_000  # the app itself takes about half of it


def test_a_full_phone_says_what_was_not_kept(browser: Browser, yard: Yard) -> None:
    """No room: the figure stays in the display, the page says that it was not kept; with room again it is kept."""
    context = browser.new_context(**PHONE)
    phone = Phone(context, yard)
    tools = context.new_cdp_session(phone.page)
    tools.send("Storage.overrideQuotaForOrigin", {"origin": yard.line.url, "quotaSize": ROOM_BYTES})
    phone.enrol()
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    assert phone.page.evaluate(FILL) > 0
    for digit in "12.62":
        name = "Point" if digit == "." else digit
        phone.page.locator(".keys").get_by_role("button", name=name, exact=True).click()
    phone.page.get_by_role("button", name="Keep", exact=True).click()
    expect(phone.page.get_by_role("alert")).to_contain_text("This phone is full: the last entry was not kept")
    expect(phone.page.locator(".shown input")).to_have_value("12.62")
    expect(phone.page.locator(".readings li")).to_have_count(0)
    phone.page.evaluate(EMPTY)
    tools.send("Storage.overrideQuotaForOrigin", {"origin": yard.line.url})
    phone.page.get_by_role("button", name="Keep", exact=True).click()
    expect(phone.page.locator(".readings li")).to_have_count(1)
    expect(phone.page.get_by_role("alert")).to_have_count(0)
    context.close()


def test_a_server_that_does_not_answer_costs_nothing(phone: Phone) -> None:
    """The phone thinks it has a line, nothing gets through: entries wait, are tried again, and arrive once each."""
    phone.to_wires()
    phone.choose_meter()
    phone.yard.line.cut()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "12.62")
    expect(phone.page.locator(".notice")).to_contain_text("No line")
    assert phone.unsent() == 4  # person, wire, meter, figure
    assert phone.yard.line.tried > 0
    phone.yard.line.mend()
    expect(phone.page.locator(".unsent")).to_have_text("All sent", timeout=20_000)
    assert volts_of(phone.yard.desk.entries(JOB)) == [("X12/4 RD", "off", "12.62")]


def test_a_withdrawn_phone_hands_in_what_it_holds(phone: Phone) -> None:
    """Withdrawn while it had no line: its entries are handed in, into quarantine, and the page says what happened."""
    phone.to_wires()
    phone.choose_meter()
    phone.offline()
    phone.add_wire("X12", "4", "RD")
    desk = phone.yard.desk
    with desk.server.yard.store.reading() as connection:
        rows = people.phones(connection, desk.server.yard.organisation)
    held = next(row for row in rows if row["device"] != desk.device)
    withdraw(desk.server.yard, desk.server.lead, phone_id=held["id"])
    phone.online()
    expect(phone.page.locator(".fault")).to_contain_text("This phone was withdrawn")
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    assert [text for text in desk.entries(JOB) if held["device"] in text] == []


def test_two_windows_of_one_phone_write_one_chain(phone: Phone) -> None:
    """The same job open twice: figures from both follow one another in the chain."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    other = Phone(phone.context, phone.yard)
    other.page = phone.context.new_page()
    other.page.goto(phone.page.url)
    expect(other.page.get_by_role("radio", name="X12/4 RD")).to_have_count(1)
    for window, key, volts in ((phone, "off", "12.62"), (other, "on", "12.40"), (phone, "running", "14.02")):
        window.page.bring_to_front()
        window.measure("X12/4 RD", key, volts)
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    texts = phone.yard.desk.entries(JOB)
    assert len(volts_of(texts)) == 3
    assert read_journal(text.encode() for text in texts).faults == ()
