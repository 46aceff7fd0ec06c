"""The wires of a truck on a phone: kept before the page says so, judged with no line, sent when there is one."""

from __future__ import annotations

import json

from playwright.sync_api import expect
from tests.journeys.conftest import Phone

from backprobe.job.entry import read_entry
from backprobe.job.journal import read_journal

JOB = "LY-2026-07"
FIRST = [
    ("X12/4 RD", "off", "12.62"),
    ("X12/9 VT", "off", "0.02"),
    ("X12/4 RD", "accessory", "12.55"),
    ("X12/9 VT", "accessory", "0.03"),
]


def volts_of(texts: list[str]) -> list[tuple[str, str, str]]:
    """What was read, by wire and position, in the order of the entries."""
    bodies = [json.loads(text)["body"] for text in texts if json.loads(text)["kind"] == "reading"]
    return [(body["wire"], body["key"], body["volts"]) for body in bodies]


def test_wires_are_probed_with_no_line_and_sent_when_it_is_back(phone: Phone) -> None:
    """Opened anew, two wires added, four figures kept and judged; then the server has them, in a sound chain."""
    phone.offline()
    phone.page.reload()
    phone.to_wires()
    phone.choose_meter("Precise hand meter")
    phone.add_wire("X12", "4", "RD")
    phone.add_wire("X12", "9", "VT")
    for wire, key, volts in FIRST:
        phone.measure(wire, key, volts)
    expect(phone.page.locator(".next .do")).to_contain_text("Measure")
    # a person, two wires, the meter, which is not the one of the sheet, and four readings
    assert phone.unsent() == 1 + 2 + 1 + 4
    assert volts_of(phone.yard.desk.entries(JOB)) == []
    phone.online()
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    texts = phone.yard.desk.entries(JOB)
    assert volts_of(texts) == FIRST
    assert read_journal(text.encode() for text in texts).faults == ()
    assert all(read_entry(text.encode()).raw == text.encode() for text in texts)
