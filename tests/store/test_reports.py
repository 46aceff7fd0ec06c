"""Reports are kept once and know which job they have reached."""

from __future__ import annotations

from tests.samples.stores import AT, ORGANISATION

from backprobe.store import entries, jobs, reports, units
from backprobe.store.opened import Store
from backprobe.store.units import Claim


def row(digest: str, unit: str, time_s: float) -> dict[str, object]:
    """A row of a unit."""
    kept = {"organisation": ORGANISATION, "digest": digest, "unit": unit, "time_s": time_s}
    return {**kept, "row": f"{unit},{time_s}", "received_at": AT, "feed": "f1"}


def test_rows_are_kept_once_and_delivered_once(store: Store) -> None:
    """Of L1 two rows, by time; the job that has the unit is the one to reach, until it has ended."""

    def rows(job: str, most: int = 9) -> list[str]:
        found = reports.of_unit(connection, ORGANISATION, unit="L1", job_id=job, most=most)
        return [each["digest"] for each in found]

    with store.writing() as connection:
        reports.add(connection, [row("b", "L1", 20.0), row("a", "L1", 10.0), row("c", "L2", 5.0)])
        reports.add(connection, [row("b", "L1", 20.0)])
        assert reports.known(connection, ORGANISATION, digests=["a", "z"]) == {"a"}
        assert rows("job-7") == ["a", "b"]
        assert rows("job-7", 1) == ["b"]
        assert reports.waiting_units(connection, limit=9) == ()
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") is None
        entries.touch(entries.held(connection, ORGANISATION), {"job-7": 0, "job-8": 0}, cursor=0, at=AT)
        units.claim(connection, ORGANISATION, wanted=Claim("L1", "job-7", None))
        assert reports.waiting_units(connection, limit=9) == ((ORGANISATION, "L1"),)
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") == "job-7"
        reports.delivered(connection, ORGANISATION, unit="L1", job_id="job-7")
        assert reports.waiting_units(connection, limit=9) == ()
        assert (rows("job-7"), rows("job-8")) == (["a", "b"], [])
        jobs.describe(connection, ORGANISATION, job_id="job-7", values={"state": "proven"})
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") is None
        jobs.describe(connection, ORGANISATION, job_id="job-8", values={"unit_id": "L1"})
        assert reports.job_of_unit(connection, ORGANISATION, unit="L1") == "job-8"


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
