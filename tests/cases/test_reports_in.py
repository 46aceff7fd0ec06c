"""Reports are kept once and reach the job whose vehicle holds the unit, whichever came first."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
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
from backprobe.cases.reports_in import (
    AT_WORK_S,
    IDLE_S,
    WORK_S,
    Push,
    deliver_waiting,
    over_quota_s,
    push_reports,
)
from backprobe.cases.sync import take_batch
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.journal import read_journal
from backprobe.store import entries, jobs

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
UNIT = (DEMO / "unit.toml").read_text(encoding="utf-8")
FIRST = b"unit_id,t,lat,lon,ignition,event\nLN2-1,2026-03-31T08:05:00Z,51.5,-0.25,1,ignition_on\n"
LATER = b"unit_id,t,supply_V\nLN2-1,2026-03-31T08:06:00Z,12.61\nLN2-2,2026-03-31T08:06:00Z,12.7\n"


def push(yard: Yard, content: bytes, *, is_json: bool = False, columns: dict[str, str] | None = None) -> dict[str, Any]:
    """A push by a feed of its own."""
    feed = add_feed(yard, LEAD, label="collector", columns=columns or {})
    caller, row = feed_of_token(yard, str(feed["token"]))
    return push_reports(yard, caller, feed=row, push=Push(content, is_json=is_json))


def tables(yard: Yard, job: str) -> list[str]:
    """The files of reports in a job as they stand there, by name. The journal must be sound."""
    with yard.store.reading() as connection:
        raws = entries.of_job(connection, ORGANISATION, job_id=job)
    assert read_journal(raws).faults == ()
    found = []
    for one in fold(read_entry(raw) for raw in raws).of_kind("reports"):
        path = yard.blobs.path(str(one.body["sha256"]))
        assert path is not None
        found.append(path.read_text(encoding="utf-8"))
    return found


def table(yard: Yard, job: str) -> str | None:
    """The one file of reports in a job; None where there is none."""
    found = tables(yard, job)
    assert len(found) <= 1
    return found[0] if found else None


def passes(yard: Yard, job: str, *, seconds: int) -> None:
    """Time goes by since reports and people last reached a job."""
    with yard.store.writing() as connection:
        row = jobs.row_of(connection, ORGANISATION, job_id=job)
        assert row is not None
        earlier = {
            name: (datetime.fromisoformat(row[name]) - timedelta(seconds=seconds)).isoformat().replace("+00:00", "Z")
            for name in ("said_at", "reported_at")
            if row[name] is not None
        }
        jobs.describe(connection, ORGANISATION, job_id=job, values=earlier)


HEADING = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event\n"


def test_each_push_is_an_entry_with_a_file_of_its_own(yard: Yard) -> None:
    """Two pushes, two files, by their first report; the same push again changes nothing. On both databases."""
    make_job(yard, LEAD, new=NewJob(job_sheet("a", serial="ln2-1"), UNIT))
    assert push(yard, LATER) == {"kept": 2, "known": 0, "skipped": 0, "jobs": ["a"]}
    passes(yard, "a", seconds=IDLE_S + 1)
    assert push(yard, FIRST) == {"kept": 1, "known": 0, "skipped": 0, "jobs": ["a"]}
    assert tables(yard, "a") == [
        HEADING + "LN2-1,2026-03-31T08:05:00Z,,51.5,-0.25,,,,,,1,ignition_on\n",
        HEADING + "LN2-1,2026-03-31T08:06:00Z,,,,,,,,12.61,,\n",
    ]
    with yard.store.reading() as connection:
        before = entries.newest(connection, ORGANISATION)
    passes(yard, "a", seconds=IDLE_S + 1)
    assert push(yard, FIRST) == {"kept": 0, "known": 1, "skipped": 0, "jobs": ["a"]}
    with yard.store.reading() as connection:
        assert entries.newest(connection, ORGANISATION) == before


def minutes(count: int, *, start: int = 0) -> list[bytes]:
    """Pushes of a report each, a minute apart."""
    rows = (
        f"LN2-1,2026-03-{1 + n // 1440:02}T{n // 60 % 24:02}:{n % 60:02}:00Z\n" for n in range(start, start + count)
    )
    return [b"unit_id,t\n" + row.encode() for row in rows]


def test_a_unit_that_reports_every_minute_makes_an_entry_an_hour(yard: Yard) -> None:
    """Nobody works on the job: the first report comes at once, the 60 of the next hour together, none is lost."""
    make_job(yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1"), UNIT))
    for content in minutes(61):
        assert push(yard, content)["jobs"] == ["a"]
    assert [text.count("\n") for text in tables(yard, "a")] == [2]
    assert deliver_waiting(yard) == 0
    passes(yard, "a", seconds=IDLE_S + 1)
    assert deliver_waiting(yard) == 1
    assert [text.count("\n") for text in tables(yard, "a")] == [2, 61]
    assert deliver_waiting(yard) == 0


def test_while_somebody_works_on_the_job_reports_come_soon(sqlite_yard: Yard, ines: Caller) -> None:
    """An entry of a phone's came just now: the second push waits for 10 s, not for an hour."""
    phone = Phone(job="a")
    take_batch(sqlite_yard, [phone.claims("serial", "LN2-1").raw.decode()], caller=ines, at=now())
    for content in minutes(2):
        push(sqlite_yard, content)
    assert len(tables(sqlite_yard, "a")) == 1
    assert deliver_waiting(sqlite_yard) == 0
    passes(sqlite_yard, "a", seconds=AT_WORK_S + 1)
    assert deliver_waiting(sqlite_yard) == 1
    push(sqlite_yard, minutes(1, start=2)[0])
    passes(sqlite_yard, "a", seconds=WORK_S + 1)  # two hours without a word from the phone, or a report
    assert deliver_waiting(sqlite_yard) == 1
    push(sqlite_yard, minutes(1, start=3)[0])
    passes(sqlite_yard, "a", seconds=AT_WORK_S + 1)
    assert deliver_waiting(sqlite_yard) == 0
    assert len(tables(sqlite_yard, "a")) == 3


