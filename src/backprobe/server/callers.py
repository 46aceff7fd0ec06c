"""Who is calling: a phone or a feed by its token, somebody at the desk by a session's cookie."""

from __future__ import annotations

import hmac
from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends, Request
from fastapi.security import APIKeyCookie, HTTPBearer
from fastapi.security.http import HTTPAuthorizationCredentials
from sqlalchemy import RowMapping

from backprobe.cases.enrol import caller_of_token, feed_of_token
from backprobe.cases.login import session_of
from backprobe.cases.may import Caller, Role, person_caller
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.server.rates import Rate
from backprobe.server.settings import Settings
from backprobe.store.people import Person

COOKIE, SECURE_COOKIE = "backprobe-session", "__Host-backprobe-session"
CSRF_HEADER = "X-CSRF-Token"
SAFE = ("GET", "HEAD", "OPTIONS")

bearer = HTTPBearer(auto_error=False, scheme_name="token")
cookie = APIKeyCookie(name=COOKIE, auto_error=False, scheme_name="session")


@dataclass(frozen=True, slots=True)
class Running:
    """What the running server has at hand; `local_csrf` is the token where no login is asked.

    Tries to log in are counted by where they come from (`logins`) and, less strictly, by the login that is tried
    (`each_login`): a stranger must not be able to keep the lead out.
    """

    yard: Yard
    settings: Settings
    local_csrf: str
    logins: Rate
    each_login: Rate
    enrolments: Rate


@dataclass(frozen=True, slots=True)
class AtDesk:
    """Somebody at the desk; `person` is None where no login is asked."""

    caller: Caller
    person: Person | None
    csrf: str


def running(request: Request) -> Running:
    """What the server has at hand."""
    found = request.app.state.running
    assert isinstance(found, Running)
    return found


Here = Annotated[Running, Depends(running)]
Token = Annotated[HTTPAuthorizationCredentials | None, Depends(bearer)]


def phone(here: Here, token: Token) -> Caller:
    """The phone that calls. Raises RefusedError."""
    if token is None:
        raise RefusedError("a phone's token is needed", code="not_enrolled")
    return caller_of_token(here.yard, token.credentials)


def feed(here: Here, token: Token) -> tuple[Caller, RowMapping]:
    """The feed that calls. Raises RefusedError."""
    if token is None:
        raise RefusedError("a feed's token is needed", code="not_enrolled")
    return feed_of_token(here.yard, token.credentials)


def cookie_name(settings: Settings) -> str:
    """The cookie's name: over HTTPS one that browsers take from this very host only."""
    return SECURE_COOKIE if settings.is_secure else COOKIE


def who_is_at_desk(request: Request, here: Here, *, _shown: Annotated[str | None, Depends(cookie)]) -> AtDesk | None:
    """Who is at the desk; None where nobody is logged in."""
    token = request.cookies.get(cookie_name(here.settings))
    found = None if token is None else session_of(here.yard, token)
    if found is not None:
        return AtDesk(person_caller(found[0]), found[0], found[1])
    if here.settings.login_needed:
        return None
    caller = Caller(role=Role.LEAD, organisation=here.yard.organisation)
    return AtDesk(caller, None, here.local_csrf)


def at_desk(request: Request, here: Here, *, found: Annotated[AtDesk | None, Depends(who_is_at_desk)]) -> AtDesk:
    """Somebody at the desk, whose call is their own. Raises RefusedError `not_logged_in` and `csrf`."""
    if found is None:
        raise RefusedError("log in first", code="not_logged_in")
    if request.method not in SAFE:
        own_call(request, here.settings)
        given = request.headers.get(CSRF_HEADER, "")
        if not hmac.compare_digest(given.encode(), found.csrf.encode()):
            raise RefusedError(f"the header {CSRF_HEADER} with the session's token is needed", code="csrf")
    return found


def origin_of(request: Request, settings: Settings) -> str:
    """How phones reach the server: as was set, else by the name under which the desk has called it just now."""
    if settings.origin is not None:
        return settings.own_origin
    return f"{request.url.scheme}://{request.headers.get('host', '')}"


def own_call(request: Request, settings: Settings) -> None:
    """Raise RefusedError where a browser says that the call comes from another site's page."""
    site, origin = request.headers.get("sec-fetch-site"), request.headers.get("origin")
    own = {settings.own_origin, f"{request.url.scheme}://{request.headers.get('host', '')}"}
    if site not in (None, "same-origin", "none") or (origin is not None and origin not in own):
        raise RefusedError("calls from other sites' pages are not taken", code="csrf")


Desk = Annotated[AtDesk, Depends(at_desk)]
PhoneCaller = Annotated[Caller, Depends(phone)]
FeedCaller = Annotated[tuple[Caller, RowMapping], Depends(feed)]
