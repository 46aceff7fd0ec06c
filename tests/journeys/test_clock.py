"""A phone whose clock is two hours out: what it says is kept as it was said, and nothing hangs on it."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import PHONE, Phone, Yard
from tests.journeys.crew import all_sent, fetched, phone_of, shown_at
from tests.journeys.test_probe import JOB, volts_of
from tests.journeys.test_stages import held_by_server, judged

from backprobe.job.journal import read_journal

OUT_H = (2, -2)
NEAR_S = 60.0
WIRE = "X12/4 RD"
READINGS = [("off", "12.62"), ("accessory", "12.55"), ("on", "12.40")]
AS_SHOWN = """
() => new Intl.DateTimeFormat("en", {hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23"})
  .format(new Date(document.querySelector(".stamped time").dateTime))
"""
WRONG = """
out_ms => {
  const Right = Date;
  globalThis.Date = class extends Right {
    constructor(...given) { given.length ? super(...given) : super(Right.now() + out_ms); }
    static now() { return Right.now() + out_ms; }
  };
}
"""


@pytest.fixture(params=OUT_H, ids=lambda hours: f"{hours:+d} h")
def out(request: pytest.FixtureRequest) -> dt.timedelta:
    """How far the phone's clock is ahead."""
    return dt.timedelta(hours=request.param)


@pytest.fixture
def late(browser: Browser, yard: Yard, out: dt.timedelta) -> Iterator[Phone]:
    """Ines's phone, whose clock was out before it was ever enrolled."""
    context = browser.new_context(**PHONE)
    context.add_init_script(f"({WRONG})({out.total_seconds() * 1_000})")
    held = Phone(context, yard)
    held.enrol()
    yield held
    context.close()
    assert held.faults == []


def is_near(said: str, expected: dt.datetime) -> bool:
    """Whether a time in a journal or of the server is within a minute of another."""
    return abs((dt.datetime.fromisoformat(said) - expected).total_seconds()) < NEAR_S


def test_what_a_wrong_clock_said_is_kept_and_nothing_hangs_on_it(late: Phone, out: dt.timedelta) -> None:
    """Enrolled, probed with no line, sent: times as the phone said them, the server's own outside, order as touched."""
    late.offline()
    late.to_wires()
    late.choose_meter()
    late.add_wire("X12", "4", "RD")
    for key, volts in READINGS:
        late.measure(WIRE, key, volts)
    page = late.page
    page.goto(f"{late.yard.url}#/job/{JOB}/prove")
    page.locator("button.key-turn").filter(has_text="key off").click()
    expect(page.locator(".stamped time")).to_have_count(1)
    right = dt.datetime.now(dt.UTC)
    assert page.locator(".stamped time").inner_text() == page.evaluate(AS_SHOWN)  # as this phone's clock shows it
    assert is_near(page.locator(".stamped time").get_attribute("datetime") or "", right + out)
    all_sent(late)
    expect(page.locator(".notice")).to_contain_text("120 min ahead" if out > dt.timedelta() else "120 min behind")

    texts, blobs = held_by_server(late)
    own = [json.loads(text) for text in texts if '"device":"phone-' in text]
    assert len(own) == 1 + 1 + 1 + 3 + 1  # person, wire, meter, three readings, a turn of the key
    assert all(is_near(each["at"], right + out) for each in own)
    assert is_near(own[-1]["body"]["t"], right + out)
    rows = late.yard.desk.client.get("/api/entries", params={"job": JOB, "after": 0}).json()["entries"]
    assert all(is_near(row["received_at"], right) for row in rows)
    assert [each["seq"] for each in own] == list(range(1, len(own) + 1))
    assert volts_of(texts) == [(WIRE, key, volts) for key, volts in READINGS]
    assert read_journal(text.encode() for text in texts).faults == ()
    assert sorted(fetched(late, JOB, count=len(texts))) == sorted(texts)

    page.goto(f"{late.yard.url}#/job/{JOB}")
    expect(page.locator(".next .do:not(.behind)")).to_be_visible()
    assert page.locator(".next .do").text_content() == judged(texts, blobs)["next"]
    page.reload()  # the phone is still enrolled, and goes on being so
    all_sent(late)


def test_a_correction_from_a_phone_that_is_behind_holds(browser: Browser, yard: Yard, late: Phone) -> None:
    """A figure of a right phone, put right on the wrong one: the correction holds on both, whatever the times say."""
    with phone_of(browser, yard, yard.desk.person, jobs=[JOB]) as right:
        right.to_wires()
        right.choose_meter()
        right.add_wire("X12", "4", "RD")
        right.measure(WIRE, "off", "21.62")
        all_sent(right)
        expect(right.page.locator(".notice")).to_have_count(0)
        texts = yard.desk.entries(JOB)
        fetched(late, JOB, count=len(texts))
        late.to_wires()
        for phone in (right, late):
            phone.page.locator(".readings > summary").click()
        late.page.get_by_role("button", name="off 21.62 V").click()
        late.page.get_by_label("Right figure in volts").fill("12.62")
        late.page.get_by_role("button", name="Change").click()
        expect(late.page.get_by_role("button", name="off 12.62 V")).to_be_visible()
        fetched(right, JOB, count=len(texts) + 2)  # a person and the correction
        for phone in (right, late):
            expect(phone.page.get_by_role("button", name="off 12.62 V")).to_be_visible()
            expect(phone.page.get_by_role("button", name="off 21.62 V")).to_have_count(0)
            expect(shown_at(phone, JOB, "Wires")).not_to_contain_text("corrected in two ways")
