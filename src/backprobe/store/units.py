"""Which vehicle a unit is in. The primary key of `unit_claim` decides, however many ask at once."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import Connection, delete, select, update

from backprobe.store.tables import unit_claim, unit_wait
from backprobe.store.upsert import insert_if_new, insert_new


@dataclass(frozen=True, slots=True)
class Claim:
    """A unit's serial number, the job that has it, and that job's vehicle (its VIN, where known)."""

    serial: str
    job: str
    vehicle: str | None


def claim(connection: Connection, organisation_id: str, *, wanted: Claim) -> Claim:
    """Claim a unit for a job unless another has it; whoever has it then."""
    row = {"organisation": organisation_id, "serial": wanted.serial, "job": wanted.job, "vehicle": wanted.vehicle}
    if insert_if_new(connection, unit_claim, row=row):
        return wanted
    found = holder(connection, organisation_id, serial=wanted.serial)
    # it was let go between the two statements: ask again
    return found or claim(connection, organisation_id, wanted=wanted)


def holder(connection: Connection, organisation_id: str, *, serial: str) -> Claim | None:
    """Who has a unit; None where nobody has."""
    found = select(unit_claim).where(unit_claim.c.organisation == organisation_id, unit_claim.c.serial == serial)
    row = connection.execute(found).first()
    return None if row is None else Claim(row.serial, row.job, row.vehicle)


def held_by(connection: Connection, organisation_id: str, *, job: str | None = None) -> tuple[Claim, ...]:
    """The units that a job has, or all of them, by serial."""
    found = select(unit_claim).where(unit_claim.c.organisation == organisation_id)
    if job is not None:
        found = found.where(unit_claim.c.job == job)
    rows = connection.execute(found.order_by(unit_claim.c.serial))
    return tuple(Claim(row.serial, row.job, row.vehicle) for row in rows)


def release(connection: Connection, organisation_id: str, *, serial: str, job: str) -> None:
    """Let go of a unit, if it is this job that has it."""
    connection.execute(
        delete(unit_claim).where(
            unit_claim.c.organisation == organisation_id, unit_claim.c.serial == serial, unit_claim.c.job == job
        )
    )


def name_vehicle(connection: Connection, organisation_id: str, *, job: str, vehicle: str) -> None:
    """Note the VIN of the vehicle whose job has units."""
    connection.execute(
        update(unit_claim)
        .where(unit_claim.c.organisation == organisation_id, unit_claim.c.job == job)
        .values(vehicle=vehicle)
    )


def wait(connection: Connection, organisation_id: str, *, serial: str, job: str, entry: str) -> None:
    """Note that a job was refused a unit, by which entry."""
    row = {"organisation": organisation_id, "serial": serial, "job": job, "entry": entry}
    insert_new(connection, unit_wait, rows=[row])


def waits_of(connection: Connection, organisation_id: str, *, job: str) -> dict[str, str]:
    """The units a job was refused: the entry that says so, by serial."""
    found = select(unit_wait).where(unit_wait.c.organisation == organisation_id, unit_wait.c.job == job)
    return {row.serial: row.entry for row in connection.execute(found)}


def waiting_for(connection: Connection, organisation_id: str, *, serial: str) -> tuple[str, ...]:
    """The jobs that were refused a unit, by their ids."""
    found = select(unit_wait.c.job).where(unit_wait.c.organisation == organisation_id, unit_wait.c.serial == serial)
    return tuple(connection.execute(found.order_by(unit_wait.c.job)).scalars())


def wait_no_more(connection: Connection, organisation_id: str, *, serial: str, job: str) -> None:
    """Forget that a job was refused a unit."""
    connection.execute(
        delete(unit_wait).where(
            unit_wait.c.organisation == organisation_id, unit_wait.c.serial == serial, unit_wait.c.job == job
        )
    )
