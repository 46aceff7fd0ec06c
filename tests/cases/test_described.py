"""The row of a job says what its entries come to."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from tests.cases.test_held_job import hand_in
from tests.samples.demo_jobs import demo_job
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.described import describe_job, plain, state_of
from backprobe.cases.held_job import held_job
from backprobe.cases.may import Caller
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.judge import judge_job
from backprobe.store import jobs

SIGNED = Finding(
    id="sign_off", stage=Stage.HAND_OVER, what="Sign-off", verdict=Verdict.HOLDS, because="by Ines", next=None
)


def test_a_judged_job_is_described(sqlite_yard: Yard, ines: Caller, tmp_path: Path) -> None:
    """Vehicle, unit, state, counts of findings and words to look for."""
    job = demo_job(tmp_path, "truck-12")
    hand_in(sqlite_yard, ines, job)
    with sqlite_yard.store.writing() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=job.id)
        describe_job(connection, ORGANISATION, held=held, cursor=99)
        row = jobs.row_of(connection, ORGANISATION, job_id=job.id)
    assert row is not None
    assert held.judged is not None
    verdicts = [str(finding.verdict) for finding in held.judged.findings]
    assert (row["fails"], row["thin"], row["open"]) == tuple(verdicts.count(each) for each in ("fails", "thin", "open"))
    assert (row["name"], row["state"], row["judged_cursor"]) == ("LY 12", "in_work", 99)
    assert row["urgency"] == (0 if row["fails"] else 1 if row["thin"] else 2)
    assert (row["next"], row["next_stage"]) == (held.judged.next, str(held.judged.next_stage))
    assert "ly 12" in row["search"]


@pytest.mark.parametrize(
    ("truck", "end", "place", "word"), [("23", "abandoned", 4, None), ("18", "provisional", 3, "night")]
)
def test_a_job_that_has_ended_asks_for_no_work(
    sqlite_yard: Yard, ines: Caller, tmp_path: Path, truck: str, end: str, place: int, word: str | None
) -> None:
    """Signed, it stands behind all that is in work, and says at most what is owed."""
    job = demo_job(tmp_path, f"truck-{truck}")
    hand_in(sqlite_yard, ines, job)
    with sqlite_yard.store.writing() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=job.id)
        assert held.judged is not None
        describe_job(connection, ORGANISATION, held=held, cursor=1)
        before = jobs.row_of(connection, ORGANISATION, job_id=job.id)
        signed = judge_job(replace(held.judged.evidence, sign_off=SIGNED))
        describe_job(connection, ORGANISATION, held=replace(held, judged=signed, end=end), cursor=2)
        row = jobs.row_of(connection, ORGANISATION, job_id=job.id)
    assert before is not None
    assert row is not None
    assert before["urgency"] in (0, 2)
    assert (row["state"], row["urgency"], row["verdict"]) == (end, place, before["verdict"])
    assert (word in row["next"]) if word else row["next"] is None


def test_a_job_of_which_little_is_known_is_named_by_its_id(sqlite_yard: Yard, ines: Caller) -> None:
    """What was claimed is found by it all the same; the reason why it is not judged is what is to be done."""
    phone = Phone()
    take_batch(sqlite_yard, [phone.claims("serial", "LN2-1").raw.decode()], caller=ines, at=AT)
    with sqlite_yard.store.writing() as connection:
        held = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=JOB)
        describe_job(connection, ORGANISATION, held=held, cursor=1)
        row = jobs.row_of(connection, ORGANISATION, job_id=JOB)
    assert row is not None
    assert (row["name"], row["serial"], row["verdict"], row["urgency"]) == (JOB, "LN2-1", "open", 2)
    assert row["next"] == held.fault
    assert row["search"] == f"{JOB} ln2-1"
    assert state_of(held) == "in_work"


def test_texts_fit_every_database() -> None:
    """On one line, without the letter that no database takes, not too long."""
    assert plain("a\0b\nc") == "a b c"
    assert plain("x" * 500) == "x" * 200
    assert plain(None) is plain("  ") is None
