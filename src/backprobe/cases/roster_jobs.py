"""A job for each vehicle of a roster that has none: all that the roster takes in and all the jobs, or nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection

from backprobe.cases.described import plain
from backprobe.cases.new_job import NewJob, begin_job, drafts_of
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.evidence.roster import RosterRow
from backprobe.formats.roster_csv import same
from backprobe.formats.toml_written import written_toml
from backprobe.job.journal import Draft
from backprobe.store import jobs
from backprobe.store.entries import Held

NAMES = ("vin", "plate", "fleet_number")  # by the first of these that both say a vehicle is known
MOST_JOBS = 500  # at once


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPlan:
    """What each new job has beside its vehicle: unit's sheet, system's voltage, who does it, on which day."""

    unit_sheet: str
    system_V: int
    people: tuple[str, ...] = ()
    day: str | None = None


def _said(row: RosterRow) -> set[tuple[str, str]]:
    return {(name, same(value)) for name in NAMES if (value := getattr(row, name)) is not None}


def sheet_of(row: RosterRow, plan: JobPlan) -> str:
    """The job sheet of a vehicle, as far as the roster knows it; its day is the plan's where the row has none."""
    vehicle = {"plate": row.plate, "fleet_number": row.fleet_number, "vin": row.vin, "model": row.type}
    tables: dict[str, dict[str, str | float | None]] = {
        "vehicle": {**vehicle, "system_V": plan.system_V},
        "unit": {"sheet": "unit.toml", "serial": row.unit_serial, "id": row.unit_id},
        "place": {"lat": row.lat_deg, "lon": row.lon_deg},
        "job": {"yard": row.yard, "technician": row.installer, "date": row.day or plan.day},
    }
    return written_toml(
        {name: {key: value for key, value in table.items() if value is not None} for name, table in tables.items()}
    )


@dataclass(frozen=True, slots=True)
class Prepared:
    """Jobs that are ready to be written, for the vehicles that had none: the files of their sheets are kept already."""

    rows: tuple[RosterRow, ...]
    drafts: tuple[tuple[Draft, ...], ...]
    people: tuple[str, ...]


def without_job(connection: Connection, organisation: str, *, rows: Sequence[RosterRow]) -> tuple[RosterRow, ...]:
    """Those of the vehicles for which no job was made yet, or one that was abandoned."""
    there = {(name, same(value)) for each in jobs.names_of_all(connection, organisation) for name, value in each}
    return tuple(row for row in rows if not there & _said(row))


def prepared(yard: Yard, *, rows: Sequence[RosterRow], plan: JobPlan) -> Prepared:
    """The jobs of vehicles that have none. Raises UnreadableError where a sheet cannot be read, RefusedError."""
    if len(rows) > MOST_JOBS:
        raise RefusedError(f"{len(rows)} jobs; at most {MOST_JOBS} are made at once", code="too_large")
    drafts = tuple(tuple(drafts_of(yard, NewJob(sheet_of(row, plan), plan.unit_sheet))[0]) for row in rows)
    return Prepared(tuple(rows), drafts, plan.people)


def write_jobs(held: Held, made: Prepared) -> bool:
    """Write the jobs, within the transaction that takes the roster; False where one of the vehicles has one by now."""
    if without_job(held.connection, held.organisation, rows=made.rows) != made.rows:
        return False
    for row, drafts in zip(made.rows, made.drafts, strict=True):
        job_id = fresh_id()
        begin_job(held, job_id, drafts=drafts, people_ids=made.people, at=now())
        # known by its vehicle at once, before it is judged: the next list must not make it again
        names = {name: plain(getattr(row, name)) for name in NAMES}
        jobs.describe(held.connection, held.organisation, job_id=job_id, values={**names, "name": plain(row.name)})
    return True
