"""What the desk sees of jobs."""

from __future__ import annotations

import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.desk_jobs import list_jobs, one_job
from backprobe.cases.may import Caller, Role
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.store.jobs import Wanted
from backprobe.tongues.speaker import speaker

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def test_a_job_without_sheets_is_shown_as_far_as_it_goes(sqlite_yard: Yard, ines: Caller) -> None:
    """No answer, and why; what was said, by whose phone; a gap in the numbers is named."""
    phone = Phone()
    phone.reads("Red", "on", "12.3")
    later = phone.reads("Red", "off", "0.1")
    take_batch(sqlite_yard, [later.raw.decode()], caller=ines, at=AT)
    found = one_job(sqlite_yard, LEAD, job_id=JOB)
    assert found["answer"] is None
    assert found["fault"] == "the journal names no file of the kind 'job'"
    [entry] = found["entries"]
    assert (entry["kind"], entry["person"], entry["received_at"], entry["seq"]) == ("reading", "Ines", AT, 2)
    [fault] = found["faults"]
    assert "missing: entry number 1 of 'phone-a'" in fault
    assert found["job"]["people"] == [{"id": "ines", "name": "Ines"}]
    assert (found["drawings"], found["bars"], found["photos"]) == ({}, {}, [])


def test_the_list_says_whether_there_is_more(sqlite_yard: Yard, ines: Caller) -> None:
    """Three jobs in a page of two."""
    sent = [Phone(ids=n * 9, job=f"job-{n}").reads("Red", "on", "1").raw.decode() for n in range(3)]
    take_batch(sqlite_yard, sent, caller=ines, at=AT)
    page = list_jobs(sqlite_yard, LEAD, wanted=Wanted(limit=2))
    assert (len(page["jobs"]), page["more"], page["counts"]) == (2, True, {"new": 3})
    rest = list_jobs(sqlite_yard, LEAD, wanted=Wanted(limit=2, after=page["after"]))
    assert (len(rest["jobs"]), rest["more"]) == (1, False)
    assert list_jobs(sqlite_yard, LEAD, wanted=Wanted(q="none"))["after"] is None


def test_phones_do_not_see_the_desk(sqlite_yard: Yard, ines: Caller) -> None:
    """Neither the list nor a job that is not there."""
    with pytest.raises(RefusedError) as refusal:
        list_jobs(sqlite_yard, ines, wanted=Wanted())
    assert refusal.value.code == "not_allowed"
    with pytest.raises(RefusedError) as refusal:
        one_job(sqlite_yard, LEAD, job_id="none")
    assert refusal.value.code == "not_found"


def test_the_desk_is_told_in_its_language(sqlite_yard: Yard, ines: Caller) -> None:
    """Why a job cannot be judged is said in Spanish where that is asked for; what was written stays."""
    take_batch(sqlite_yard, [Phone().reads("Red", "on", "12.3").raw.decode()], caller=ines, at=AT)
    found = one_job(sqlite_yard, LEAD, job_id=JOB, say=speaker("es"))
    assert found["fault"] == "el diario no nombra ningún archivo de la clase 'job'"
    [entry] = found["entries"]
    assert (entry["body"]["wire"], found["faults"]) == ("Red", [])
    assert list_jobs(sqlite_yard, LEAD, wanted=Wanted(), say=speaker("es"))["counts"] == {"in_work": 1}
