"""Entries in the store: each once, its exact bytes, in the order they became readable.

The pull cursor is a counter of the organisation that is raised in the transaction that writes the entries, while the
organisation's row is held. So cursors become readable in their order, and whoever has read up to one has missed nothing
before it; a database's own sequences do not promise that.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, RowMapping, Select, func, insert, select, update

from backprobe.errors import StoreError
from backprobe.job.entry import Entry
from backprobe.store.tables import blob_use, entry, job, job_person, organisation, person, phone
from backprobe.store.upsert import insert_new


@dataclass(frozen=True, slots=True)
class Held:
    """The right to write entries of an organisation until the transaction ends."""

    connection: Connection
    organisation: str


@dataclass(frozen=True, slots=True)
class Pulled:
    """An entry's exact bytes with its cursor and when the server received it."""

    cursor: int
    received_at: str
    raw: bytes


def held(connection: Connection, organisation_id: str) -> Held:
    """Wait for the organisation's turn. Raises StoreError where there is no such organisation."""
    found = connection.execute(
        select(organisation.c.id).where(organisation.c.id == organisation_id).with_for_update()
    ).scalar()
    if found is None:
        raise StoreError(f"the store has no organisation {organisation_id!r}")
    return Held(connection, organisation_id)


def known(held: Held, ids: Iterable[str]) -> dict[str, str]:
    """The digests of those of the entries that are kept already, by id."""
    wanted = select(entry.c.id, entry.c.digest).where(entry.c.organisation == held.organisation, entry.c.id.in_(ids))
    return {row.id: row.digest for row in held.connection.execute(wanted)}


def add(held: Held, entries: Sequence[Entry], *, received_at: str, phone: str | None) -> int:
    """Write entries that are not known yet; the cursor of the last. The order is that of `entries`."""
    last = held.connection.execute(
        update(organisation)
        .where(organisation.c.id == held.organisation)
        .values(cursor=organisation.c.cursor + len(entries))
        .returning(organisation.c.cursor)
    ).scalar_one()
    if entries:
        first = last - len(entries) + 1
        rows = [
            {
                "organisation": held.organisation,
                "id": each.id,
                "cursor": first + place,
                "job": each.job,
                "kind": each.kind,
                "device": each.device,
                "seq": each.seq,
                "digest": each.digest,
                "raw": each.raw,
                "received_at": received_at,
                "phone": phone,
            }
            for place, each in enumerate(entries)
        ]
        held.connection.execute(insert(entry), rows)
        _note_blobs(held, entries)
    return int(last)


def _note_blobs(held: Held, entries: Iterable[Entry]) -> None:
    """Which blobs belong to which job: who may see the job may see them."""
    uses = {(sha256, each.job) for each in entries for sha256 in each.blobs}
    rows = [{"organisation": held.organisation, "sha256": sha256, "job": name} for sha256, name in sorted(uses)]
    insert_new(held.connection, blob_use, rows=rows)


def head(connection: Connection, organisation_id: str, *, job_id: str, device: str) -> tuple[int, str] | None:
    """Number and digest of the device's last entry in a job; None where it has none."""
    row = connection.execute(
        _of_job(organisation_id, job_id)
        .with_only_columns(entry.c.seq, entry.c.digest)
        .where(entry.c.device == device)
        .order_by(entry.c.seq.desc(), entry.c.cursor.desc())
        .limit(1)
    ).first()
    return None if row is None else (row.seq, row.digest)


def of_job(
    connection: Connection, organisation_id: str, *, job_id: str, kinds: Iterable[str] | None = None
) -> tuple[bytes, ...]:
    """The exact bytes of a job's entries, all or of some kinds, in the order they came."""
    wanted = _of_job(organisation_id, job_id)
    if kinds is not None:
        wanted = wanted.where(entry.c.kind.in_(kinds))
    return tuple(row.raw for row in connection.execute(wanted.order_by(entry.c.cursor)))


