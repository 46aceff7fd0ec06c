"""A phone's day holds what its person is to do, and the units of all."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.day import day_of
from backprobe.cases.may import Caller, Role
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.store import jobs


def test_hers_and_the_units_of_all(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Ines began the job: it is on her phone, with its cursor; the unit is seen by both."""
    take_batch(sqlite_yard, [Phone().claims("serial", "ln2-1").raw.decode()], caller=ines, at=AT)
    hers, other = (day_of(sqlite_yard, caller) for caller in (ines, marta))
    [job] = hers["jobs"]
    assert (job["id"], job["state"], job["cursor"], job["files"]) == (JOB, "in_work", 2, {})
    assert job["unit"] == {"sheet": None, "serial": "ln2-1"}
    assert job["place"] is None
    assert job["said"] is None  # there is no sheet to judge it by
    assert other["jobs"] == []
    assert hers["serials"] == other["serials"] == [{"serial": "LN2-1", "job": JOB, "vehicle": None}]


def test_what_has_ended_is_no_longer_there(sqlite_yard: Yard, ines: Caller) -> None:
    """Proven or abandoned."""
    take_batch(sqlite_yard, [Phone().reads("Red", "on", "1").raw.decode()], caller=ines, at=AT)
    for state, shown in (("proven", 0), ("provisional", 1), ("abandoned", 0), ("in_work", 1)):
        with sqlite_yard.store.writing() as connection:
            jobs.describe(connection, ORGANISATION, job_id=JOB, values={"state": state, "judged_cursor": 1})
        assert len(day_of(sqlite_yard, ines)["jobs"]) == shown


def test_a_withdrawn_phone_has_no_day(sqlite_yard: Yard, ines: Caller) -> None:
    """It is told why."""
    with pytest.raises(RefusedError) as refusal:
        day_of(sqlite_yard, replace(ines, role=Role.WITHDRAWN_PHONE))
    assert refusal.value.code == "phone_withdrawn"
