"""Two phones that could not hear of each other: on one job, and on two jobs with the same unit."""

from __future__ import annotations

import json
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect
from tests.journeys.conftest import Phone, Yard
from tests.journeys.crew import Lead, all_sent, fetched, held_at_least, held_on, phone_of, shown_at, vin_of
from tests.journeys.test_probe import volts_of
from tests.journeys.test_stages import answer, touch, unfold

from backprobe.job.journal import read_journal

GIVEN, JOB, OTHER = "LY-2026-07", "LY-2026-31", "LY-2026-32"  # the first is the yard's own
ONE, TWO = "LN2-00431", "LN2-00499"


@pytest.fixture
def lead(yard: Yard) -> Iterator[Lead]:
    """The lead of the yard."""
    with yard.desk.server.client() as client:
        yield Lead(client)


def to_walkround(phone: Phone, job: str) -> None:
    """To the page that asks for the serial number."""
    phone.page.goto(f"{phone.yard.url}#/job/{job}/walkround")


def read_serial(phone: Phone, job: str, serial: str) -> None:
    """Types the unit's serial number, and waits until sheet and claim are on the phone."""
    to_walkround(phone, job)
    count = len(held_on(phone, job)) + 2
    answer(phone.page, "Serial number", serial)
    assert len(held_at_least(phone, job, count=count)) >= count


def probe(phone: Phone, wire: tuple[str, str, str], readings: list[tuple[str, str]]) -> None:
    """A wire and its readings with no line."""
    phone.offline()
    phone.to_wires("LY 31")
    phone.choose_meter()
    phone.add_wire(*wire)
    for key, volts in readings:
        phone.measure(f"{wire[0]}/{wire[1]} {wire[2]}", key, volts)


def test_two_phones_on_one_job_agree_once_the_lead_has_decided(browser: Browser, yard: Yard, lead: Lead) -> None:
    """Each has a wire, readings and a serial number of its own: all readings stand, the serial is open until decided.

    An answer that is given meanwhile decides nothing: both walkround sheets still stand before the lead.
    """
    ines, tomas = yard.desk.person, yard.desk.server.person("Tomas Reed")
    lead.give(JOB, "LY 31", vin=vin_of("200431"), people=[ines.id, tomas.id])
    with (
        phone_of(browser, yard, ines, jobs=[GIVEN, JOB]) as one,
        phone_of(browser, yard, tomas, jobs=[JOB]) as two,
    ):
        probe(one, ("X12", "4", "RD"), [("off", "12.62"), ("on", "12.40")])
        probe(two, ("X12", "9", "VT"), [("off", "0.02")])
        read_serial(one, JOB, ONE)
        read_serial(two, JOB, TWO)
        said = {text for phone in (one, two) for text in held_on(phone, JOB) if '"device":"phone-' in text}
        all_sent(one)
        all_sent(two)
        assert lead.open_slots(JOB)["serial"] == [ONE, TWO]
        sheets = lead.open_slots(JOB)["walkround"]
        assert len(sheets) == 2

        two.offline()
        unfold(two.page)
        touch(two.page.get_by_role("group", name="Is it activated?").get_by_label("yes"))
        expect(two.page.locator(".unsent")).to_have_text("1 entry not sent yet")
        all_sent(two)
        assert len(lead.open_slots(JOB)["walkround"]) == 2  # who answers one question has not decided the others
        texts = yard.desk.entries(JOB)
        assert said < set(texts)
        assert sorted(volts_of(texts)) == [
            ("X12/4 RD", "off", "12.62"),
            ("X12/4 RD", "on", "12.40"),
            ("X12/9 VT", "off", "0.02"),
        ]
        for phone in (one, two):
            assert sorted(fetched(phone, JOB, count=len(texts))) == sorted(texts)
            expect(shown_at(phone, JOB, "Hand over")).to_contain_text(f"serial: {ONE} or {TWO}")
            to_walkround(phone, JOB)
            differs = phone.page.locator(".differs li", has_text="Serial number: here")
            expect(differs).to_contain_text(ONE)
            expect(differs).to_contain_text(TWO)

        lead.decide(JOB, slot="serial", value=TWO)
        lead.decide(JOB, slot="walkround", value=lead.open_slots(JOB)["walkround"][0])
        assert lead.open_slots(JOB) == {}
        assert lead.job(JOB)["job"]["unit"]["serial"] == TWO
        texts = yard.desk.entries(JOB)
        nexts = set()
        for phone in (one, two):
            assert sorted(fetched(phone, JOB, count=len(texts))) == sorted(texts)
            expect(shown_at(phone, JOB, "Hand over")).not_to_contain_text("serial:")
            nexts.add(phone.page.locator(".next .do").text_content())
            to_walkround(phone, JOB)
            expect(phone.page.locator(".differs")).to_have_count(0)
        assert nexts == {lead.job(JOB)["answer"]["next"]}
        shown = {phone.page.get_by_label("Serial number", exact=True).input_value() for phone in (one, two)}
        assert len(shown) == 1
        assert read_journal(text.encode() for text in texts).faults == ()


def test_the_second_of_two_jobs_with_one_unit_gets_a_finding(browser: Browser, yard: Yard, lead: Lead) -> None:
    """The same serial number typed in two trucks with no line: who syncs first has the unit, the other is told."""
    ines, tomas = yard.desk.person, yard.desk.server.person("Tomas Reed")
    lead.give(JOB, "LY 31", vin=vin_of("200431"), people=[ines.id])
    lead.give(OTHER, "LY 32", vin=vin_of("200432"), people=[tomas.id])
    with (
        phone_of(browser, yard, ines, jobs=[GIVEN, JOB]) as one,
        phone_of(browser, yard, tomas, jobs=[OTHER]) as two,
    ):
        for phone, job in ((one, JOB), (two, OTHER)):
            phone.offline()
            read_serial(phone, job, ONE)
            expect(phone.page.get_by_role("alert")).to_have_count(0)  # neither can know of the other yet
        held = held_on(two, OTHER)
        all_sent(one)
        first = yard.desk.entries(JOB)
        all_sent(two)
        assert yard.desk.entries(JOB) == first
        with_server = fetched(two, OTHER, count=len(held) + 1)
        assert set(held) < set(with_server)  # what was typed stands as it was typed
        refusal = next(json.loads(text) for text in with_server if json.loads(text)["kind"] == "unit_refused")
        assert (refusal["device"], refusal["body"]["serial"]) == ("server", ONE)
        assert (refusal["body"]["held_by"], refusal["body"]["vehicle"]) == (JOB, vin_of("200431"))
        expect(two.page.get_by_role("alert")).to_contain_text("This unit is in LY 31 already")
        expect(shown_at(two, OTHER, "Mount")).to_contain_text("in another vehicle")
        assert lead.job(OTHER)["job"]["verdict"] == "fails"
        assert all(finding["id"] != "unit_elsewhere" for finding in lead.job(JOB)["answer"]["findings"])

        read_serial(two, OTHER, TWO)
        more = held_at_least(two, OTHER, count=len(with_server) + 4)  # two of the phone, two of the server
        kinds = [json.loads(text)["kind"] for text in more]
        assert kinds.count("unit_claimed") == 1
        expect(two.page.get_by_role("alert")).to_have_count(0)
