"""Two phones on one job: what both say comes together, and where they say two things somebody has to decide."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.test_probe import JOB, volts_of
from tests.journeys.test_stages import held_by_server, judged, touch

from backprobe.job.journal import read_journal


@pytest.fixture
def phones(browser: Browser, yard: Yard) -> Iterator[tuple[Phone, Phone]]:
    """Ines's two phones, both enrolled."""
    held = [Phone(browser.new_context(**PHONE), yard) for _ in range(2)]
    for each in held:
        each.enrol()
    yield held[0], held[1]
    for each in held:
        each.context.close()


def meant_for_supply(phone: Phone, wire: str) -> None:
    """Says on a phone which wire is meant for the supply."""
    phone.page.get_by_role("radio", name=wire).check(force=True)
    phone.page.get_by_role("button", name=f"About {wire}").click()
    touch(phone.page.get_by_role("dialog").get_by_label("supply", exact=True))
    phone.page.get_by_role("button", name="Close").click()


def test_what_two_phones_say_comes_together(phones: tuple[Phone, Phone]) -> None:
    """Each adds a wire and a figure, one of them with no line: both have both, and the server has two sound chains."""
    one, other = phones
    for phone in phones:
        phone.to_wires()
        phone.choose_meter()
    other.context.set_offline(True)
    one.add_wire("X12", "4", "RD")
    one.measure("X12/4 RD", "off", "12.62")
    other.add_wire("X12", "9", "VT")
    other.measure("X12/9 VT", "off", "0.02")
    other.context.set_offline(False)
    for phone in phones:
        phone.page.evaluate("dispatchEvent(new Event('online'))")
    expect(other.page.get_by_role("radio", name="X12/4 RD")).to_have_count(1)
    one.page.evaluate("dispatchEvent(new Event('online'))")
    expect(one.page.get_by_role("radio", name="X12/9 VT")).to_have_count(1)
    texts = one.yard.desk.entries(JOB)
    assert sorted(volts_of(texts)) == [("X12/4 RD", "off", "12.62"), ("X12/9 VT", "off", "0.02")]
    assert read_journal(text.encode() for text in texts).faults == ()


def test_two_wires_for_one_lead_stay_open(phones: tuple[Phone, Phone]) -> None:
    """Each phone, without having heard of the other, means another wire for the supply: the journal is not settled."""
    one, other = phones
    for phone, (cavity, colour) in ((one, ("4", "RD")), (other, ("6", "GY"))):
        phone.context.set_offline(True)
        phone.to_wires()
        phone.choose_meter()
        phone.add_wire("X12", cavity, colour)
        meant_for_supply(phone, f"X12/{cavity} {colour}")
    for phone in phones:
        phone.context.set_offline(False)
        expect(phone.page.locator(".unsent")).to_have_text("All sent", timeout=40_000)
    said = judged(*held_by_server(one))
    assert "tap_supply: X12/4 RD or X12/6 GY" in said["journal"]["open"]
    assert said["choice"]["supply"] is None
