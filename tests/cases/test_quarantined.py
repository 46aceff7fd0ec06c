"""What is in quarantine is taken in or left out by the lead, once."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.may import Caller, Role
from backprobe.cases.quarantined import decide, list_quarantine
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.store import entries, units

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def numbers(yard: Yard) -> list[int]:
    """What there is to decide on."""
    return [int(str(item["number"])) for item in list_quarantine(yard, LEAD)]


def test_taken_in_it_counts_as_if_it_had_come_in_time(sqlite_yard: Yard, ines: Caller) -> None:
    """A claim by a withdrawn phone: taken in, the unit is claimed."""
    claim = Phone().claims("serial", "LN2-1")
    take_batch(sqlite_yard, [claim.raw.decode()], caller=replace(ines, role=Role.WITHDRAWN_PHONE), at=AT)
    [number] = numbers(sqlite_yard)
    decide(sqlite_yard, LEAD, number=number, decision="take")
    with sqlite_yard.store.reading() as connection:
        kept = entries.of_job(connection, ORGANISATION, job_id=JOB)
        holder = units.holder(connection, ORGANISATION, serial="LN2-1")
    assert kept[0] == claim.raw
    assert holder is not None
    assert numbers(sqlite_yard) == []
    with pytest.raises(RefusedError) as refusal:
        decide(sqlite_yard, LEAD, number=number, decision="leave")
    assert refusal.value.code == "not_found"


def test_a_taken_id_stays_taken(sqlite_yard: Yard, ines: Caller) -> None:
    """The second bytes can only be left out."""
    first, second = Phone().reads("Red", "on", "12.3"), Phone().reads("Red", "on", "9.9")
    take_batch(sqlite_yard, [first.raw.decode(), second.raw.decode()], caller=ines, at=AT)
    [number] = numbers(sqlite_yard)
    with pytest.raises(RefusedError) as refusal:
        decide(sqlite_yard, LEAD, number=number, decision="take")
    assert refusal.value.code == "id_taken"
    decide(sqlite_yard, LEAD, number=number, decision="leave")
    assert numbers(sqlite_yard) == []


def test_only_the_lead_decides(sqlite_yard: Yard, ines: Caller) -> None:
    """A phone does not even see it."""
    with pytest.raises(RefusedError):
        list_quarantine(sqlite_yard, ines)
