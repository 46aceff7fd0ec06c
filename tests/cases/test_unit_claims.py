"""Units are claimed, refused, let go and claimed again as entries arrive."""

from __future__ import annotations

import pytest
from tests.samples.journals import Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.may import Caller
from backprobe.cases.sync import take_batch
from backprobe.cases.unit_claims import plain_serial, release_unit, touches_units
from backprobe.cases.yard import Yard
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import JobState, fold
from backprobe.job.units import unit_findings
from backprobe.store import entries, units

VIN = "5ZLDR7HV5KR200417"
SIGNED = dict.fromkeys(("entries_sha256", "order_sha256", "findings_sha256", "hand_over_sha256"), "ab" * 32)
SIGNED |= dict.fromkeys(("engine_sha256", "limits_sha256", "unit_sheet_sha256", "key", "fingerprint"), "ab" * 32)


class Yards:
    """Two jobs by one phone, and what the server makes of them."""

    def __init__(self, yard: Yard, caller: Caller) -> None:
        self.yard, self.caller = yard, caller
        self.a, self.b = Phone("phone-a", job="job-a"), Phone("phone-a", ids=500, job="job-b")

    def send(self, *said: Entry) -> None:
        """Hand in entries."""
        results = take_batch(self.yard, [entry.raw.decode() for entry in said], caller=self.caller, at=AT).results
        assert {each.state for each in results} == {"kept"}

    def state(self, job: str) -> JobState:
        """A job as it stands."""
        with self.yard.store.reading() as connection:
            return fold(read_entry(raw) for raw in entries.of_job(connection, ORGANISATION, job_id=job))

    def holder(self, serial: str) -> str | None:
        """The job that has a unit."""
        with self.yard.store.reading() as connection:
            found = units.holder(connection, ORGANISATION, serial=serial)
        return None if found is None else found.job

    def refused(self, job: str) -> int:
        """How many findings a job has on units that are elsewhere."""
        return len(unit_findings(self.state(job)))


@pytest.fixture
def two(sqlite_yard: Yard, ines: Caller) -> Yards:
    """Two jobs."""
    return Yards(sqlite_yard, ines)


def test_the_second_job_is_refused_and_gets_the_unit_when_it_is_let_go(two: Yards) -> None:
    """Job a withdraws its claim: b has the unit, its finding is gone, and both journals say how it went."""
    claim = two.a.claims("serial", "LN2-1")
    two.send(claim)
    two.send(two.b.claims("serial", "ln2-1 "))
    assert (two.holder("LN2-1"), two.refused("job-a"), two.refused("job-b")) == ("job-a", 0, 1)
    two.send(two.a.withdraws(claim))
    assert (two.holder("LN2-1"), two.refused("job-b")) == ("job-b", 0)
    assert two.state("job-a").of_kind("unit_claimed") == ()
    assert len(two.state("job-b").of_kind("unit_claimed")) == 1
    assert two.state("job-a").settled
    assert two.state("job-b").settled


def test_the_same_vehicle_may_name_its_unit_twice(two: Yards) -> None:
    """Two jobs on one VIN, as a revisit is; also where the VIN comes after the refusal."""
    two.send(two.a.claims("serial", "LN2-1"), two.a.claims("vin", VIN))
    two.send(two.b.claims("serial", "LN2-1"))
    assert two.refused("job-b") == 1
    two.send(two.b.claims("vin", VIN))
    assert (two.holder("LN2-1"), two.refused("job-b")) == ("job-a", 0)


def test_a_correction_moves_the_claim(two: Yards) -> None:
    """Read wrong first, the unit of the wrong number is free again."""
    claim = two.a.claims("serial", "LN2-1")
    body = {"replaces": claim.id, "kind": "claim", "body": {"slot": "serial", "value": "LN2-2"}}
    two.send(claim, two.a.say("correction", body))
    assert (two.holder("LN2-1"), two.holder("LN2-2")) == (None, "job-a")


def test_an_abandoned_job_lets_its_unit_go(two: Yards) -> None:
    """Signed off as abandoned."""
    two.send(two.a.claims("serial", "LN2-1"))
    head = ["phone-a", 1, "ab" * 32]
    signed = {**SIGNED, "end": "abandoned", "verdict": "open", "heads": [head], "entries": 1, "signature": "0" * 128}
    two.send(two.a.say("sign_off", signed))
    assert two.holder("LN2-1") is None


def test_a_number_on_the_job_sheet_claims_as_well(two: Yards) -> None:
    """As a campaign writes it before anybody has been there."""
    sheet = {"file": "job.toml", "sha256": "ab" * 32, "bytes": 10, "vin": None, "serial": "LN2-9"}
    two.send(two.a.say("job", sheet))
    assert two.holder("LN2-9") == "job-a"


def test_readings_touch_no_unit() -> None:
    """Only what names a unit or a vehicle, takes it back or ends the job is looked at."""
    phone = Phone()
    first = phone.claims("serial", "LN2-1")
    assert touches_units(first)
    assert touches_units(phone.withdraws(first))
    assert not touches_units(phone.reads("Red", "on", "12.3"))
    assert not touches_units(phone.corrects("12.4", first))
    assert plain_serial(" ln2 - 1") == "LN2-1"


def test_a_vehicle_that_turns_out_to_be_the_same_lifts_the_refusal(two: Yards) -> None:
    """The VIN of the job that has the unit comes last: whoever waits is asked again at once."""
    two.send(two.a.claims("serial", "LN2-1"))
    two.send(two.b.claims("serial", "LN2-1"), two.b.claims("vin", VIN))
    assert two.refused("job-b") == 1
    two.send(two.a.claims("vin", VIN))
    assert (two.holder("LN2-1"), two.refused("job-b")) == ("job-a", 0)


def test_a_unit_that_has_left_its_vehicle_is_let_go_of(two: Yards) -> None:
    """Job b gets it; job a does not claim it again whatever it says later, and its finding stays none."""
    two.send(two.a.claims("serial", "LN2-1"))
    two.send(two.b.claims("serial", "LN2-1"))
    with two.yard.store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        assert release_unit(held, "ln2-1", at=AT) == "job-a"
        assert release_unit(held, "LN2-9", at=AT) is None
    assert (two.holder("LN2-1"), two.refused("job-a"), two.refused("job-b")) == ("job-b", 0, 0)
    two.send(two.a.claims("vin", VIN))
    assert (two.holder("LN2-1"), two.refused("job-a")) == ("job-b", 0)