def _of_job(organisation_id: str, job_id: str) -> Select[tuple[bytes]]:
    return select(entry.c.raw).where(entry.c.organisation == organisation_id, entry.c.job == job_id)


def pull(
    connection: Connection, organisation_id: str, *, after: int, limit: int, job_id: str | None, person: str | None
) -> tuple[Pulled, ...]:
    """Entries after a cursor, oldest first, at most `limit`: of one job, or of `person`'s jobs, or of all."""
    wanted = select(entry.c.cursor, entry.c.received_at, entry.c.raw).where(
        entry.c.organisation == organisation_id, entry.c.cursor > after
    )
    if job_id is not None:
        wanted = wanted.where(entry.c.job == job_id)
    if person is not None:
        theirs = select(job_person.c.job).where(
            job_person.c.organisation == organisation_id, job_person.c.person == person
        )
        wanted = wanted.where(entry.c.job.in_(theirs))
    rows = connection.execute(wanted.order_by(entry.c.cursor).limit(limit))
    return tuple(Pulled(row.cursor, row.received_at, row.raw) for row in rows)


def newest(connection: Connection, organisation_id: str) -> int:
    """The cursor of the organisation's newest entry; 0 where there is none."""
    found = select(organisation.c.cursor).where(organisation.c.id == organisation_id)
    return int(connection.execute(found).scalar() or 0)


def counts(connection: Connection, organisation_id: str) -> Mapping[str, int]:
    """How many entries each job has, by the entries themselves; lists use the count in `job`."""
    found = select(entry.c.job, func.count()).where(entry.c.organisation == organisation_id).group_by(entry.c.job)
    return {str(name): int(count) for name, count in connection.execute(found)}


def jobs_of_blob(connection: Connection, organisation_id: str, *, sha256: str) -> frozenset[str]:
    """The jobs whose entries name a blob."""
    found = select(blob_use.c.job).where(blob_use.c.organisation == organisation_id, blob_use.c.sha256 == sha256)
    return frozenset(connection.execute(found).scalars())


def touch(held: Held, arrived: Mapping[str, int], *, cursor: int, at: str) -> tuple[str, ...]:
    """Note in the rows of jobs that entries have `arrived` (how many, by job); the jobs that nobody knew before."""
    there = select(job.c.id).where(job.c.organisation == held.organisation, job.c.id.in_(arrived))
    present = set(held.connection.execute(there).scalars())
    fresh = tuple(name for name in arrived if name not in present)
    if fresh:
        held.connection.execute(insert(job), [_blank(held.organisation, name, at=at) for name in fresh])
    for name, count in arrived.items():
        held.connection.execute(
            update(job)
            .where(job.c.organisation == held.organisation, job.c.id == name)
            .values(entries=job.c.entries + count, cursor=cursor, updated_at=at)
        )
    return fresh


def _blank(organisation_id: str, name: str, *, at: str) -> dict[str, object]:
    """The row of a job of which nothing is known but its id."""
    zero = dict.fromkeys(("fails", "thin", "open", "entries", "cursor", "judged_cursor"), 0)
    return {
        **zero,
        "organisation": organisation_id,
        "id": name,
        "name": name,
        "state": "new",
        "verdict": "open",
        "urgency": 2,
        "search": name.casefold(),
        "made_at": at,
        "updated_at": at,
    }


def recent(connection: Connection, organisation_id: str, *, job_id: str, limit: int) -> tuple[RowMapping, ...]:
    """The newest entries of a job, newest first, with the name of whoever's phone sent each."""
    wanted = (
        select(entry.c.cursor, entry.c.received_at, entry.c.raw, person.c.name.label("person"))
        .outerjoin(phone, phone.c.id == entry.c.phone)
        .outerjoin(person, person.c.id == phone.c.person)
        .where(entry.c.organisation == organisation_id, entry.c.job == job_id)
        .order_by(entry.c.cursor.desc())
        .limit(limit)
    )
    return tuple(connection.execute(wanted).mappings())
