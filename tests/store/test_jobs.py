"""The list of jobs: what fails first, page by page, found by any of its words."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from sqlalchemy import Connection
from tests.samples.stores import AT, ORGANISATION

from backprobe.store import entries, jobs
from backprobe.store.jobs import Wanted
from backprobe.store.opened import Store
from backprobe.store.people import Person, add_person

ROWS = {
    "a": {"urgency": 3, "verdict": "holds", "state": "proven", "search": "ly 07 ln2-00417"},
    "b": {"urgency": 0, "verdict": "fails", "state": "in_work", "search": "ly 12"},
    "c": {"urgency": 1, "verdict": "thin", "state": "in_work", "search": "ly 13 50%"},
    "d": {"urgency": 2, "verdict": "open", "state": "new", "search": "xy 99"},
}


@pytest.fixture
def yard(store: Store) -> Iterator[Connection]:
    """Four jobs in all states."""
    with store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        for number, (name, values) in enumerate(ROWS.items(), 1):
            entries.touch(held, {name: 1}, cursor=number, at=AT)
            jobs.describe(connection, ORGANISATION, job_id=name, values=values)
        ines = Person(id="ines", organisation=ORGANISATION, name="I", language="en", units="us", role="installer")
        add_person(connection, ines, made_at=AT)
        yield connection


def found(connection: Connection, wanted: Wanted) -> str:
    """The ids of the rows that are listed, in their order."""
    return "".join(row["id"] for row in jobs.listed(connection, ORGANISATION, wanted=wanted))


def test_what_fails_comes_first(yard: Connection) -> None:
    """Fails b, thin c, open d, holds a."""
    assert found(yard, Wanted()) == "bcda"
    assert found(yard, Wanted(state="in_work")) == "bc"
    assert jobs.state_counts(yard, ORGANISATION) == {"in_work": 2, "new": 1, "proven": 1}


def test_words_are_looked_for_as_they_are(yard: Connection) -> None:
    """Capitals do not matter, all words must be there, and % is a sign like others."""
    assert found(yard, Wanted(q="LY 07")) == "a"
    assert found(yard, Wanted(q="00417 ly")) == "a"
    assert found(yard, Wanted(q="50%")) == "c"
    assert found(yard, Wanted(q="%")) == "c"
    assert found(yard, Wanted(q="_")) == ""


def test_pages_join_without_gap_or_repeat(yard: Connection) -> None:
    """Pages of one row go through the whole list."""
    seen, after = "", None
    while rows := jobs.listed(yard, ORGANISATION, wanted=Wanted(after=after, limit=1)):
        seen += rows[0]["id"]
        after = jobs.place_of(rows[0])
    assert seen == "bcda"


def test_who_works_on_what(yard: Connection) -> None:
    """A job that has ended is no longer on the phone; giving a job to others takes it from the first."""
    for name in ("a", "b"):
        jobs.assign(yard, ORGANISATION, job_id=name, people=["ines", "ines"])
    assert [row["id"] for row in jobs.of_person(yard, ORGANISATION, person_id="ines")] == ["b"]
    assert jobs.people_of(yard, ORGANISATION, jobs=["a", "d"]) == {"a": [{"id": "ines", "name": "I"}]}
    assert jobs.works_on(yard, ORGANISATION, person_id="ines", jobs=["a", "d"])
    jobs.assign(yard, ORGANISATION, job_id="b", people=[])
    assert not jobs.works_on(yard, ORGANISATION, person_id="ines", jobs=["b"])


def test_what_came_after_judging_is_to_be_judged(yard: Connection) -> None:
    """All four at first; judged up to its newest entry a job is left alone, until a file arrives."""
    assert len(jobs.to_be_judged(yard, limit=9, before=AT)) == 4
    for number, name in enumerate(ROWS, 1):
        jobs.describe(yard, ORGANISATION, job_id=name, values={"judged_cursor": number})
    assert jobs.to_be_judged(yard, limit=9, before=AT) == ()
    jobs.judge_again(yard, ORGANISATION, jobs=["c"])
    assert jobs.to_be_judged(yard, limit=9, before=AT) == ((ORGANISATION, "c"),)


def test_all_rows_come_by_id(yard: Connection) -> None:
    """For exports."""
    assert [row["id"] for row in jobs.every(yard, ORGANISATION)] == ["a", "b", "c", "d"]
    assert jobs.row_of(yard, ORGANISATION, job_id="e") is None
