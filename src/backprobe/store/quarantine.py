"""What was handed in and is not part of any journal: kept byte for byte until the lead has looked at it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, RowMapping, select, update

from backprobe.job.entry import digest
from backprobe.store.tables import quarantine
from backprobe.store.upsert import insert_new

MOST_LISTED = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class SetAside:
    """Bytes that were not taken, why (`code`, and `error` in words), and the ids in them where they can be read."""

    raw: bytes
    code: str
    error: str
    entry: str | None = None
    job: str | None = None


def set_aside(
    connection: Connection, organisation_id: str, *, items: Sequence[SetAside], received_at: str, phone: str | None
) -> None:
    """Keep `items`; the same bytes are kept once."""
    rows = [
        {
            "organisation": organisation_id,
            "digest": digest(item.raw),
            "code": item.code,
            "error": item.error,
            "entry": item.entry,
            "job": item.job,
            "raw": item.raw,
            "received_at": received_at,
            "phone": phone,
        }
        for item in items
    ]
    insert_new(connection, quarantine, rows=rows)


def listed(connection: Connection, organisation_id: str) -> tuple[RowMapping, ...]:
    """What nobody has decided on yet, oldest first."""
    wanted = (
        select(quarantine)
        .where(quarantine.c.organisation == organisation_id, quarantine.c.decision.is_(None))
        .order_by(quarantine.c.number)
        .limit(MOST_LISTED)
    )
    return tuple(connection.execute(wanted).mappings())


def one(connection: Connection, organisation_id: str, *, number: int) -> RowMapping | None:
    """One item by its number."""
    wanted = select(quarantine).where(quarantine.c.organisation == organisation_id, quarantine.c.number == number)
    return connection.execute(wanted).mappings().first()


def decide(connection: Connection, organisation_id: str, *, number: int, decision: str, at: str) -> None:
    """Note what was decided; the bytes stay."""
    connection.execute(
        update(quarantine)
        .where(quarantine.c.organisation == organisation_id, quarantine.c.number == number)
        .values(decision=decision, decided_at=at)
    )
