"""Entries are kept as their exact bytes, and read in the order in which they became readable."""

from __future__ import annotations

import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.errors import StoreError
from backprobe.store import entries, jobs
from backprobe.store.opened import Store
from backprobe.store.people import Person, add_person

BLOB = "ab" * 32


def test_bytes_come_back_as_they_went_in(store: Store) -> None:
    """Three entries get the cursors 1, 2, 3 and are the same bytes."""
    phone = Phone()
    said = [phone.reads("Red", "on", "12.30"), phone.reads("Ω ± –", "off", "0.01"), phone.claims("serial", "LN2-1")]
    with store.writing() as connection:
        assert entries.add(entries.held(connection, ORGANISATION), said, received_at=AT, phone="p1") == 3
    with store.reading() as connection:
        found = entries.pull(connection, ORGANISATION, after=0, limit=500, job_id=None, person=None)
        assert [each.raw for each in found] == [each.raw for each in said]
        assert [each.cursor for each in found] == [1, 2, 3]
        assert {each.received_at for each in found} == {AT}
        assert entries.newest(connection, ORGANISATION) == 3
        assert entries.of_job(connection, ORGANISATION, job_id=JOB) == tuple(each.raw for each in said)
        assert entries.of_job(connection, ORGANISATION, job_id=JOB, kinds=["claim"]) == (said[2].raw,)
        assert entries.head(connection, ORGANISATION, job_id=JOB, device="phone-a") == (3, said[2].digest)
        assert entries.head(connection, ORGANISATION, job_id=JOB, device="other") is None
        assert entries.counts(connection, ORGANISATION) == {JOB: 3}


def test_reading_goes_on_from_a_cursor(store: Store) -> None:
    """Five entries in pages of two: 1 2, 3 4, 5."""
    phone = Phone()
    said = [phone.reads("Red", "on", f"12.{n}") for n in range(5)]
    with store.writing() as connection:
        entries.add(entries.held(connection, ORGANISATION), said, received_at=AT, phone=None)
    pages, after = [], 0
    with store.reading() as connection:
        while page := entries.pull(connection, ORGANISATION, after=after, limit=2, job_id=None, person=None):
            pages.append([each.cursor for each in page])
            after = page[-1].cursor
    assert pages == [[1, 2], [3, 4], [5]]


def test_known_ids_are_told_with_their_digests(store: Store) -> None:
    """Of two ids one is known."""
    phone = Phone()
    one, other = phone.reads("Red", "on", "12.3"), phone.reads("Red", "off", "0")
    with store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        entries.add(held, [one], received_at=AT, phone=None)
        assert entries.known(held, [one.id, other.id]) == {one.id: one.digest}


def test_nothing_is_written_for_nobody(store: Store) -> None:
    """An organisation that is not there has no turn to wait for."""
    with pytest.raises(StoreError), store.writing() as connection:
        entries.held(connection, "nobody")


def test_a_person_reads_the_jobs_that_were_given_to_them(store: Store) -> None:
    """Of two jobs one was given to Ines: its entries alone are hers to read."""
    hers, other = Phone(job="hers"), Phone("phone-b", ids=100, job="other")
    with store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        said = [hers.reads("Red", "on", "12.3"), other.reads("Red", "on", "12.4")]
        cursor = entries.add(held, said, received_at=AT, phone=None)
        assert set(entries.touch(held, {"hers": 1, "other": 1}, cursor=cursor, at=AT)) == {"hers", "other"}
        assert entries.touch(held, {"hers": 1}, cursor=cursor, at=AT) == ()
        ines = Person(id="ines", organisation=ORGANISATION, name="I", language="en", units="metric", role="installer")
        add_person(connection, ines, made_at=AT)
        jobs.assign(connection, ORGANISATION, job_id="hers", people=["ines"])
        found = entries.pull(connection, ORGANISATION, after=0, limit=9, job_id=None, person="ines")
        assert [each.raw for each in found] == [said[0].raw]
        row = jobs.row_of(connection, ORGANISATION, job_id="hers")
    assert row is not None
    assert (row["entries"], row["state"], row["cursor"]) == (2, "new", 2)


def test_a_blob_belongs_to_the_jobs_that_name_it(store: Store) -> None:
    """Named twice in one job, it is still that one job's."""
    phone = Phone()
    body = {"file": "photos/a.jpg", "sha256": BLOB, "bytes": 3}
    with store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        entries.add(held, [phone.say("photo", body, blobs=(BLOB,))], received_at=AT, phone=None)
        entries.add(held, [phone.say("photo", body, blobs=(BLOB,))], received_at=AT, phone=None)
        assert entries.jobs_of_blob(connection, ORGANISATION, sha256=BLOB) == {JOB}
        assert entries.jobs_of_blob(connection, ORGANISATION, sha256="cd" * 32) == frozenset()
