"""What arrives is judged in the background; a fault in one job does not keep the others waiting."""

from __future__ import annotations

import time

import pytest
from tests.samples.journals import Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases import judging
from backprobe.cases.may import Caller
from backprobe.cases.sync import take_batch
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.store import jobs


def arrive(yard: Yard, caller: Caller, *names: str) -> None:
    """A reading in each of some jobs."""
    for number, name in enumerate(names):
        entry = Phone(ids=number * 10, job=name).reads("Red", "on", "12.3")
        take_batch(yard, [entry.raw.decode()], caller=caller, at=AT)


def waiting(yard: Yard) -> list[str]:
    """The jobs that wait to be judged."""
    with yard.store.reading() as connection:
        return [name for _, name in jobs.to_be_judged(connection, limit=99, before=now())]


def test_what_waits_is_judged_once(sqlite_yard: Yard, ines: Caller) -> None:
    """Two jobs, then none."""
    arrive(sqlite_yard, ines, "a", "b")
    assert waiting(sqlite_yard) == ["a", "b"]
    assert judging.judge_waiting(sqlite_yard) == 2
    assert waiting(sqlite_yard) == []
    assert judging.judge_waiting(sqlite_yard) == 0
    assert judging.judge_again(sqlite_yard, ORGANISATION, job_id="no such job") is None


def test_a_fault_in_one_job_leaves_the_others(sqlite_yard: Yard, ines: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    """The faulty one says so in its row, and is tried again when something new arrives."""
    arrive(sqlite_yard, ines, "a", "b")
    right = judging.held_job

    def faulty(*args: object, organisation: str, job_id: str) -> object:
        if job_id == "a":
            raise ZeroDivisionError
        return right(*args, organisation=organisation, job_id=job_id)  # type: ignore[arg-type]

    monkeypatch.setattr(judging, "held_job", faulty)
    assert judging.judge_waiting(sqlite_yard) == 2
    assert waiting(sqlite_yard) == []
    with sqlite_yard.store.reading() as connection:
        rows = {name: jobs.row_of(connection, ORGANISATION, job_id=name) for name in "ab"}
    assert "could not be judged" in rows["a"]["next"]
    assert "could not be judged" not in rows["b"]["next"]


def test_the_thread_does_it_by_itself(sqlite_yard: Yard, ines: Caller) -> None:
    """And ends when it is told to."""
    thread = judging.Judging(sqlite_yard)
    thread.start()
    try:
        arrive(sqlite_yard, ines, "a")
        give_up = time.monotonic() + 20
        while waiting(sqlite_yard) and time.monotonic() < give_up:
            time.sleep(0.02)
        assert waiting(sqlite_yard) == []
    finally:
        thread.stop()


def test_the_thread_outlives_a_fault(sqlite_yard: Yard, ines: Caller, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever went wrong once, the next look judges."""
    right, calls = judging.judge_waiting, []

    def stumbling(yard: Yard) -> int:
        calls.append(1)
        if len(calls) == 1:
            raise ZeroDivisionError
        return right(yard)

    monkeypatch.setattr(judging, "judge_waiting", stumbling)
    arrive(sqlite_yard, ines, "a")
    thread = judging.Judging(sqlite_yard)
    thread.start()
    try:
        give_up = time.monotonic() + 20
        while waiting(sqlite_yard) and time.monotonic() < give_up:
            time.sleep(0.02)
        assert waiting(sqlite_yard) == []
        assert len(calls) >= 2
    finally:
        thread.stop()
