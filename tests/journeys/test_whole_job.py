"""A whole job on the phone: from the day's list to the signature, with a line and without; what it takes is counted."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Playwright, expect
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard
from tests.journeys.counted import Counted
from tests.journeys.installer import (
    JOB,
    PLATE,
    SERIAL,
    Installer,
    allowed_this_morning,
    choose_tools,
    give_second_of_its_type,
)
from tests.journeys.killed import kill
from tests.journeys.test_camera import Labels
from tests.journeys.test_quick_prove import push, reports_of, stamped, turn_the_key
from tests.journeys.test_quick_walkround import held
from tests.journeys.test_stages import judged

from backprobe.job.journal import read_journal

MOST_TOUCHES, MOST_CHARACTERS = 45, 25
HALF_OF_THE_FIGURES, HALF_OF_THE_TURNS = 4, 4
A_NIGHT_S = 9 * 3_600
NIGHT_IS_THERE = "parked night: it is said to be missing, and it is there"
# once a night was reported: what a sample crimp stood was never said, and with the night there it is to be ended anew
STILL_OPEN = {"join_joints_told", "ending", "sign_off"}


class Handset:
    """A phone with a camera and a profile of its own, whose battery can die."""

    def __init__(self, playwright_: Playwright, place: Path, yard: Yard) -> None:
        self._playwright, self._profile, self._yard = playwright_, place / "profile", yard
        self.labels = Labels(place / "seen.mjpeg")
        self.context: BrowserContext | None = None

    def start(self) -> Phone:
        """Switched on; it is as it was left."""
        self.context = self._playwright.chromium.launch_persistent_context(
            self._profile, executable_path=CHROMIUM, args=[*QUIET, *self.labels.options], **PHONE
        )
        return Phone(self.context, self._yard)

    def die(self) -> None:
        """At once, with nothing said before."""
        assert self.context is not None
        kill(self.context, self._profile)

    def again(self, phone: Phone, *, at: str) -> Phone:
        """Dead in the midst of work, and switched on again with no line, at a page; its clock has gone on."""
        shown = datetime.fromtimestamp(phone.page.evaluate("Date.now()") / 1000, UTC)
        self.die()
        phone = self.start()
        phone.offline()
        phone.page.clock.install(time=shown)
        phone.page.goto(f"{self._yard.url}{at}")
        return phone


@pytest.fixture
def handset(playwright_: Playwright, yard: Yard, tmp_path: Path) -> Iterator[Handset]:
    """Ines's phone on the day of truck LY 09, the morning's first job begun."""
    give_second_of_its_type(yard, tmp_path)
    held_one = Handset(playwright_, tmp_path, yard)
    yield held_one
    if held_one.context is not None:
        held_one.context.close()


def begun(handset: Handset) -> Phone:
    """Enrolled, tools chosen, who allowed the work typed at the morning's first truck."""
    phone = handset.start()
    phone.enrol()
    choose_tools(phone)
    allowed_this_morning(phone)
    phone.page.clock.install()
    return phone


def answered(phone: Phone) -> dict[str, Any]:
    """What the engine in this Python says of what the server has."""
    texts, blobs = held(phone, JOB)
    assert read_journal(text.encode() for text in texts).faults == ()
    return judged(texts, blobs)


def found_by(phone: Phone) -> dict[str, Any]:
    """Its findings by their ids."""
    return {each["id"]: each for each in answered(phone)["findings"]}


def not_holding(found: dict[str, Any]) -> dict[str, str]:
    """What does not hold, and its verdict."""
    return {name: each["verdict"] for name, each in found.items() if each["verdict"] != "holds"}


def test_a_whole_job_with_a_line(handset: Handset) -> None:
    """Within 45 touches and 25 characters; the reports come by themselves, and the server finds what is owed alone."""
    phone = begun(handset)
    page = phone.page
    hand = Installer(phone, handset.labels)
    counted = Counted(phone.context)
    page.reload()
    expect(page.get_by_role("link", name=PLATE)).to_be_visible()
    counted.begin()
    hand.open_job()
    hand.walkround()
    hand.onward("Wires")
    hand.take_wires()
    hand.measure_wires()
    hand.join()
    hand.onward("Mount")
    hand.mount()
    hand.onward("Prove")
    turn_the_key(page)
    hand.see_lights()
    push(phone, reports_of(stamped(phone, JOB), SERIAL), JOB)
    page.clock.fast_forward(11_000)
    expect(page.locator(".unit-now")).to_contain_text("12.4 V")
    hand.onward("Hand over")
    hand.hand_over()
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches
    assert len(counted.characters) <= MOST_CHARACTERS, counted.characters
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert phone.faults == []
    owed = not_holding(found_by(phone))
    assert {"prove_parked", "supply_after", "ending"} <= set(owed)
    assert set(owed.values()) <= {"open", "thin"}, owed
    push(phone, reports_of(stamped(phone, JOB), SERIAL, after_s=A_NIGHT_S), JOB)
    over_night = found_by(phone)
    assert set(not_holding(over_night)) == STILL_OPEN, not_holding(over_night)
    assert (over_night["ending"]["because"], over_night["sign_off"]["verdict"]) == (NIGHT_IS_THERE, "open")


def test_a_whole_job_with_no_line_and_a_phone_that_dies_twice(handset: Handset) -> None:
    """Dead amid the figures and amid the turns of the key; then all is sent, and the reports close the proof."""
    phone = begun(handset)
    expect(phone.page.get_by_role("link", name=PLATE)).to_be_visible()
    phone.offline()
    hand = Installer(phone, handset.labels)
    phone.page.reload()
    hand.open_job()
    hand.walkround()
    hand.onward("Wires")
    hand.take_wires(first=HALF_OF_THE_FIGURES)
    waiting = phone.unsent()
    hand.phone = phone = handset.again(phone, at=f"#/job/{JOB}/probe")
    expect(phone.page.locator(".readings li")).to_have_count(HALF_OF_THE_FIGURES)
    assert phone.unsent() == waiting
    hand.measure_wires()
    hand.join()
    hand.onward("Mount")
    hand.mount()
    hand.onward("Prove")
    turn_the_key(phone.page, until=HALF_OF_THE_TURNS)
    hand.phone = phone = handset.again(phone, at=f"#/job/{JOB}/prove")
    expect(phone.page.locator(".stamped li")).to_have_count(HALF_OF_THE_TURNS)
    turn_the_key(phone.page, done=HALF_OF_THE_TURNS)
    hand.see_lights()
    hand.onward("Hand over")
    hand.hand_over()
    phone.online()
    push(phone, reports_of(stamped(phone, JOB), SERIAL, after_s=A_NIGHT_S), JOB)
    assert phone.faults == []
    found = found_by(phone)
    assert set(not_holding(found)) == STILL_OPEN, not_holding(found)
    assert {turn["state"] for turn in answered(phone)["prove"]["turns"]} == {"matched"}
