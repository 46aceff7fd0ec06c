"""Who is calling is told by a token or a session, and calls from other sites' pages are not taken."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import httpx
import pytest
from tests.samples.served import PASSWORD, Server


def code_of(answer: httpx.Response) -> str | None:
    """The code of a refusal; None where there is none."""
    return None if answer.status_code < 400 else str(answer.json()["code"])


@contextmanager
def logged_in(server: Server) -> Iterator[httpx.Client]:
    """The lead's browser."""
    with server.client() as client:
        answer = client.post("/api/login", json={"login": "ada", "password": PASSWORD})
        client.headers["X-CSRF-Token"] = answer.json()["csrf"]
        yield client


def test_the_desk_is_shut_until_somebody_logs_in(shut_server: Server) -> None:
    """Every call of the desk is refused without a session; after logging out again."""
    with shut_server.client() as stranger:
        for path in ("/api/desk/jobs", "/api/desk/phones", "/api/desk/people", "/api/desk/quarantine"):
            assert code_of(stranger.get(path)) == "not_logged_in"
        assert code_of(stranger.post("/api/desk/people", json={"name": "Eve"})) == "not_logged_in"
    with logged_in(shut_server) as lead:
        assert code_of(lead.get("/api/desk/jobs")) is None
        assert code_of(lead.post("/api/desk/people", json={"name": "Ines"})) is None
        assert code_of(lead.post("/api/logout")) is None
        assert code_of(lead.get("/api/desk/jobs")) == "not_logged_in"


def test_a_change_needs_the_session_s_token(shut_server: Server) -> None:
    """A form on another page could send the cookie, but not the header."""
    with logged_in(shut_server) as lead:
        for given in ("", "wrong", "é"):
            headers = {"X-CSRF-Token": given.encode()}
            assert code_of(lead.post("/api/desk/people", json={"name": "Eve"}, headers=headers)) == "csrf"
        assert lead.get("/api/desk/people").json()["people"][0]["name"] == "ada"


@pytest.mark.parametrize(
    "headers", [{"Origin": "https://evil.test"}, {"Origin": "null"}, {"Sec-Fetch-Site": "cross-site"}]
)
def test_another_site_s_page_cannot_call(shut_server: Server, headers: dict[str, str]) -> None:
    """What the browser says of the page is enough to refuse, whatever tokens come along."""
    with logged_in(shut_server) as lead:
        assert code_of(lead.post("/api/desk/people", json={"name": "Eve"}, headers=headers)) == "csrf"
        own = {"Origin": "http://yard.test", "Sec-Fetch-Site": "same-origin"}
        assert code_of(lead.post("/api/desk/people", json={"name": "Ines"}, headers=own)) is None


def test_a_phone_s_token_is_no_session_and_a_session_no_phone(shut_server: Server) -> None:
    """Each opens its own calls."""
    with shut_server.phone("Ines", device="phone-a") as phone, logged_in(shut_server) as lead:
        assert code_of(phone.get("/api/desk/jobs")) == "not_logged_in"
        assert code_of(lead.get("/api/day")) == "not_enrolled"


def test_on_loopback_the_desk_is_open_and_still_not_to_other_pages(server: Server, desk: httpx.Client) -> None:
    """No login; the token against forged calls is needed there too."""
    assert code_of(desk.post("/api/desk/people", json={"name": "Ines"})) is None
    with server.client() as without:
        assert code_of(without.get("/api/desk/jobs")) is None
        assert code_of(without.post("/api/desk/people", json={"name": "Eve"})) == "csrf"
