"""The standard truck's two wires, probed by doing no more than the page asks: touches and characters are counted."""

from __future__ import annotations

import json
import re

from playwright.sync_api import Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.counted import Counted
from tests.journeys.test_reach import must_be_reachable
from tests.samples.demo_jobs import DEMO

MOST_TOUCHES, MOST_CHARACTERS = 10, 12
JOB = "LY-2026-05"
WHOLE = (DEMO / "truck-07" / "job.toml").read_text(encoding="utf-8")
WIRES = WHOLE[WHOLE.index("[[wire]]") : WHOLE.index("[[joint]]")]
JOINTS = WHOLE[WHOLE.index("[[joint]]") : WHOLE.index("[mount]")]
# what the invented truck shows on its two wires; the supply at off under a lamp of 1.5 A besides
POSITIONS = ("off", "accessory", "on", "crank", "running", "after 10 min")
SHOWN = {
    "X12/4 RD": dict(zip(POSITIONS, ("12.62", "12.58", "12.40", "10.81", "14.02", "12.60"), strict=True)),
    "X12/9 VT": dict(zip(POSITIONS, ("0.02", "0.03", "12.38", "10.66", "13.99", "0.01"), strict=True)),
}
UNDER_LAMP = "12.55"
MOST_STEPS = 20
ASKED = re.compile(r"(.+?)\. Measure ([^,.]+)(?:, under the test lamp, (.+)|, MIN hold)?\.")
TURNS = {
    "Key OFF": "off",
    "Key to ACCESSORY": "accessory",
    "Key ON": "on",
    "CRANK": "crank",
    "Engine RUNNING": "running",
    "Key OFF for 10 minutes": "after 10 min",
}


def at_wires(phone: Phone, *, of_sheet: str = "", lamp: str = "1.5 A") -> Counted:
    """LY 05 at its wires, with no line; LY 03 of the same type stands on the phone with its wires and joints."""
    phone.yard.desk.give("LY-2026-03", "LY 03", "LN2-00431", more=WIRES + JOINTS)
    phone.yard.desk.give(JOB, "LY 05", "LN2-00432", more=of_sheet)
    counted = Counted(phone.context)
    phone.page.reload()
    expect(phone.page.locator(".jobs li")).to_have_count(len(phone.yard.desk.given))
    phone.page.goto(f"{phone.yard.url}#/settings")
    phone.page.get_by_label("Workshop meter with a fast MIN hold (1 ms)").check(force=True)
    phone.page.get_by_label(lamp, exact=True).check(force=True)
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/probe")
    expect(phone.page.locator(".lead-wires")).to_be_visible()
    phone.offline()
    counted.begin()
    return counted


def readings(page: Page) -> int:
    """How many figures stand on the page."""
    return page.locator(".readings li").count()


def settled(page: Page) -> None:
    """Waits until the engine has spoken on all that was kept."""
    expect(page.locator(".next.now:not(.behind) .do")).to_be_visible()


def asked(page: Page) -> str:
    """What the next figure is of, as the page asks for it, once it has chosen that for the figure too."""
    settled(page)
    expect(page.locator(".next .do")).to_have_text(ASKED)
    turn, wire, under = ASKED.fullmatch(page.locator(".next .do").text_content() or "").groups()  # type: ignore[union-attr]
    label = f"{wire}, {TURNS[turn]}" + (f", lamp {under}" if under else "")
    expect(page.locator(".shown .of")).to_have_text(label)
    return label


def give(page: Page) -> str:
    """Gives the figure that the meter shows, by one touch where a button has it; returns what it was of."""
    label = asked(page)
    wire, key, *under = label.split(", ")
    volts = UNDER_LAMP if under else SHOWN[wire][key]
    before = readings(page)
    shown = volts if under else f"{float(volts):.1f}"
    likely = page.locator(".likely, .one-touch").get_by_role("button", name=re.compile(rf"^{re.escape(shown)} V"))
    if likely.count():
        likely.click()
    else:
        for digit in volts.replace(".", ""):  # the point stands by itself
            page.locator(".keys").get_by_role("button", name=digit, exact=True).click()
        expect(page.locator(".shown input")).to_have_value(volts)
        page.locator(".entry").get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator(".readings li")).to_have_count(before + 1)
    return label