def test_much_is_handed_on_at_once(sqlite_yard: Yard, monkeypatch: pytest.MonkeyPatch) -> None:
    """More than one entry holds goes into two; what a job cannot hold is kept outside it, and does not wait."""
    monkeypatch.setattr(reports_in, "MOST_IN_ENTRY", 3)
    monkeypatch.setattr(reports_in, "MOST_IN_JOB", 5)
    monkeypatch.setattr(reports_in, "WORTH_BYTES", 10)
    make_job(sqlite_yard, LEAD, new=NewJob(job_sheet("a", serial="LN2-1"), UNIT))
    push(sqlite_yard, b"unit_id,t\n" + b"".join(b"LN2-1,2026-03-31T08:0%d:00Z\n" % n for n in range(8)))
    assert [text.count("\n") - 1 for text in tables(sqlite_yard, "a")] == [3, 3]
    assert deliver_waiting(sqlite_yard) == 0


def test_a_token_has_so_much_a_day(yard: Yard, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of two pushes a day the third is one too many until midnight (UTC); so is one with too many bytes in all."""
    monkeypatch.setattr(reports_in, "MOST_PUSHES_A_DAY", 2)
    feed = feed_of_token(yard, str(add_feed(yard, LEAD, label="a", columns={})["token"]))[1]
    other = feed_of_token(yard, str(add_feed(yard, LEAD, label="b", columns={})["token"]))[1]
    late = datetime(2026, 3, 31, 23, 59, 50, tzinfo=UTC)
    assert [over_quota_s(yard, feed=feed, size=9, at=late) for _ in range(3)] == [None, None, 10]
    assert over_quota_s(yard, feed=other, size=9, at=late) is None
    assert over_quota_s(yard, feed=feed, size=9, at=late + timedelta(seconds=10)) is None
    monkeypatch.setattr(reports_in, "MOST_BYTES_A_DAY", 17)
    assert over_quota_s(yard, feed=other, size=9, at=late) == 10


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
