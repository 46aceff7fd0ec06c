"""What two people said differently is decided at the desk, and the journal keeps all that was said."""

from __future__ import annotations

import hashlib

import pytest
from tests.samples.demo_jobs import DEMO
from tests.samples.journals import JOB, Phone
from tests.samples.sheets import job_sheet
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.decide import DisputeDecision, SlotDecision, decide, open_matters, release
from backprobe.cases.hand_in_file import keep_bytes
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import Entry, read_entry
from backprobe.job.fold import JobState, fold
from backprobe.job.journal import read_journal
from backprobe.store import entries, units

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")


def send(yard: Yard, caller: Caller, *said: Entry) -> None:
    """Hand entries in."""
    take_batch(yard, [entry.raw.decode() for entry in said], caller=caller, at=AT)


def state(yard: Yard, job: str = JOB) -> JobState:
    """The job as it stands; its journal must be sound as far as the server's chain goes."""
    with yard.store.reading() as connection:
        raws = entries.of_job(connection, ORGANISATION, job_id=job)
    assert not [fault for fault in read_journal(raws).faults if "server" in str(fault)]
    return fold(read_entry(raw) for raw in raws)


def test_two_serials_become_one_and_the_unit_is_claimed(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Both phones claimed; the lead decides; the other unit is free again."""
    send(sqlite_yard, ines, Phone().claims("serial", "LN2-1"))
    send(sqlite_yard, marta, Phone("phone-b", ids=50).claims("serial", "LN2-2"))
    assert state(sqlite_yard).slots["serial"].is_open
    assert decide(sqlite_yard, LEAD, job_id=JOB, decision=SlotDecision("serial", "LN2-2")) == 1
    after = state(sqlite_yard)
    assert (after.slots["serial"].value, after.settled) == ("LN2-2", True)
    with sqlite_yard.store.reading() as connection:
        assert units.holder(connection, ORGANISATION, serial="LN2-1") is None
        holder = units.holder(connection, ORGANISATION, serial="LN2-2")
    assert holder is not None
    with pytest.raises(RefusedError) as refusal:
        decide(sqlite_yard, LEAD, job_id=JOB, decision=SlotDecision("serial", "LN2-1"))
    assert refusal.value.code == "not_found"


def test_what_the_phone_scanned_can_win_over_the_sheet(sqlite_yard: Yard, ines: Caller) -> None:
    """The sheet says one serial, the phone another: decided for the phone, the sheet's own words are corrected."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet(JOB, serial="LN2-1"), UNIT))
    send(sqlite_yard, ines, Phone().claims("serial", "LN2-2"))
    assert decide(sqlite_yard, LEAD, job_id=JOB, decision=SlotDecision("serial", "LN2-2")) == 2
    after = state(sqlite_yard)
    assert (after.slots["serial"].value, after.open_slots) == ("LN2-2", ())
    assert len(after.of_kind("job")) == 1


def test_one_of_two_sheets_is_chosen(sqlite_yard: Yard, ines: Caller) -> None:
    """By its digest; another digest is refused."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet(JOB), UNIT))
    other = job_sheet(JOB, plate="LY 99").encode()
    sha256 = keep_bytes(sqlite_yard, other, at=AT)
    body = {"file": "job.toml", "sha256": sha256, "bytes": len(other), "vin": None, "serial": None}
    send(sqlite_yard, ines, Phone().say("job", body, blobs=(sha256,)))
    assert state(sqlite_yard).slots["job_sheet"].is_open
    wrong = SlotDecision("job_sheet", hashlib.sha256(b"").hexdigest())
    with pytest.raises(RefusedError) as refusal:
        decide(sqlite_yard, LEAD, job_id=JOB, decision=wrong)
    assert refusal.value.code == "request"
    decide(sqlite_yard, LEAD, job_id=JOB, decision=SlotDecision("job_sheet", sha256))
    assert state(sqlite_yard).slots["job_sheet"].value == sha256


@pytest.mark.parametrize("way", ["corrected", "withdrawn"])
def test_of_two_corrections_one_stands(sqlite_yard: Yard, ines: Caller, marta: Caller, way: str) -> None:
    """A reading that one corrected and another took back: either can be decided for."""
    first, second = Phone(), Phone("phone-b", ids=50)
    reading = first.reads("Red", "on", "12.3")
    send(sqlite_yard, ines, reading, first.corrects("12.6", reading))
    send(sqlite_yard, marta, second.withdraws(reading))
    before = state(sqlite_yard)
    [dispute] = before.disputes
    shown = open_matters(before, {entry.id: entry for entry in (*first.entries, *second.entries)})
    assert {one["kind"] for one in shown["disputes"][0]["standing"]} == {"correction", "withdrawn"}
    stands = {"corrected": first.entries[1].id, "withdrawn": second.entries[0].id}[way]
    decide(sqlite_yard, LEAD, job_id=JOB, decision=DisputeDecision(dispute.about, stands))
    after = state(sqlite_yard)
    assert after.disputes == ()
    assert [r.typed for r in after.table.readings] == {"corrected": ["12.6"], "withdrawn": []}[way]


def test_only_what_is_open_and_only_by_the_lead(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Nothing else is written."""
    send(sqlite_yard, ines, Phone().claims("vin", "A"))
    send(sqlite_yard, marta, Phone("phone-b", ids=50).claims("vin", "B"))
    cases = [
        (ines, SlotDecision("vin", "A"), "not_allowed"),
        (LEAD, SlotDecision("serial", "A"), "not_found"),
        (LEAD, SlotDecision("vin", ""), "request"),
        (LEAD, SlotDecision("vin", "a\0b"), "request"),
        (LEAD, DisputeDecision("x", "y"), "not_found"),
    ]
    for caller, decision, code in cases:
        with pytest.raises(RefusedError) as refusal:
            decide(sqlite_yard, caller, job_id=JOB, decision=decision)
        assert refusal.value.code == code
    assert state(sqlite_yard).slots["vin"].values == ("A", "B")


def test_only_the_lead_lets_go_of_a_unit(sqlite_yard: Yard, ines: Caller) -> None:
    """And only of one that a job has."""
    send(sqlite_yard, ines, Phone().claims("serial", "LN2-1"))
    for caller, serial, code in ((ines, "LN2-1", "not_allowed"), (LEAD, "LN2-2", "not_found")):
        with pytest.raises(RefusedError) as refusal:
            release(sqlite_yard, caller, serial=serial)
        assert refusal.value.code == code
    assert release(sqlite_yard, LEAD, serial=" ln2-1") == JOB
