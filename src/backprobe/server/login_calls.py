"""Logging in at the desk and out again."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response
from pydantic import Field

from backprobe.cases.desk_people import person_json
from backprobe.cases.login import MOST_LOGIN, MOST_PASSWORD, SESSION_HOURS, log_in, log_out
from backprobe.server.callers import AtDesk, Desk, Here, cookie_name, own_call, who_is_at_desk
from backprobe.server.phone_calls import Strict, address_of

router = APIRouter(prefix="/api", tags=["desk"])


class LoginBody(Strict):
    """A login with its password."""

    login: str = Field(max_length=MOST_LOGIN)
    password: str = Field(max_length=MOST_PASSWORD)


@router.get("/session")
def session(here: Here, found: Annotated[AtDesk | None, Depends(who_is_at_desk)]) -> dict[str, object]:
    """Who is at the desk, and the token that changes need."""
    return {
        "login_needed": here.settings.login_needed,
        "person": None if found is None or found.person is None else person_json(found.person),
        "csrf": None if found is None else found.csrf,
    }


@router.post("/login")
def login(body: LoginBody, here: Here, *, request: Request, response: Response) -> dict[str, object]:
    """Begin a session."""
    own_call(request, here.settings)
    here.logins.must_wait(address_of(request))
    here.each_login.must_wait(body.login)
    done = log_in(here.yard, body.login, password=body.password)
    response.set_cookie(
        cookie_name(here.settings),
        done.token,
        max_age=SESSION_HOURS * 3600,
        path="/",
        secure=here.settings.is_secure,
        httponly=True,
        samesite="strict",
    )
    return {"person": person_json(done.person), "csrf": done.csrf}


@router.post("/logout")
def logout(_desk: Desk, here: Here, *, request: Request, response: Response) -> dict[str, object]:
    """End the session."""
    name = cookie_name(here.settings)
    token = request.cookies.get(name)
    if token is not None:
        log_out(here.yard, token)
    response.delete_cookie(name, path="/", secure=here.settings.is_secure, httponly=True, samesite="strict")
    return {"logged_out": token is not None}
