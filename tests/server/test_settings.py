"""Settings say who can reach the server, and what follows from that."""

from __future__ import annotations

from pathlib import Path

import pytest

from backprobe.server.settings import Settings, is_loopback

PEM = Path("a.pem")


@pytest.mark.parametrize(
    ("settings", "login", "secure", "origin"),
    [
        (Settings(), False, False, "http://127.0.0.1:8750"),
        (Settings(host="::1", port=80), False, False, "http://[::1]"),
        (Settings(host="0.0.0.0", port=8443, certificate=PEM), True, True, "https://0.0.0.0:8443"),
        (Settings(host="10.0.0.7", port=443, certificate=PEM), True, True, "https://10.0.0.7"),
        (Settings(origin="https://yard.example/"), True, True, "https://yard.example"),
        (Settings(origin="http://yard.example"), True, False, "http://yard.example"),
    ],
)
def test_a_login_is_asked_where_others_can_come(settings: Settings, login: bool, secure: bool, origin: str) -> None:
    """On loopback alone none is; behind a proxy, which also comes by loopback, one is."""
    assert (settings.login_needed, settings.is_secure, settings.own_origin) == (login, secure, origin)


def test_on_loopback_only_this_machine_s_names_are_answered_to() -> None:
    """A name from elsewhere that was made to lead to 127.0.0.1 is not this server's."""
    here = Settings()
    for host in ("localhost", "localhost:8750", "127.0.0.1:1", "[::1]:8750"):
        assert here.answers_to(host)
    for host in ("", "evil.test", "localhost.evil.test", "127.0.0.1.evil.test", "[", "a b"):
        assert not here.answers_to(host)
    assert Settings(origin="https://yard.example").answers_to("yard.example")


def test_the_environment_sets_what_was_not_given(monkeypatch: pytest.MonkeyPatch) -> None:
    """BACKPROBE_STORE is the one setting that makes it PostgreSQL."""
    monkeypatch.setenv("BACKPROBE_STORE", "postgresql+psycopg://yard@localhost/yard")
    assert Settings().store == "postgresql+psycopg://yard@localhost/yard"
    assert Settings(store="sqlite:///a").store == "sqlite:///a"
    assert not is_loopback("yard.example")
