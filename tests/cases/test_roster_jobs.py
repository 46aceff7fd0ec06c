"""A roster makes jobs for its vehicles that have none: all it brings, or nothing."""

from __future__ import annotations

import tomllib

import pytest
from tests.samples.demo_jobs import DEMO
from tests.samples.sheets import job_sheet
from tests.samples.stores import ORGANISATION

from backprobe.cases import roster_jobs
from backprobe.cases.day import day_of
from backprobe.cases.desk_roster import RosterFile, import_with_jobs, kept_roster, preview_roster_file
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.roster_jobs import JobPlan, prepared, sheet_of, write_jobs
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError, UnreadableError
from backprobe.evidence.roster import RosterKind, RosterRow
from backprobe.formats.job_toml import read_job
from backprobe.store import entries, jobs

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
LIST = RosterFile(
    b"plate,vin,type,unit_serial,day,lat,lon\n"
    b"LY 07,5ZLDR7HV5KR200417,Drover 7,LN2-1,2026-04-02,51.5,-0.25\n"
    b"LY 08,,Drover 7,LN2-2,,,\n",
    "trucks.csv",
)
PLAN = JobPlan(unit_sheet=UNIT, system_V=12, day="2026-04-01")


def how_many(yard: Yard) -> int:
    """The jobs in the store."""
    with yard.store.reading() as connection:
        return sum(1 for _ in jobs.every(connection, ORGANISATION))


def test_each_vehicle_without_a_job_gets_one(yard: Yard, ines: Caller) -> None:
    """LY 08 has one; LY 07 gets one with all the list says, on Ines's phone; a second time there is nothing to make."""
    make_job(yard, LEAD, new=NewJob(job_sheet("old", plate="ly-08"), UNIT))
    assert preview_roster_file(yard, LEAD, file=LIST)["without_job"] == 1
    plan = JobPlan(unit_sheet=UNIT, system_V=12, day="2026-04-01", people=(ines.person or "",))
    answer = import_with_jobs(yard, LEAD, file=LIST, plan=plan)
    assert answer["jobs"] == 1
    [job] = day_of(yard, ines)["jobs"]  # type: ignore[misc]
    assert (job["name"], job["vehicle"]["vin"], job["unit"]["serial"]) == ("LY 07", "5ZLDR7HV5KR200417", "LN2-1")
    assert tomllib.loads(job["files"]["job.toml"])["job"] == {"date": "2026-04-02"}
    assert len(kept_roster(yard, LEAD, kind=RosterKind.VEHICLES)) == 2
    assert preview_roster_file(yard, LEAD, file=LIST)["without_job"] == 0
    assert import_with_jobs(yard, LEAD, file=LIST, plan=plan)["jobs"] == 0
    assert how_many(yard) == 2


def test_twice_at_once_makes_no_second(sqlite_yard: Yard) -> None:
    """Before anybody has judged the new jobs."""
    assert import_with_jobs(sqlite_yard, LEAD, file=LIST, plan=PLAN)["jobs"] == 2
    assert import_with_jobs(sqlite_yard, LEAD, file=LIST, plan=PLAN)["jobs"] == 0
    assert how_many(sqlite_yard) == 2


def test_an_abandoned_job_is_none(sqlite_yard: Yard) -> None:
    """Its vehicle is still to be fitted."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("old", plate="LY 08"), UNIT))
    with sqlite_yard.store.writing() as connection:
        jobs.describe(connection, ORGANISATION, job_id="old", values={"state": "abandoned"})
    assert preview_roster_file(sqlite_yard, LEAD, file=LIST)["without_job"] == 2


@pytest.mark.parametrize(
    ("file", "plan", "fault"),
    [
        (RosterFile(b"plate,vin\nLY 10,\nLY 11,1.2E+16\n", "bad.csv"), PLAN, InputError),
        (LIST, JobPlan(unit_sheet="name = 3", system_V=12), UnreadableError),
        (LIST, JobPlan(unit_sheet=UNIT, system_V=12, people=("nobody",)), RefusedError),
        (RosterFile(b"unit_serial\nLN2-1\n", "units.csv"), PLAN, RefusedError),
    ],
)
def test_with_one_fault_nothing_is_there(yard: Yard, file: RosterFile, plan: JobPlan, fault: type[Exception]) -> None:
    """A bad cell, a unit's sheet that is none, somebody who is not here, a list of units: neither vehicles nor jobs."""
    with pytest.raises(fault):
        import_with_jobs(yard, LEAD, file=file, plan=plan)
    assert how_many(yard) == 0
    assert kept_roster(yard, LEAD, kind=RosterKind.VEHICLES) == []


def test_a_vehicle_that_got_a_job_meanwhile_stops_it(sqlite_yard: Yard) -> None:
    """Found within the transaction; and more than can be made at once is refused before."""
    rows = [RosterRow(line=2, plate="LY 01")]
    made = prepared(sqlite_yard, rows=rows, plan=PLAN)
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("other", plate="LY 01"), UNIT))
    judge_again(sqlite_yard, ORGANISATION, job_id="other")
    with sqlite_yard.store.writing() as connection:
        assert not write_jobs(entries.held(connection, ORGANISATION), made)
    with pytest.raises(RefusedError, match="at most 500"):
        prepared(sqlite_yard, rows=rows * (roster_jobs.MOST_JOBS + 1), plan=PLAN)


def test_the_sheet_reads_as_any_other() -> None:
    """What the list does not say is not there; its quotation marks do no harm."""
    row = RosterRow(line=2, plate='LY "1"', type="Drover", yard="Bay 3", installer="Ines", lat_deg=51.0, lon_deg=0.5)
    sheet = read_job(sheet_of(row, PLAN), "job.toml")
    assert (sheet.vehicle.plate, sheet.vehicle.model, sheet.vehicle.system_V) == ('LY "1"', "Drover", 12)
    assert (sheet.yard, sheet.technician, sheet.date) == ("Bay 3", "Ines", "2026-04-01")
    assert sheet.place is not None
    bare = read_job(sheet_of(RosterRow(line=3, fleet_number="9"), PLAN), "job.toml")
    assert (bare.place, bare.unit_serial) == (None, None)
