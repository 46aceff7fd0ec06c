"""A unit is in one vehicle: the database's key decides."""

from __future__ import annotations

import threading

from tests.samples.stores import ORGANISATION

from backprobe.store import units
from backprobe.store.opened import Store
from backprobe.store.units import Claim

SERIAL = "LN2-00417"


def test_the_second_is_told_who_has_it(store: Store) -> None:
    """The first claim stands; let go, the unit is free again; another job cannot let go of it."""
    first, second = Claim(SERIAL, "job-a", None), Claim(SERIAL, "job-b", None)
    with store.writing() as connection:
        assert units.claim(connection, ORGANISATION, wanted=first) == first
        assert units.claim(connection, ORGANISATION, wanted=second) == first
        units.release(connection, ORGANISATION, serial=SERIAL, job="job-b")
        assert units.holder(connection, ORGANISATION, serial=SERIAL) == first
        units.name_vehicle(connection, ORGANISATION, job="job-a", vehicle="5ZLDR7HV5KR200417")
        assert units.held_by(connection, ORGANISATION, job="job-a")[0].vehicle == "5ZLDR7HV5KR200417"
        units.release(connection, ORGANISATION, serial=SERIAL, job="job-a")
        assert units.claim(connection, ORGANISATION, wanted=second) == second
        assert units.held_by(connection, ORGANISATION) == (second,)


def test_who_waits_is_noted(store: Store) -> None:
    """A job that was refused is known by the entry that says so, until it waits no more."""
    with store.writing() as connection:
        units.wait(connection, ORGANISATION, serial=SERIAL, job="job-b", entry="e1")
        units.wait(connection, ORGANISATION, serial=SERIAL, job="job-b", entry="e2")
        assert units.waits_of(connection, ORGANISATION, job="job-b") == {SERIAL: "e1"}
        assert units.waiting_for(connection, ORGANISATION, serial=SERIAL) == ("job-b",)
        units.wait_no_more(connection, ORGANISATION, serial=SERIAL, job="job-b")
        assert units.waits_of(connection, ORGANISATION, job="job-b") == {}


def test_of_many_that_ask_at_once_one_gets_it(store: Store) -> None:
    """16 threads, each in a transaction of its own and without waiting for the organisation's turn: one holder."""
    start = threading.Barrier(16)
    told: list[str] = []

    def ask(number: int) -> None:
        start.wait()
        with store.writing() as connection:
            told.append(units.claim(connection, ORGANISATION, wanted=Claim(SERIAL, f"job-{number}", None)).job)

    threads = [threading.Thread(target=ask, args=(number,)) for number in range(16)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(told) == 16
    assert len(set(told)) == 1
