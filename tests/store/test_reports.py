"""Reports are kept once and know which job they have reached."""

from __future__ import annotations

import pytest
from tests.samples.stores import AT, ORGANISATION

from backprobe.store import entries, jobs, reports, units
from backprobe.store.opened import Store
from backprobe.store.reports import Turn
from backprobe.store.units import Claim

TURN = Turn(bytes=1000, work_since="2026-03-31T06", at_work="2026-03-31T07:59", idle="2026-03-31T07")


def row(digest: str, unit: str, time_s: float) -> dict[str, object]:
    """A row of a unit."""
    kept = {"organisation": ORGANISATION, "digest": digest, "unit": unit, "time_s": time_s}
    return {**kept, "row": f"{unit},{time_s}", "received_at": AT, "feed": "f1"}


def test_rows_are_kept_once_and_delivered_once(store: Store) -> None:
    """Of L1 two rows, by time; the job that has the unit is the one to reach, until it has ended."""
    with store.writing() as connection:
        reports.add(connection, [row("b", "L1", 20.0), row("a", "L1", 10.0), row("c", "L2", 5.0)])
        reports.add(connection, [row("b", "L1", 20.0)])
        assert reports.known(connection, ORGANISATION, digests=["a", "z"]) == {"a"}
        assert [each["digest"] for each in reports.waiting(connection, ORGANISATION, unit="L1", most=9)] == ["a", "b"]
        assert [each["digest"] for each in reports.waiting(connection, ORGANISATION, unit="L1", most=1)] == ["a"]
        assert reports.waiting_units(connection, turn=TURN, limit=9) == ()
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") is None
        entries.touch(entries.held(connection, ORGANISATION), {"job-7": 0, "job-8": 0}, cursor=0, at=AT)
        units.claim(connection, ORGANISATION, wanted=Claim("L1", "job-7", None))
        assert reports.waiting_units(connection, turn=TURN, limit=9) == ((ORGANISATION, "L1"),)
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") == "job-7"
        assert reports.still_waiting(connection, ORGANISATION, digests=["a", "b", "z"]) == {"a", "b"}
        reports.delivered(connection, ORGANISATION, digests=["a", "b"], job_id="job-7")
        assert reports.still_waiting(connection, ORGANISATION, digests=["a", "b"]) == frozenset()
        assert reports.waiting_units(connection, turn=TURN, limit=9) == ()
        reached = [
            reports.how_many_reached(connection, ORGANISATION, unit="L1", job_id=name) for name in ("job-7", "job-8")
        ]
        assert reached == [2, 0]
        jobs.describe(connection, ORGANISATION, job_id="job-7", values={"state": "proven"})
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") is None
        jobs.describe(connection, ORGANISATION, job_id="job-8", values={"unit_id": "L1"})
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") == "job-8"


@pytest.mark.parametrize(
    ("reported_at", "said_at", "more", "due"),
    [
        (None, None, 0, True),  # none yet
        ("2026-03-31T07:30", None, 0, False),  # half an hour ago, nobody works on it
        ("2026-03-31T07:30", "2026-03-31T05", 0, False),  # nor in the last two hours
        ("2026-03-31T07:30", "2026-03-31T07", 0, True),  # somebody does
        ("2026-03-31T07:59:30", "2026-03-31T07", 0, False),  # but it was given some just now
        ("2026-03-31T06:59", None, 0, True),  # an hour ago
        ("2026-03-31T07:59:30", None, 990, True),  # many
    ],
)
def test_when_a_job_s_turn_comes(
    store: Store, reported_at: str | None, said_at: str | None, more: int, due: bool
) -> None:
    """At once, soon while somebody works on it, by the hour, or when there are many."""
    with store.writing() as connection:
        entries.touch(entries.held(connection, ORGANISATION), {"job-7": 0}, cursor=0, at=AT)
        units.claim(connection, ORGANISATION, wanted=Claim("L1", "job-7", None))
        assert not reports.is_due(connection, ORGANISATION, unit="L1", job_id="job-7", turn=TURN)  # there are none
        reports.add(connection, [{**row("a", "L1", 1.0), "row": "x" * (10 + more)}])
        values = {"reported_at": reported_at, "said_at": said_at}
        jobs.describe(connection, ORGANISATION, job_id="job-7", values=values)
        assert reports.is_due(connection, ORGANISATION, unit="L1", job_id="job-7", turn=TURN) is due
        assert reports.waiting_units(connection, turn=TURN, limit=9) == (((ORGANISATION, "L1"),) if due else ())


def test_pushes_are_counted_by_the_day(store: Store) -> None:
    """Two on one day; the next day begins anew."""
    feed = {"id": "f1", "organisation": ORGANISATION, "label": "collector", "token_sha256": "t", "made_at": AT}
    with store.writing() as connection:
        reports.add_feed(connection, feed, columns={})
        assert reports.count_push(connection, "f1", day="2026-03-30", size=5) == (1, 5)
        assert reports.count_push(connection, "f1", day="2026-03-30", size=7) == (2, 12)
        assert reports.count_push(connection, "f1", day="2026-03-31", size=3) == (1, 3)


def test_a_feed_is_known_by_its_token_until_it_is_withdrawn(store: Store) -> None:
    """Its column map comes back as it was given."""
    feed = {"id": "f1", "organisation": ORGANISATION, "label": "collector", "token_sha256": "t", "made_at": AT}
    with store.writing() as connection:
        reports.add_feed(connection, feed, columns={"t": "Sent at"})
        known = reports.feed_by_token(connection, "t")
        assert known is not None
        assert known["columns"] == '{"t": "Sent at"}'
        assert [each["label"] for each in reports.feeds(connection, ORGANISATION)] == ["collector"]
        assert reports.withdraw_feed(connection, ORGANISATION, feed_id="f1", at=AT)
        assert not reports.withdraw_feed(connection, ORGANISATION, feed_id="f2", at=AT)
        assert reports.feed_by_token(connection, "t") is None
