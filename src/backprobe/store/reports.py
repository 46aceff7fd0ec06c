"""What units reported, pushed by the servers that collect it: each row once, and whether it has reached a job."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from sqlalchemy import Connection, RowMapping, and_, insert, select, update

from backprobe.store.tables import ENDED, feed, job, report, unit_claim
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


def delivered(connection: Connection, organisation_id: str, *, unit: str, job_id: str) -> None:
    """Note which job the rows of a unit have reached that had reached none."""
    connection.execute(
        update(report)
        .where(report.c.organisation == organisation_id, report.c.unit == unit, report.c.job.is_(None))
        .values(job=job_id)
    )


def of_unit(
    connection: Connection, organisation_id: str, *, unit: str, job_id: str, most: int
) -> tuple[RowMapping, ...]:
    """The newest rows of a unit that have reached a job or none yet, at most `most`, by time."""
    found = (
        select(report.c.digest, report.c.row, report.c.time_s)
        .where(report.c.organisation == organisation_id, report.c.unit == unit)
        .where(report.c.job.is_(None) | (report.c.job == job_id))
        .order_by(report.c.time_s.desc(), report.c.digest.desc())
        .limit(most)
    )
    return tuple(reversed(connection.execute(found).mappings().all()))


def job_of_unit(connection: Connection, organisation_id: str, *, unit: str) -> str | None:
    """The job that is in work on a unit: the one whose sheet names its reports so, else the one that has it."""
    named = (
        select(job.c.id)
        .where(job.c.organisation == organisation_id, job.c.unit_id == unit, job.c.state.not_in(ENDED))
        .order_by(job.c.cursor.desc())
        .limit(1)
    )
    claimed = (
        select(job.c.id)
        .join(unit_claim, and_(unit_claim.c.organisation == job.c.organisation, unit_claim.c.job == job.c.id))
        .where(job.c.organisation == organisation_id, unit_claim.c.serial == unit, job.c.state.not_in(ENDED))
    )
    found = connection.execute(named).scalar() or connection.execute(claimed).scalar()
    return None if found is None else str(found)


def waiting_units(connection: Connection, *, limit: int) -> tuple[tuple[str, str], ...]:
    """Organisation and unit of reports that have reached no job although there is one to reach."""
    waits = select(report.c.organisation, report.c.unit).where(report.c.job.is_(None)).distinct().subquery()
    claimed = (
        select(waits)
        .join(unit_claim, and_(unit_claim.c.organisation == waits.c.organisation, unit_claim.c.serial == waits.c.unit))
        .join(job, and_(job.c.organisation == waits.c.organisation, job.c.id == unit_claim.c.job))
        .where(job.c.state.not_in(ENDED))
    )
    named = select(waits).join(
        job, and_(job.c.organisation == waits.c.organisation, job.c.unit_id == waits.c.unit, job.c.state.not_in(ENDED))
    )
    return tuple((row[0], row[1]) for row in connection.execute(claimed.union(named).limit(limit)))
