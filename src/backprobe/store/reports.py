"""What units reported, pushed by the servers that collect it: each row once, and whether it has reached a job."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import (
    ColumnElement,
    Connection,
    RowMapping,
    and_,
    case,
    func,
    insert,
    or_,
    select,
    union,
    update,
)

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


def waiting(connection: Connection, organisation_id: str, *, unit: str, most: int) -> tuple[RowMapping, ...]:
    """The oldest rows of a unit that have reached no job yet, at most `most`, by time."""
    found = (
        select(report.c.digest, report.c.row, report.c.time_s)
        .where(report.c.organisation == organisation_id, report.c.unit == unit, report.c.job.is_(None))
        .order_by(report.c.time_s, report.c.digest)
        .limit(most)
    )
    return tuple(connection.execute(found).mappings().all())


def still_waiting(connection: Connection, organisation_id: str, *, digests: Sequence[str]) -> frozenset[str]:
    """Those of the rows that have reached no job yet."""
    here = (report.c.organisation == organisation_id, report.c.digest.in_(digests), report.c.job.is_(None))
    return frozenset(connection.execute(select(report.c.digest).where(*here)).scalars())


def delivered(connection: Connection, organisation_id: str, *, digests: Sequence[str], job_id: str) -> None:
    """Note which job rows have reached that had reached none."""
    here = (report.c.organisation == organisation_id, report.c.digest.in_(digests), report.c.job.is_(None))
    connection.execute(update(report).where(*here).values(job=job_id))


def how_many_reached(connection: Connection, organisation_id: str, *, unit: str, job_id: str) -> int:
    """How many rows of a unit have reached a job."""
    here = (report.c.organisation == organisation_id, report.c.unit == unit, report.c.job == job_id)
    return int(connection.execute(select(func.count()).select_from(report).where(*here)).scalar() or 0)


def count_push(connection: Connection, feed_id: str, *, day: str, size: int) -> tuple[int, int]:
    """Count a push of `size` bytes; how many pushes and bytes there were on that day."""
    same = feed.c.day == day
    counted = (
        update(feed)
        .where(feed.c.id == feed_id)
        .values(
            day=day,
            requests=case((same, feed.c.requests), else_=0) + 1,
            bytes=case((same, feed.c.bytes), else_=0) + size,
        )
        .returning(feed.c.requests, feed.c.bytes)
    )
    row = connection.execute(counted).one()
    return int(row[0]), int(row[1])


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """When reports that wait are handed on: at once to a job that has none yet, or once there are `bytes` of them.

    Else to a job in which somebody spoke after `work_since` where it was given reports last before `at_work`, and to
    any other where that was before `idle`.
    """

    bytes: int
    work_since: str
    at_work: str
    idle: str


def waiting_units(connection: Connection, *, turn: Turn, limit: int) -> tuple[tuple[str, str], ...]:
    """Organisation and unit of reports that have reached no job although there is one, and whose turn has come."""
    rows = and_(report.c.organisation == job.c.organisation, report.c.job.is_(None))
    open_jobs = select(report.c.organisation, report.c.unit).select_from(job).where(job.c.state.not_in(ENDED))
    by_claim = and_(unit_claim.c.organisation == job.c.organisation, unit_claim.c.job == job.c.id)
    claimed = open_jobs.join(unit_claim, by_claim).join(report, and_(rows, report.c.unit == unit_claim.c.serial))
    named = open_jobs.join(report, and_(rows, report.c.unit == job.c.unit_id))
    due = [
        each.group_by(report.c.organisation, report.c.unit, job.c.id).having(_is_due(turn)) for each in (claimed, named)
    ]
    return tuple((row[0], row[1]) for row in connection.execute(union(*due).limit(limit)))


def is_due(connection: Connection, organisation_id: str, *, unit: str, job_id: str, turn: Turn) -> bool:
    """Whether reports of a unit wait for a job, and its turn has come."""
    found = (
        select(report.c.unit)
        .join(job, job.c.organisation == report.c.organisation)
        .where(report.c.organisation == organisation_id, report.c.unit == unit, report.c.job.is_(None))
        .where(job.c.id == job_id)
        .group_by(report.c.unit, job.c.id)
        .having(_is_due(turn))
    )
    return connection.execute(found).first() is not None


def _is_due(turn: Turn) -> ColumnElement[bool]:
    """Of rows grouped by unit and job."""
    reported, said = func.max(job.c.reported_at), func.max(job.c.said_at)
    return or_(
        reported.is_(None),
        reported <= turn.idle,
        and_(said >= turn.work_since, reported <= turn.at_work),
        func.sum(func.length(report.c.row)) >= turn.bytes,
    )
