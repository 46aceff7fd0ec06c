"""Phones of several people, each with a line of its own to the one server, and the lead who gives and decides."""

from __future__ import annotations

import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import httpx
from playwright.sync_api import Browser, Locator, expect
from tests.journeys.conftest import PATIENCE_MS, PHONE, Phone, Yard
from tests.journeys.line import Line
from tests.journeys.trucks import SHEET, Desk
from tests.samples.demo_jobs import DEMO

from backprobe.stages.walkround.vin_number import check_digit
from backprobe.store.people import Person

LOOK_MS, ASK_S, ASKS = 100, 1.0, 15
HELD = """
job => new Promise((done, failed) => {
  const asked = indexedDB.open("backprobe");
  asked.onerror = () => failed(asked.error);
  asked.onsuccess = () => {
    const got = asked.result.transaction("entries").objectStore("entries").index("job").getAll(job);
    got.onsuccess = () => { asked.result.close(); done(got.result.map(each => each.raw)); };
  };
})
"""


def vin_of(number: str) -> str:
    """The VIN of the truck with this number of six digits, its check digit in position 9."""
    return f"5ZLDR7HV{check_digit(f'5ZLDR7HV0KR{number}')}KR{number}"


def sheet_without_serial(job: str, plate: str, vin: str) -> str:
    """A job sheet on which nobody has written yet which unit it will be."""
    text = SHEET.format(plate=plate, serial="", job=job).replace('serial = ""\n', "")
    return text.replace("5ZLDR7HV5KR200417", vin)


class Lead:
    """Who sits at the desk, by the calls that its pages make."""

    def __init__(self, client: httpx.Client) -> None:
        self.client = client
        client.headers["X-CSRF-Token"] = client.get("/api/session").raise_for_status().json()["csrf"]

    def said(self, path: str, body: dict[str, Any]) -> dict[str, Any]:
        """What the server answers to a call that changes something."""
        return dict(self.client.post(f"/api/desk/{path}", json=body).raise_for_status().json())

    def give(self, job: str, plate: str, *, vin: str, people: list[str]) -> None:
        """Makes a job without a serial number and gives it to people."""
        unit = (DEMO / "unit.toml").read_text(encoding="utf-8")
        sheets = {"job.toml": sheet_without_serial(job, plate, vin), "unit.toml": unit}
        assert self.said("jobs", {**sheets, "people": people})["id"] == job

    def job(self, job: str) -> dict[str, Any]:
        """One job with everything."""
        return dict(self.client.get(f"/api/desk/jobs/{job}").raise_for_status().json())

    def decide(self, job: str, *, slot: str, value: str) -> None:
        """Decides the one value of a slot."""
        self.said(f"jobs/{job}/decide", {"slot": slot, "value": value})

    def open_slots(self, job: str) -> dict[str, list[str]]:
        """What there is to decide, by slot."""
        return {slot["name"]: sorted(slot["values"]) for slot in self.job(job)["to_decide"]["slots"]}


@contextmanager
def phone_of(browser: Browser, yard: Yard, person: Person, *, jobs: list[str]) -> Iterator[Phone]:
    """The phone of one of the crew, enrolled, in English, with `jobs` on it."""
    line = Line(yard.desk.server.url)
    context = browser.new_context(**PHONE)
    held = Phone(context, Yard(line, Desk(yard.desk.server, person, yard.desk.client, given=jobs)))
    try:
        held.enrol()
        yield held
    finally:
        context.close()
        line.close()
    assert held.faults == []


def all_sent(phone: Phone) -> None:
    """The line is back, and everything that waits is sent."""
    phone.online()
    phone.page.evaluate("dispatchEvent(new Event('online'))")
    expect(phone.page.locator(".unsent")).to_have_text("All sent")


def held_on(phone: Phone, job: str) -> list[str]:
    """The exact texts of a job's entries that are on the phone's disk, in their order there."""
    return list(phone.page.evaluate(HELD, job))


def fetched(phone: Phone, job: str, *, count: int) -> list[str]:
    """Has the phone ask the server again until it has so many entries of a job; those."""
    for _ in range(ASKS):
        phone.page.evaluate("dispatchEvent(new Event('online'))")
        if len(held := held_at_least(phone, job, count=count, patience_s=ASK_S)) >= count:
            break
    return held


def held_at_least(phone: Phone, job: str, *, count: int, patience_s: float = PATIENCE_MS / 1_000) -> list[str]:
    """Waits until the phone has so many entries of a job; those."""
    give_up = time.monotonic() + patience_s
    while len(held := held_on(phone, job)) < count and time.monotonic() < give_up:
        phone.page.wait_for_timeout(LOOK_MS)
    return held


def shown_at(phone: Phone, job: str, stage: str) -> Locator:
    """What the page of a job shows of one stage, its findings unfolded."""
    phone.page.goto(f"{phone.yard.url}#/job/{job}")
    folded = phone.page.locator("details.stage", has_text=stage)
    folded.locator("summary").click()
    return folded
