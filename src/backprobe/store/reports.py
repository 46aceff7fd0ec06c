"""What units reported, pushed by the servers that collect it: each row once, and whether it has reached a job."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from sqlalchemy import Connection, RowMapping, insert, select, update

from backprobe.store.tables import feed, report
from backprobe.store.upsert import Row, insert_new


def add_feed(connection: Connection, row: Row, *, columns: Mapping[str, str]) -> None:
    """Write a feed: id, organisation, label, token_sha256, made_at; `columns` is what it calls ours."""
    connection.execute(insert(feed).values(**row, columns=json.dumps(dict(columns), sort_keys=True)))


def feed_by_token(connection: Connection, token_sha256: str) -> RowMapping | None:
    """The feed whose token has this hash, unless it was withdrawn."""
    found = select(feed).where(feed.c.token_sha256 == token_sha256, feed.c.withdrawn_at.is_(None))
    return connection.execute(found).mappings().first()


def feeds(connection: Connection, organisation_id: str) -> tuple[RowMapping, ...]:
    """All feeds, without their tokens."""
    columns = [feed.c[name] for name in ("id", "label", "columns", "made_at", "withdrawn_at")]
    found = select(*columns).where(feed.c.organisation == organisation_id).order_by(feed.c.made_at, feed.c.id)
    return tuple(connection.execute(found).mappings())


def withdraw_feed(connection: Connection, organisation_id: str, *, feed_id: str, at: str) -> bool:
    """Withdraw a feed; whether there is one of this id."""
    done = connection.execute(
        update(feed).where(feed.c.organisation == organisation_id, feed.c.id == feed_id).values(withdrawn_at=at)
    )
    return done.rowcount == 1


def known(connection: Connection, organisation_id: str, *, digests: Sequence[str]) -> frozenset[str]:
    """Those of the rows that are kept already."""
    found = select(report.c.digest).where(report.c.organisation == organisation_id, report.c.digest.in_(digests))
    return frozenset(connection.execute(found).scalars())


def add(connection: Connection, rows: Sequence[Row]) -> None:
    """Write rows: organisation, digest, unit, time_s, row, received_at, feed."""
    insert_new(connection, report, rows=rows)


def undelivered(connection: Connection, organisation_id: str, *, units: Sequence[str]) -> tuple[RowMapping, ...]:
    """The rows of some units that have reached no job, by time."""
    found = (
        select(report)
        .where(report.c.organisation == organisation_id, report.c.unit.in_(units), report.c.job.is_(None))
        .order_by(report.c.time_s, report.c.digest)
    )
    return tuple(connection.execute(found).mappings())


def delivered(connection: Connection, organisation_id: str, *, digests: Sequence[str], job_id: str) -> None:
    """Note which job rows have reached."""
    connection.execute(
        update(report).where(report.c.organisation == organisation_id, report.c.digest.in_(digests)).values(job=job_id)
    )
