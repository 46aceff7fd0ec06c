"""Passwords are held as argon2, and a session is known by its token's hash."""

from __future__ import annotations

import pytest
from sqlalchemy import text

from backprobe.cases.login import add_lead, anybody_can_log_in, log_in, log_out, session_of
from backprobe.cases.yard import Yard
from backprobe.errors import OptionError, RefusedError

PASSWORD = "correct horse battery"


def test_a_lead_logs_in_and_out(sqlite_yard: Yard) -> None:
    """The password stands nowhere; the hash says argon2id."""
    assert not anybody_can_log_in(sqlite_yard)
    ada = add_lead(sqlite_yard, "ada", password=PASSWORD)
    assert anybody_can_log_in(sqlite_yard)
    session = log_in(sqlite_yard, "ada", password=PASSWORD)
    assert session_of(sqlite_yard, session.token) == (ada, session.csrf)
    with sqlite_yard.store.reading() as connection:
        kept = connection.execute(text("SELECT password_hash FROM person")).scalar_one()
        tokens = connection.execute(text("SELECT token_sha256 FROM session")).scalars().all()
    assert kept.startswith("$argon2id$")
    assert PASSWORD not in kept
    assert session.token not in tokens
    log_out(sqlite_yard, session.token)
    assert session_of(sqlite_yard, session.token) is None


def test_a_new_password_ends_the_old_one(sqlite_yard: Yard) -> None:
    """The person stays the same."""
    first = add_lead(sqlite_yard, "ada", password=PASSWORD)
    assert add_lead(sqlite_yard, "ada", password="another one, longer").id == first.id
    with pytest.raises(RefusedError):
        log_in(sqlite_yard, "ada", password=PASSWORD)
    assert log_in(sqlite_yard, "ada", password="another one, longer").person.id == first.id


@pytest.mark.parametrize(("login", "password"), [("ada", "wrong"), ("eve", PASSWORD), ("", ""), ("a\0", "x")])
def test_a_wrong_login_and_a_wrong_password_look_alike(sqlite_yard: Yard, login: str, password: str) -> None:
    """One code, one message."""
    add_lead(sqlite_yard, "ada", password=PASSWORD)
    with pytest.raises(RefusedError, match="login or password is wrong") as refusal:
        log_in(sqlite_yard, login, password=password)
    assert refusal.value.code == "login_wrong"


@pytest.mark.parametrize(("login", "password"), [("", PASSWORD), ("a\n", PASSWORD), ("ada", "123456789")])
def test_poor_ones_are_not_made(sqlite_yard: Yard, login: str, password: str) -> None:
    """A password has 10 letters and more."""
    with pytest.raises(OptionError):
        add_lead(sqlite_yard, login, password=password)
