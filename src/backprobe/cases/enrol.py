"""Phones: enrolled by a code that is good once, known by a token, withdrawn by the lead."""

from __future__ import annotations

import re
from dataclasses import dataclass
from urllib.parse import quote

from sqlalchemy import RowMapping

from backprobe.cases.may import Caller, Deed, Role, phone_caller
from backprobe.cases.server_words import SERVER
from backprobe.cases.tokens import code, fresh_id, hashed, now, secret
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.paper.qr import qr_svg
from backprobe.store import people, reports
from backprobe.store.people import Person

CODE_MINUTES = 15
DEVICE = re.compile(r"[a-z0-9][a-z0-9._-]{0,63}", re.ASCII)
NOT_A_PHONE = ("folder", SERVER)
MOST_LABEL = 80


@dataclass(frozen=True, slots=True)
class Enrolled:
    """What a phone gets: its token, shown this once, and whose phone it is now."""

    token: str
    device: str
    person: Person
    organisation_name: str


@dataclass(frozen=True, slots=True)
class EnrolmentCode:
    """A code with the address that the desk's QR holds, as a picture too, and until when it is good."""

    code: str
    url: str
    qr_svg: str
    expires_at: str


def make_code(yard: Yard, caller: Caller, *, person_id: str, origin: str) -> EnrolmentCode:
    """A code for a person's phone; `origin` is where phones find the server. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    fresh, expires_at = code(), now(CODE_MINUTES * 60)
    with yard.store.writing() as connection:
        if people.person_of(connection, caller.organisation, person_id=person_id) is None:
            raise RefusedError("there is no such person", code="not_found")
        row = {"code_sha256": hashed(fresh), "organisation": caller.organisation, "person": person_id}
        people.add_code(connection, {**row, "expires_at": expires_at})
    url = f"{origin}/#enrol={quote(fresh)}"
    svg = qr_svg(url)
    return EnrolmentCode(fresh, url, svg[svg.index("<svg") :], expires_at)  # a page takes no XML declaration


def enrol(yard: Yard, code_given: str, *, device: str, label: str) -> Enrolled:
    """Enrol a phone. Raises RefusedError: `enrolment_code`, `device_taken`, `request`."""
    if not DEVICE.fullmatch(device) or device in NOT_A_PHONE or device.startswith("key-"):
        raise RefusedError("device: 1 to 64 of a-z 0-9 - _ . are expected, not a name that others bear", code="request")
    at, token = now(), secret()
    plain = "".join(code_given.split()).upper()
    with yard.store.writing() as connection:
        made_for = people.use_code(connection, hashed(plain), at=at)
        if made_for is None:
            raise RefusedError("this code is wrong, late or was used; let the desk show another", code="enrolment_code")
        organisation, person_id = made_for
        person = people.person_of(connection, organisation, person_id=person_id)
        if person is None:
            raise RefusedError("whose phone this was to be is no longer here", code="enrolment_code")
        row = {"token_sha256": hashed(token), "label": plain_label(label), "enrolled_at": at}
        known = people.phone_of_device(connection, organisation, device=device)
        if known is None:
            fresh = {"id": fresh_id(), "organisation": organisation, "person": person_id, "device": device}
            people.add_phone(connection, {**fresh, **row})
        elif known.person == person_id:
            people.renew_phone(connection, known.id, row=row)
        else:
            raise RefusedError("another person's phone bears this device's name", code="device_taken")
        return Enrolled(token, device, person, people.organisation_name(connection, organisation))


def plain_label(label: str) -> str:
    """A label on one line, of at most 80 letters."""
    return "".join(letter for letter in label if letter.isprintable()).strip()[:MOST_LABEL]


def caller_of_token(yard: Yard, token: str) -> Caller:
    """The phone whose token this is. Raises RefusedError `not_enrolled`."""
    with yard.store.reading() as connection:
        phone = people.phone_by_token(connection, hashed(token))
    if phone is None:
        raise RefusedError("this phone is not enrolled here", code="not_enrolled")
    return phone_caller(phone)


def feed_of_token(yard: Yard, token: str) -> tuple[Caller, RowMapping]:
    """The feed whose token this is. Raises RefusedError `not_enrolled`."""
    with yard.store.reading() as connection:
        feed = reports.feed_by_token(connection, hashed(token))
    if feed is None:
        raise RefusedError("no feed has this token", code="not_enrolled")
    return Caller(role=Role.FEED, organisation=feed["organisation"]), feed


def withdraw(yard: Yard, caller: Caller, *, phone_id: str) -> None:
    """Withdraw a phone: from now on it may only hand in. Raises RefusedError."""
    caller.must(Deed.KEEP_PHONES)
    with yard.store.writing() as connection:
        if not people.withdraw_phone(connection, caller.organisation, phone_id=phone_id, at=now()):
            raise RefusedError("there is no such phone", code="not_found")
