"""What the desk sees and makes of people, phones and feeds."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.cases.enrol import plain_label
from backprobe.cases.may import Caller, Deed, Role
from backprobe.cases.tokens import fresh_id, hashed, now, secret
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.formats.report_columns import KNOWN
from backprobe.job.sign_off import fingerprint
from backprobe.store import people, reports, signing_keys
from backprobe.store.people import Person


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPerson:
    """Somebody new: `language` is en or es, `units` metric or us."""

    name: str
    language: str = "en"
    units: str = "metric"


def list_people(yard: Yard, caller: Caller) -> list[dict[str, object]]:
    """Everybody who works here. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    with yard.store.reading() as connection:
        found = people.people(connection, caller.organisation)
    return [person_json(who) for who in found]


def person_json(who: Person) -> dict[str, object]:
    """A person as pages see them."""
    return {name: getattr(who, name) for name in ("id", "name", "language", "units", "role")}


def add_person(yard: Yard, caller: Caller, *, new: NewPerson) -> dict[str, object]:
    """An installer more. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    name = plain_label(new.name)
    if not name:
        raise RefusedError("name: letters are expected", code="request")
    who = Person(
        id=fresh_id(),
        organisation=caller.organisation,
        name=name,
        language=new.language,
        units=new.units,
        role=str(Role.INSTALLER),
    )
    with yard.store.writing() as connection:
        people.add_person(connection, who, made_at=now())
    return person_json(who)


def person_called(yard: Yard, caller: Caller, *, name: str) -> str:
    """The id of the person of that name, who is added where nobody is so called. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    wanted = plain_label(name)
    with yard.store.reading() as connection:
        found = [who.id for who in people.people(connection, caller.organisation) if who.name == wanted]
    return found[0] if found else str(add_person(yard, caller, new=NewPerson(name=wanted))["id"])


def list_phones(yard: Yard, caller: Caller) -> list[dict[str, object]]:
    """All phones, whose they are, and with which keys they sign. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    with yard.store.reading() as connection:
        rows = people.phones(connection, caller.organisation)
        keys = signing_keys.listed(connection, caller.organisation)
    names = ("id", "device", "label", "enrolled_at", "seen_at", "withdrawn_at")
    return [
        {
            **{name: row[name] for name in names},
            "person": {"id": row["person"], "name": row["person_name"]},
            "fingerprints": [fingerprint(one["key"]) for one in keys if one["phone"] == row["id"]],
        }
        for row in rows
    ]


def list_feeds(yard: Yard, caller: Caller) -> list[dict[str, object]]:
    """All feeds, without their tokens. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    with yard.store.reading() as connection:
        rows = reports.feeds(connection, caller.organisation)
    return [{**row, "columns": json.loads(row["columns"])} for row in rows]


def add_feed(yard: Yard, caller: Caller, *, label: str, columns: Mapping[str, str]) -> dict[str, object]:
    """A feed more; its token is shown this once. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    odd = [name for name, theirs in columns.items() if name not in KNOWN or not theirs.strip()]
    if odd:
        raise RefusedError(f"columns: {odd[0]!r}; names out of {', '.join(KNOWN)} are expected", code="request")
    token = secret()
    feed = {"id": fresh_id(), "organisation": caller.organisation, "label": plain_label(label)}
    with yard.store.writing() as connection:
        reports.add_feed(connection, {**feed, "token_sha256": hashed(token), "made_at": now()}, columns=columns)
    return {"id": feed["id"], "label": feed["label"], "columns": dict(columns), "token": token}


def withdraw_feed(yard: Yard, caller: Caller, *, feed_id: str) -> None:
    """Withdraw a feed. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    with yard.store.writing() as connection:
        if not reports.withdraw_feed(connection, caller.organisation, feed_id=feed_id, at=now()):
            raise RefusedError("there is no such feed", code="not_found")
