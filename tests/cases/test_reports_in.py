"""Reports are kept once and reach the job whose vehicle holds the unit, whichever came first."""

from __future__ import annotations

import json
from typing import Any

import pytest
from tests.cases.test_unit_claims import SIGNED
from tests.samples.demo_jobs import DEMO
from tests.samples.journals import Phone
from tests.samples.sheets import job_sheet
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases import reports_in
from backprobe.cases.desk_people import add_feed
from backprobe.cases.enrol import feed_of_token
from backprobe.cases.may import Caller, Role
from backprobe.cases.new_job import NewJob, make_job
from backprobe.cases.reports_in import Push, deliver_waiting, push_reports
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.journal import read_journal
from backprobe.store import entries

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
FIRST = b"unit_id,t,lat,lon,ignition,event\nLN2-1,2026-03-31T08:05:00Z,51.5,-0.25,1,ignition_on\n"
LATER = b"unit_id,t,supply_V\nLN2-1,2026-03-31T08:06:00Z,12.61\nLN2-2,2026-03-31T08:06:00Z,12.7\n"


def push(yard: Yard, content: bytes, *, is_json: bool = False, columns: dict[str, str] | None = None) -> dict[str, Any]:
    """A push by a feed of its own."""
    feed = add_feed(yard, LEAD, label="collector", columns=columns or {})
    caller, row = feed_of_token(yard, str(feed["token"]))
    return push_reports(yard, caller, feed=row, push=Push(content, is_json=is_json))


def table(yard: Yard, job: str) -> str | None:
    """The reports in a job as they stand there; None where there are none. The journal must be sound."""
    with yard.store.reading() as connection:
        raws = entries.of_job(connection, ORGANISATION, job_id=job)
    assert read_journal(raws).faults == ()
    standing = fold(read_entry(raw) for raw in raws).of_kind("reports")
    if not standing:
        return None
    [one] = standing
    path = yard.blobs.path(str(one.body["sha256"]))
    assert path is not None
    return path.read_text(encoding="utf-8")


def test_reports_reach_the_job_that_has_the_unit(sqlite_yard: Yard) -> None:
    """Two pushes, one file in the job, by time; the same push again changes nothing."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a", serial="ln2-1"), UNIT))
    assert push(sqlite_yard, LATER) == {"kept": 2, "known": 0, "skipped": 0, "jobs": ["a"]}
    assert push(sqlite_yard, FIRST) == {"kept": 1, "known": 0, "skipped": 0, "jobs": ["a"]}
    said = table(sqlite_yard, "a")
    assert said == (
        "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event\n"
        "LN2-1,2026-03-31T08:05:00Z,,51.5,-0.25,,,,,,1,ignition_on\n"
        "LN2-1,2026-03-31T08:06:00Z,,,,,,,,12.61,,\n"
    )
    with sqlite_yard.store.reading() as connection:
        before = entries.newest(connection, ORGANISATION)
    assert push(sqlite_yard, FIRST) == {"kept": 0, "known": 1, "skipped": 0, "jobs": ["a"]}
    with sqlite_yard.store.reading() as connection:
        assert entries.newest(connection, ORGANISATION) == before


def test_what_came_before_the_unit_was_claimed_reaches_the_job_then(sqlite_yard: Yard, ines: Caller) -> None:
    """Kept while the unit is in no vehicle; handed on when a phone claims it."""
    assert push(sqlite_yard, LATER)["jobs"] == []
    assert deliver_waiting(sqlite_yard) == 0
    take_batch(sqlite_yard, [Phone(job="b").claims("serial", "LN2-2").raw.decode()], caller=ines, at=AT)
    assert deliver_waiting(sqlite_yard) == 1
    said = table(sqlite_yard, "b")
    assert said is not None
    assert "LN2-2" in said
    assert "LN2-1" not in said
    assert deliver_waiting(sqlite_yard) == 0


def test_the_sheet_s_own_names_for_columns_are_used(sqlite_yard: Yard) -> None:
    """Whoever reads the job's reports looks for these."""
    sheet = job_sheet("a", serial="LN2-1") + '[reports.columns]\nt = "Sent at"\n'
    make_job(sqlite_yard, LEAD, new=NewJob(sheet, UNIT))
    push(sqlite_yard, FIRST)
    said = table(sqlite_yard, "a")
    assert said is not None
    assert said.startswith("unit_id,Sent at,received_at,")


def test_json_lines_and_other_names(sqlite_yard: Yard) -> None:
    """By the feed's column map; lines that are none are counted."""
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1"), UNIT))
    lines = [json.dumps({"Device": "LN2-1", "Sent at": "2026-03-31T08:05:00Z", "Volts": 12.6}), "{"]
    columns = {"unit_id": "Device", "t": "Sent at", "supply_V": "Volts"}
    answer = push(sqlite_yard, "\n".join(lines).encode(), is_json=True, columns=columns)
    assert answer == {"kept": 1, "known": 0, "skipped": 1, "jobs": ["a"]}
    said = table(sqlite_yard, "a")
    assert said is not None
    assert "LN2-1,2026-03-31T08:05:00Z,,,,,,,,12.6,," in said


def test_a_job_holds_the_newest(sqlite_yard: Yard, monkeypatch: pytest.MonkeyPatch) -> None:
    """With room for 2 of 3, the two later ones; none waits any more."""
    monkeypatch.setattr(reports_in, "MOST_IN_JOB", 2)
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1"), UNIT))
    push(sqlite_yard, b"unit_id,t\n" + b"".join(b"LN2-1,2026-03-31T08:0%d:00Z\n" % n for n in range(3)))
    said = table(sqlite_yard, "a")
    assert said is not None
    assert [line[6:22] for line in said.splitlines()[1:]] == ["2026-03-31T08:01", "2026-03-31T08:02"]
    assert deliver_waiting(sqlite_yard) == 0


def test_what_cannot_be_read_is_refused(sqlite_yard: Yard, ines: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    """No table at all, too many rows, somebody who is no feed; reports without a unit are passed over."""
    with pytest.raises(InputError):
        push(sqlite_yard, b"nonsense")
    monkeypatch.setattr(reports_in, "MOST_ROWS", 1)
    with pytest.raises(RefusedError) as refusal:
        push(sqlite_yard, b"unit_id,t\n" + b"x,2026-03-31T08:05:00Z\n" * 9)
    assert refusal.value.code == "too_large"
    with pytest.raises(RefusedError) as refusal:
        push_reports(sqlite_yard, ines, feed={}, push=Push(b"", is_json=False))
    assert refusal.value.code == "not_allowed"
    assert push(sqlite_yard, b"t\n2026-03-31T08:05:00Z\n") == {"kept": 0, "known": 0, "skipped": 1, "jobs": []}


def test_after_a_job_was_signed_off_nothing_more_is_put_into_it(sqlite_yard: Yard, ines: Caller) -> None:
    """Proven: the sign-off still covers all there is; the report is kept, for whichever job comes next."""
    phone = Phone(job="a")
    claim = phone.claims("serial", "LN2-1")
    body = {**SIGNED, "end": "proven", "verdict": "holds", "heads": [["phone-a", 1, "ab" * 32]], "entries": 1}
    done = phone.say("sign_off", {**body, "signature": "0" * 128})
    take_batch(sqlite_yard, [claim.raw.decode(), done.raw.decode()], caller=ines, at=AT)
    assert push(sqlite_yard, FIRST) == {"kept": 1, "known": 0, "skipped": 0, "jobs": []}
    assert table(sqlite_yard, "a") is None