def measure(page: Page) -> list[str]:
    """Gives every figure that is asked for, until the page asks for nothing more."""
    given: list[str] = []
    settled(page)
    while not page.locator(".next.now a.main").count():
        assert len(given) < MOST_STEPS, given
        given.append(give(page))
        settled(page)
    return given


def test_two_wires_as_on_the_last_truck(phone: Phone) -> None:
    """One touch takes the wires, nine keep a figure each, of which three are typed; then on to the joints."""
    counted = at_wires(phone)
    page = phone.page
    card = page.locator(".lead-wires")
    for text in ("X12, cavity 4", "RD", "X12, cavity 9", "VT", "LY 03"):
        expect(card).to_contain_text(text)
    must_be_reachable(phone)
    page.get_by_role("button", name="Take these wires, as on LY 03").click()
    expect(page.locator(".wires label")).to_have_count(2)
    given = measure(page)
    assert [label.removeprefix("X12/") for label in given] == [
        "4 RD, off",
        "4 RD, off, lamp 1.5 A",
        "9 VT, off",
        "9 VT, accessory",
        "9 VT, on",
        "4 RD, crank",
        "9 VT, crank",
        "4 RD, running",
        "9 VT, running",
    ]
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches
    assert len(counted.characters) <= MOST_CHARACTERS, counted.characters
    must_be_reachable(phone)
    page.locator(".next.now a.main").click()
    expect(page.locator("h1")).to_contain_text("Joints")
    kept = kept_by_server(phone)
    meant = {entry["body"]["slot"]: entry["body"]["value"] for entry in kept if entry["kind"] == "claim"}
    assert (meant["tap_supply"], meant["tap_ignition"]) == ("X12/4 RD", "X12/9 VT")
    assert {entry["body"]["wire"] for entry in kept if entry["kind"] == "circuit"} == set(SHOWN)
    figures = [entry["body"]["volts"] for entry in kept if entry["kind"] == "reading"]
    assert figures == ["12.62", "12.55", "0.0", "0.0", "12.4", "10.81", "10.66", "14.0", "14.0"]


def test_wires_that_the_job_names_need_not_be_taken(phone: Phone) -> None:
    """The card shows them with no button; without a lamp the supply is not asked for under one."""
    counted = at_wires(phone, of_sheet=WIRES, lamp="no lamp")
    page = phone.page
    expect(page.locator(".lead-wires")).to_contain_text("X12, cavity 4")
    expect(page.locator(".lead-wires button")).to_have_count(0)
    given = measure(page)
    assert not any("lamp" in label for label in given[1:]), given
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches


def test_the_next_reading_stays_in_sight(phone: Phone) -> None:
    """Scrolled down to the keypad's last row, what is asked for and where the key must stand is on the screen."""
    at_wires(phone)
    page = phone.page
    page.get_by_role("button", name="Take these wires, as on LY 03").click()
    give(page)
    settled(page)
    page.locator(".keys button").last.scroll_into_view_if_needed()
    expect(page.locator(".next .do")).to_be_in_viewport(ratio=1)
    expect(page.locator(".entry")).to_be_in_viewport(ratio=1)
    expect(page.locator(".turn")).to_have_text("Key OFF.")
    expect(page.locator(".readings li").first).to_be_hidden()


def kept_by_server(phone: Phone) -> list[dict]:
    """The phone's own entries, once they are sent."""
    phone.online()
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    entries = [json.loads(text) for text in phone.yard.desk.entries(JOB)]
    return [entry for entry in entries if entry["device"] != phone.yard.desk.device]
