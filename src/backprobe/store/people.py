"""People, their phones, and how both are known again. Secrets are here as hashes only."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import Connection, RowMapping, delete, insert, select, update

from backprobe.store.tables import enrolment, organisation, person, phone, session
from backprobe.store.upsert import Row, insert_new


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Somebody who works here: `language` is en or es, `units` metric or us, `role` installer or lead."""

    id: str
    organisation: str
    name: str
    language: str
    units: str
    role: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Phone:
    """A phone that was enrolled, by its token; `withdrawn` from then on it may only hand in."""

    id: str
    organisation: str
    person: str
    device: str
    withdrawn: bool


def make_organisation(connection: Connection, organisation_id: str, *, name: str) -> None:
    """Make an organisation unless it is there."""
    insert_new(connection, organisation, rows=[{"id": organisation_id, "name": name, "cursor": 0}])


def organisation_name(connection: Connection, organisation_id: str) -> str:
    """The name of an organisation; empty where there is none."""
    return connection.execute(select(organisation.c.name).where(organisation.c.id == organisation_id)).scalar() or ""


def add_person(connection: Connection, who: Person, *, made_at: str) -> None:
    """Write a new person."""
    row = {name: getattr(who, name) for name in ("id", "organisation", "name", "language", "units", "role")}
    connection.execute(insert(person).values(**row, made_at=made_at))


def set_login(connection: Connection, person_id: str, *, login: str, password_hash: str) -> None:
    """Give a person a login."""
    connection.execute(update(person).where(person.c.id == person_id).values(login=login, password_hash=password_hash))


def person_of(connection: Connection, organisation_id: str, *, person_id: str) -> Person | None:
    """A person by id."""
    found = select(person).where(person.c.organisation == organisation_id, person.c.id == person_id)
    return _person(connection.execute(found).mappings().first())


def people(connection: Connection, organisation_id: str) -> tuple[Person, ...]:
    """Everybody, by name."""
    found = select(person).where(person.c.organisation == organisation_id).order_by(person.c.name, person.c.id)
    rows = connection.execute(found).mappings()
    return tuple(who for row in rows if (who := _person(row)) is not None)


def by_login(connection: Connection, login: str) -> tuple[Person, str] | None:
    """Who logs in so, and the hash of the password."""
    row = connection.execute(select(person).where(person.c.login == login)).mappings().first()
    who = _person(row)
    return None if row is None or who is None or row["password_hash"] is None else (who, row["password_hash"])


def has_login(connection: Connection, organisation_id: str) -> bool:
    """Whether anybody can log in."""
    found = select(person.c.id).where(person.c.organisation == organisation_id, person.c.password_hash.is_not(None))
    return connection.execute(found.limit(1)).scalar() is not None


def _person(row: RowMapping | None) -> Person | None:
    if row is None:
        return None
    return Person(**{name: row[name] for name in ("id", "organisation", "name", "language", "units", "role")})


def add_code(connection: Connection, row: Row) -> None:
    """Write an enrolment code: code_sha256, organisation, person, expires_at."""
    connection.execute(insert(enrolment).values(**row))


def use_code(connection: Connection, code_sha256: str, *, at: str) -> tuple[str, str] | None:
    """Use up a code: organisation and person it was made for; None where it is wrong, late or was used."""
    row = connection.execute(
        update(enrolment)
        .where(enrolment.c.code_sha256 == code_sha256, enrolment.c.used_at.is_(None), enrolment.c.expires_at > at)
        .values(used_at=at)
        .returning(enrolment.c.organisation, enrolment.c.person)
    ).first()
    return None if row is None else (row.organisation, row.person)


def phone_of_device(connection: Connection, organisation_id: str, *, device: str) -> Phone | None:
    """The phone that bears a device's name."""
    found = select(phone).where(phone.c.organisation == organisation_id, phone.c.device == device)
    return _phone(connection.execute(found).mappings().first())


def devices_of_others(connection: Connection, organisation_id: str, *, but: str) -> frozenset[str]:
    """The device names of all phones but one."""
    found = select(phone.c.device).where(phone.c.organisation == organisation_id, phone.c.id != but)
    return frozenset(connection.execute(found).scalars())


def add_phone(connection: Connection, row: Row) -> None:
    """Write a phone: id, organisation, person, device, label, token_sha256, enrolled_at."""
    connection.execute(insert(phone).values(**row))


def renew_phone(connection: Connection, phone_id: str, *, row: Row) -> None:
    """Write a phone's new token, label and time; it is not withdrawn any more."""
    connection.execute(update(phone).where(phone.c.id == phone_id).values(**row, withdrawn_at=None))


def phone_by_token(connection: Connection, token_sha256: str) -> Phone | None:
    """The phone whose token has this hash."""
    return _phone(connection.execute(select(phone).where(phone.c.token_sha256 == token_sha256)).mappings().first())


def seen(connection: Connection, phone_id: str, *, at: str) -> None:
    """Note when a phone was last heard of."""
    connection.execute(update(phone).where(phone.c.id == phone_id).values(seen_at=at))


def withdraw_phone(connection: Connection, organisation_id: str, *, phone_id: str, at: str) -> bool:
    """Withdraw a phone; whether there is one of this id."""
    done = connection.execute(
        update(phone).where(phone.c.organisation == organisation_id, phone.c.id == phone_id).values(withdrawn_at=at)
    )
    return done.rowcount == 1


def phones(connection: Connection, organisation_id: str) -> tuple[RowMapping, ...]:
    """All phones with the names of those who carry them, without their tokens."""
    columns = [phone.c[name] for name in ("id", "device", "label", "person", "enrolled_at", "seen_at", "withdrawn_at")]
    found = (
        select(*columns, person.c.name.label("person_name"))
        .join(person, person.c.id == phone.c.person)
        .where(phone.c.organisation == organisation_id)
        .order_by(phone.c.enrolled_at, phone.c.id)
    )
    return tuple(connection.execute(found).mappings())


def _phone(row: RowMapping | None) -> Phone | None:
    if row is None:
        return None
    kept = {name: row[name] for name in ("id", "organisation", "person", "device")}
    return Phone(**kept, withdrawn=row["withdrawn_at"] is not None)


def add_session(connection: Connection, row: Row) -> None:
    """Write a session of the desk: token_sha256, person, csrf, expires_at."""
    connection.execute(insert(session).values(**row))


def session_of(connection: Connection, token_sha256: str, *, at: str) -> tuple[Person, str] | None:
    """Who a session belongs to, and its token against forged calls; None where it is not known or has ended."""
    found = (
        select(person, session.c.csrf)
        .join(session, session.c.person == person.c.id)
        .where(session.c.token_sha256 == token_sha256, session.c.expires_at > at)
    )
    row = connection.execute(found).mappings().first()
    who = _person(row)
    return None if row is None or who is None else (who, row["csrf"])


def end_session(connection: Connection, token_sha256: str, *, at: str) -> None:
    """Forget a session, and all that have ended."""
    connection.execute(delete(session).where((session.c.token_sha256 == token_sha256) | (session.c.expires_at <= at)))
