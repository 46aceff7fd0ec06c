"""A job that the desk makes is entries and files like any other."""

from __future__ import annotations

import pytest
from tests.samples.demo_jobs import DEMO
from tests.samples.sheets import job_sheet
from tests.samples.stores import ORGANISATION

from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, assign, make_job
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError, UnreadableError
from backprobe.job.journal import read_journal
from backprobe.store import entries, jobs, units

UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def test_its_journal_is_sound(sqlite_yard: Yard, ines: Caller) -> None:
    """Three entries by the server, its unit claimed, its row described, Ines on it."""
    new = NewJob(job_sheet("LY-01", serial="LN2-1"), UNIT, ("ines",))
    assert make_job(sqlite_yard, LEAD, new=new) == "LY-01"
    with sqlite_yard.store.reading() as connection:
        journal = read_journal(entries.of_job(connection, ORGANISATION, job_id="LY-01"))
        row = jobs.row_of(connection, ORGANISATION, job_id="LY-01")
        holder = units.holder(connection, ORGANISATION, serial="LN2-1")
        people = jobs.people_of(connection, ORGANISATION, jobs=["LY-01"])
    assert journal.faults == ()
    assert [(entry.device, entry.kind) for entry in journal.entries] == [
        ("server", "job"),
        ("server", "unit_sheet"),
        ("server", "unit_claimed"),
    ]
    assert row is not None
    assert (row["name"], row["state"], row["judged_cursor"]) == ("LY 01", "new", row["cursor"])
    assert holder is not None
    assert holder.job == "LY-01"
    assert people == {"LY-01": [{"id": "ines", "name": "Ines"}]}


def test_a_sheet_without_an_id_gets_one(sqlite_yard: Yard) -> None:
    """Each time another."""
    sheet = '[vehicle]\nsystem_V = 24\n[unit]\nsheet = "unit.toml"\n'
    first, second = (make_job(sqlite_yard, LEAD, new=NewJob(sheet, UNIT)) for _ in range(2))
    assert first != second


def test_what_makes_no_sense_makes_no_job(sqlite_yard: Yard, ines: Caller) -> None:
    """Sheets that cannot be read, people who are not here, a job that is there already, a phone that asks."""
    for sheets in ((job_sheet("a"), "[supply"), ("x", UNIT)):
        with pytest.raises(UnreadableError):
            make_job(sqlite_yard, LEAD, new=NewJob(*sheets))
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a"), UNIT))
    refused = [
        (LEAD, NewJob(job_sheet("b"), UNIT, ("nobody",)), "not_found"),
        (LEAD, NewJob(job_sheet("a"), UNIT), "exists"),
        (LEAD, NewJob(job_sheet("x" * 201), UNIT), "request"),
        (ines, NewJob(job_sheet("c"), UNIT), "not_allowed"),
    ]
    for caller, new, code in refused:
        with pytest.raises(RefusedError) as refusal:
            make_job(sqlite_yard, caller, new=new)
        assert refusal.value.code == code
    with sqlite_yard.store.reading() as connection:
        assert [row["id"] for row in jobs.every(connection, ORGANISATION)] == ["a"]


def test_a_job_is_given_to_people_who_are_here(sqlite_yard: Yard, ines: Caller) -> None:
    """And only a job that is there."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a"), UNIT))
    assign(sqlite_yard, LEAD, job_id="a", people_ids=["ines"])
    for job_id, who in (("a", "nobody"), ("none", "ines")):
        with pytest.raises(RefusedError) as refusal:
            assign(sqlite_yard, LEAD, job_id=job_id, people_ids=[who])
        assert refusal.value.code == "not_found"
    with sqlite_yard.store.reading() as connection:
        assert jobs.works_on(connection, ORGANISATION, person_id="ines", jobs=["a"])
