"""What every call passes: the server's name and the size of the body; and the headers that every answer has."""

from __future__ import annotations

from collections.abc import Iterator

import httpx
import pytest
from tests.samples.served import Server

from backprobe.server import guard


def test_every_answer_has_the_headers(server: Server) -> None:
    """Also refusals, and calls that do not exist; no cookie, no cross-origin permission."""
    with server.client() as client:
        for path in ("/api/openapi.json", "/api/day", "/api/nothing"):
            headers = client.get(path).headers
            assert headers["content-security-policy"].startswith("default-src 'none'")
            assert headers["x-content-type-options"] == "nosniff"
            assert headers["cache-control"] == "no-store"
            assert headers["referrer-policy"] == "no-referrer"
            assert "access-control-allow-origin" not in headers
            assert "server" not in headers


def test_another_name_is_not_answered_to(server: Server) -> None:
    """Whatever it asks for."""
    with server.client(Host="evil.test") as client:
        for path in ("/", "/api/session", "/api/openapi.json"):
            answer = client.get(path)
            assert (answer.status_code, answer.json()["code"]) == (403, "host")


def test_a_body_that_is_too_long_is_refused(server: Server, monkeypatch: pytest.MonkeyPatch) -> None:
    """By its announced length, and where none was announced as soon as it has gone on too long."""
    monkeypatch.setattr(guard, "MOST_SMALL_BYTES", 1000)

    def endless() -> Iterator[bytes]:
        for _ in range(100):
            yield b"x" * 100

    with server.client() as client:
        for content in (b"x" * 1001, endless()):
            answer = client.post("/api/enrol", content=content, headers={"Content-Type": "application/json"})
            assert (answer.status_code, answer.json()["code"]) == (413, "too_large")


def test_over_https_browsers_are_told_to_stay_there() -> None:
    """Only there: on loopback the header would lock out other services of this machine."""
    import asyncio

    from backprobe.server.settings import Settings

    async def app(scope: object, receive: object, send: object) -> None:
        from starlette.responses import PlainTextResponse

        await PlainTextResponse("x")(scope, receive, send)  # type: ignore[arg-type]

    async def ask(settings: Settings) -> httpx.Headers:
        transport = httpx.ASGITransport(app=guard.Guard(app, settings))  # type: ignore[arg-type]
        async with httpx.AsyncClient(transport=transport, base_url="http://localhost") as client:
            return (await client.get("/")).headers

    assert "strict-transport-security" in asyncio.run(ask(Settings(origin="https://yard.example")))
    assert "strict-transport-security" not in asyncio.run(ask(Settings()))


def test_who_is_not_known_yet_sends_little(server: Server) -> None:
    """16 kB to enrol or to log in; a phone's batch may have 40 MB, so 17 kB of it are read, and found to be none."""
    with server.client() as client:
        for path, status in (("/api/enrol", 413), ("/api/login", 413), ("/api/entries", 422)):
            answer = client.post(path, content=b" " * 17_000, headers={"Content-Type": "application/json"})
            assert answer.status_code in (status, 401)
            assert (answer.status_code == 413) == (status == 413)
