"""The rows of jobs: what lists show, who works on what, what has still to be judged."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sqlalchemy import ColumnElement, Connection, RowMapping, and_, delete, func, insert, or_, select, update

from backprobe.store.tables import ENDED, job, job_person, person, unit_claim
from backprobe.store.upsert import Row

EXPORT_ROWS = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Which rows of the list: of one state, with a text in them, after a place in the list, at most `limit`."""

    state: str | None = None
    q: str | None = None
    after: str | None = None
    limit: int = 50


def row_of(connection: Connection, organisation_id: str, *, job_id: str) -> RowMapping | None:
    """The row of one job."""
    found = select(job).where(job.c.organisation == organisation_id, job.c.id == job_id)
    return connection.execute(found).mappings().first()


def listed(connection: Connection, organisation_id: str, *, wanted: Wanted) -> tuple[RowMapping, ...]:
    """Rows of the list: what fails first, then what is thin, open, holds; the newest first in each."""
    found = select(job).where(job.c.organisation == organisation_id, *_filters(wanted))
    found = found.order_by(job.c.urgency, job.c.cursor.desc(), job.c.id).limit(wanted.limit)
    return tuple(connection.execute(found).mappings())


def place_of(row: RowMapping) -> str:
    """The place of a row in the list, to go on from."""
    return json.dumps([row["urgency"], row["cursor"], row["id"]], separators=(",", ":"))


def _filters(wanted: Wanted) -> Iterator[ColumnElement[bool]]:
    if wanted.state:
        yield job.c.state == wanted.state
    for word in (wanted.q or "").casefold().split():
        yield job.c.search.contains(word, autoescape=True)
    if wanted.after:
        urgency, cursor, name = json.loads(wanted.after)
        yield or_(
            job.c.urgency > urgency,
            and_(job.c.urgency == urgency, job.c.cursor < cursor),
            and_(job.c.urgency == urgency, job.c.cursor == cursor, job.c.id > name),
        )


def state_counts(connection: Connection, organisation_id: str) -> dict[str, int]:
    """How many jobs there are in each state."""
    found = select(job.c.state, func.count()).where(job.c.organisation == organisation_id).group_by(job.c.state)
    return {str(state): int(count) for state, count in connection.execute(found)}


def of_person(connection: Connection, organisation_id: str, *, person_id: str) -> tuple[RowMapping, ...]:
    """The rows of the jobs that were given to somebody and have not ended."""
    found = (
        select(job)
        .join(job_person, and_(job_person.c.organisation == job.c.organisation, job_person.c.job == job.c.id))
        .where(job.c.organisation == organisation_id, job_person.c.person == person_id, job.c.state.not_in(ENDED))
        .order_by(job.c.name, job.c.id)
    )
    return tuple(connection.execute(found).mappings())


def people_of(connection: Connection, organisation_id: str, *, jobs: Iterable[str]) -> dict[str, list[dict[str, str]]]:
    """Who works on each of the jobs, by name."""
    found = (
        select(job_person.c.job, person.c.id, person.c.name)
        .join(person, person.c.id == job_person.c.person)
        .where(job_person.c.organisation == organisation_id, job_person.c.job.in_(jobs))
        .order_by(person.c.name, person.c.id)
    )
    names: dict[str, list[dict[str, str]]] = {}
    for row in connection.execute(found):
        names.setdefault(row.job, []).append({"id": row.id, "name": row.name})
    return names


def works_on(connection: Connection, organisation_id: str, *, person_id: str, jobs: Iterable[str]) -> bool:
    """Whether any of the jobs was given to somebody."""
    found = select(job_person.c.job).where(
        job_person.c.organisation == organisation_id,
        job_person.c.person == person_id,
        job_person.c.job.in_(jobs),
    )
    return connection.execute(found.limit(1)).first() is not None


def assign(connection: Connection, organisation_id: str, *, job_id: str, people: Sequence[str]) -> None:
    """Give a job to `people`, and to nobody else."""
    mine = (job_person.c.organisation == organisation_id, job_person.c.job == job_id)
    connection.execute(delete(job_person).where(*mine))
    rows = [{"organisation": organisation_id, "job": job_id, "person": who} for who in dict.fromkeys(people)]
    if rows:
        connection.execute(insert(job_person), rows)


def describe(connection: Connection, organisation_id: str, *, job_id: str, values: Row) -> None:
    """Write what is known of a job into its row."""
    connection.execute(update(job).where(job.c.organisation == organisation_id, job.c.id == job_id).values(**values))


def names_of_all(connection: Connection, organisation_id: str) -> Iterator[tuple[tuple[str, str], ...]]:
    """What the vehicle of each job is called, by the name of each number that is known; not of abandoned jobs."""
    columns = (job.c.vin, job.c.plate, job.c.fleet_number)
    found = select(*columns).where(job.c.organisation == organisation_id, job.c.state != "abandoned")
    for row in connection.execute(found).mappings():
        yield tuple((str(name), str(value)) for name, value in row.items() if value)


def said(connection: Connection, organisation_id: str, *, jobs: Iterable[str], at: str) -> None:
    """Note when somebody spoke in jobs."""
    here = (job.c.organisation == organisation_id, job.c.id.in_(jobs))
    connection.execute(update(job).where(*here).values(said_at=at))


def to_be_judged(connection: Connection, *, limit: int, before: str) -> tuple[tuple[str, str], ...]:
    """Organisation and id of jobs with entries that came after they were judged, the longest waiting first.

    Only those to which nothing was added since `before`: while a phone hands in, its job is left alone.
    """
    found = select(job.c.organisation, job.c.id).where(job.c.judged_cursor < job.c.cursor, job.c.updated_at <= before)
    rows = connection.execute(found.order_by(job.c.cursor).limit(limit))
    return tuple((row.organisation, row.id) for row in rows)


def judge_again(connection: Connection, organisation_id: str, *, jobs: Iterable[str]) -> None:
    """Have jobs judged again: a file of theirs has arrived."""
    connection.execute(
        update(job).where(job.c.organisation == organisation_id, job.c.id.in_(jobs)).values(judged_cursor=0)
    )


def every(connection: Connection, organisation_id: str) -> Iterator[RowMapping]:
    """The rows of all jobs, by id."""
    found = select(job).where(job.c.organisation == organisation_id).order_by(job.c.id)
    yield from connection.execution_options(yield_per=EXPORT_ROWS).execute(found).mappings()


def last_usual(
    connection: Connection, organisation_id: str, *, vehicle_type: str, but: Sequence[str]
) -> RowMapping | None:
    """Of the jobs of a vehicle type that others may follow the newest, without those of `but`."""
    found = (
        select(job.c.id, job.c.name)
        .where(job.c.organisation == organisation_id, job.c.vehicle_type == vehicle_type, job.c.usual.is_(True))
        .where(job.c.id.not_in(but))
        .order_by(job.c.cursor.desc())
        .limit(1)
    )
    return connection.execute(found).mappings().first()


def vehicle_names(connection: Connection, organisation_id: str) -> dict[str, str | None]:
    """What the vehicle of each job that has a unit is called: plate, fleet number or VIN."""
    found = (
        select(job.c.id, func.coalesce(job.c.plate, job.c.fleet_number, job.c.vin))
        .join(unit_claim, and_(unit_claim.c.organisation == job.c.organisation, unit_claim.c.job == job.c.id))
        .where(job.c.organisation == organisation_id)
    )
    return {str(name): vehicle for name, vehicle in connection.execute(found)}
