"""Logging in at the desk: argon2 for passwords, sessions known by a hash, a token against forged calls."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from functools import lru_cache

from pwdlib import PasswordHash

from backprobe.cases.may import Role
from backprobe.cases.tokens import fresh_id, hashed, now, secret
from backprobe.cases.yard import Yard
from backprobe.errors import OptionError, RefusedError
from backprobe.store import people
from backprobe.store.people import Person

SESSION_HOURS = 12
LEAST_PASSWORD, MOST_PASSWORD = 10, 200
MOST_LOGIN = 80
WRONG = "login or password is wrong"
AT_ONCE = threading.BoundedSemaphore(2)  # holding a password against its hash takes 64 MB, as argon2 means it to


@dataclass(frozen=True, slots=True)
class Session:
    """A new session: the token for the cookie, shown this once, who it is, and the token against forged calls."""

    token: str
    person: Person
    csrf: str


@lru_cache(maxsize=1)
def _hasher() -> PasswordHash:
    return PasswordHash.recommended()


@lru_cache(maxsize=1)
def _nobody_s_hash() -> str:
    """A hash to hold passwords against where there is no such login: that takes as long as with one."""
    return _hasher().hash(secret())


def add_lead(yard: Yard, login: str, *, password: str) -> Person:
    """A lead who can log in; one who has the login already gets the password. Raises OptionError."""
    if not login.isprintable() or not 0 < len(login) <= MOST_LOGIN:
        raise OptionError(f"a login of 1 to {MOST_LOGIN} letters is expected")
    if not LEAST_PASSWORD <= len(password) <= MOST_PASSWORD:
        raise OptionError(f"a password of {LEAST_PASSWORD} to {MOST_PASSWORD} letters is expected")
    made = _hasher().hash(password)
    with yard.store.writing() as connection:
        known = people.by_login(connection, login)
        who = known[0] if known else lead_named(yard, login)
        if known is None:
            people.add_person(connection, who, made_at=now())
        people.set_login(connection, who.id, login=login, password_hash=made)
    return who


def lead_named(yard: Yard, name: str) -> Person:
    """A person who leads, not written yet."""
    fresh = fresh_id()
    return Person(
        id=fresh, organisation=yard.organisation, name=name, language="en", units="metric", role=str(Role.LEAD)
    )


def log_in(yard: Yard, login: str, *, password: str) -> Session:
    """A session for whoever logs in so. Raises RefusedError `login_wrong`."""
    with yard.store.reading() as connection:
        known = people.by_login(connection, login) if login.isprintable() else None
    with AT_ONCE:
        right = _hasher().verify(password[:MOST_PASSWORD], _nobody_s_hash() if known is None else known[1])
    if known is None or not right:
        raise RefusedError(WRONG, code="login_wrong")
    token, csrf = secret(), secret()
    with yard.store.writing() as connection:
        row = {"token_sha256": hashed(token), "person": known[0].id, "csrf": csrf}
        people.add_session(connection, {**row, "expires_at": now(SESSION_HOURS * 3600)})
    return Session(token, known[0], csrf)


def session_of(yard: Yard, token: str) -> tuple[Person, str] | None:
    """Who a session's token belongs to, and its token against forged calls; None where it is not known or has ended."""
    with yard.store.reading() as connection:
        return people.session_of(connection, hashed(token), at=now())


def log_out(yard: Yard, token: str) -> None:
    """End a session."""
    with yard.store.writing() as connection:
        people.end_session(connection, hashed(token), at=now())


def anybody_can_log_in(yard: Yard) -> bool:
    """Whether a password was set for anybody."""
    with yard.store.reading() as connection:
        return people.has_login(connection, yard.organisation)
