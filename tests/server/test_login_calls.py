"""The desk's login: a cookie that scripts cannot read, tries that are counted."""

from __future__ import annotations

from tests.samples.served import PASSWORD, Server


def test_a_session_begins_and_ends(shut_server: Server) -> None:
    """The cookie is HttpOnly, SameSite=Strict, and goes away by logging out."""
    with shut_server.client() as client:
        before = client.get("/api/session").json()
        assert before == {"login_needed": True, "person": None, "csrf": None}
        answer = client.post("/api/login", json={"login": "ada", "password": PASSWORD})
        said = answer.headers["set-cookie"].lower()
        assert "httponly" in said
        assert "samesite=strict" in said
        assert PASSWORD not in answer.text
        now = client.get("/api/session").json()
        assert (now["person"]["name"], now["csrf"]) == ("ada", answer.json()["csrf"])
        client.post("/api/logout", headers={"X-CSRF-Token": now["csrf"]})
        assert client.get("/api/session").json() == before


def test_guessing_passwords_is_slowed_down(shut_server: Server) -> None:
    """After ten tries the eleventh waits, also with the right password; the message does not say what was wrong."""
    with shut_server.client() as client:
        wrong = {"login": "ada", "password": "wrong"}
        answers = [client.post("/api/login", json=wrong) for _ in range(10)]
        assert {each.json()["code"] for each in answers} == {"login_wrong"}
        late = client.post("/api/login", json={"login": "ada", "password": PASSWORD})
        assert (late.status_code, late.json()["code"]) == (429, "too_many")
        assert 1 <= int(late.headers["retry-after"]) <= 31


def test_another_site_s_form_cannot_log_in(shut_server: Server) -> None:
    """Else it could leave somebody working in a stranger's session."""
    with shut_server.client(Origin="https://evil.test") as client:
        answer = client.post("/api/login", json={"login": "ada", "password": PASSWORD})
        assert (answer.status_code, answer.json()["code"]) == (403, "csrf")


def test_on_loopback_nobody_needs_to_log_in(server: Server) -> None:
    """The page gets the token that changes need."""
    with server.client() as client:
        answer = client.get("/api/session").json()
    assert answer == {"login_needed": False, "person": None, "csrf": server.running.local_csrf}
