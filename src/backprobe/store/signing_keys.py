"""The public keys that phones sign with: which is whose. The first phone to show that it has a key keeps it."""

from __future__ import annotations

from collections.abc import Collection

from sqlalchemy import Connection, RowMapping, select

from backprobe.store.tables import person, phone, signing_key
from backprobe.store.upsert import insert_new


def add_key(connection: Connection, organisation_id: str, *, key: str, phone_id: str, at: str) -> str:
    """Write a phone's key unless it is there; the phone whose key it is."""
    row = {"organisation": organisation_id, "key": key, "phone": phone_id, "given_at": at}
    insert_new(connection, signing_key, rows=[row])
    return phones_of(connection, organisation_id, keys=[key])[key]


def phones_of(connection: Connection, organisation_id: str, *, keys: Collection[str]) -> dict[str, str]:
    """The phones whose keys these are, by key; of keys that nobody gave nothing."""
    if not keys:
        return {}
    found = select(signing_key.c.key, signing_key.c.phone).where(
        signing_key.c.organisation == organisation_id, signing_key.c.key.in_(keys)
    )
    return {row.key: row.phone for row in connection.execute(found)}


def listed(connection: Connection, organisation_id: str) -> tuple[RowMapping, ...]:
    """All keys with their phones and the names of those who carry them, the oldest first."""
    found = (
        select(
            signing_key.c.key,
            signing_key.c.given_at,
            phone.c.id.label("phone"),
            phone.c.device,
            phone.c.label,
            phone.c.withdrawn_at,
            person.c.id.label("person"),
            person.c.name.label("person_name"),
        )
        .join(phone, phone.c.id == signing_key.c.phone)
        .join(person, person.c.id == phone.c.person)
        .where(signing_key.c.organisation == organisation_id)
        .order_by(signing_key.c.given_at, signing_key.c.key)
    )
    return tuple(connection.execute(found).mappings())
