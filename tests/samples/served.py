"""A running server for tests: real sockets on loopback, a fresh folder, a phone that was enrolled."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import httpx
import pytest
import uvicorn

from backprobe.cases.enrol import enrol, make_code
from backprobe.cases.login import add_lead
from backprobe.cases.may import Caller, Role
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.yard import Yard
from backprobe.server.app import create_app
from backprobe.server.callers import Running
from backprobe.server.settings import Settings
from backprobe.store.people import Person, add_person

__all__ = ["desk", "phone", "pages", "server", "shut_server"]

START_S = 20.0
PASSWORD = "correct horse battery"


@dataclass(frozen=True)
class Server:
    """A running server, and what it has at hand."""

    url: str
    running: Running

    @property
    def yard(self) -> Yard:
        """Its store."""
        return self.running.yard

    @property
    def lead(self) -> Caller:
        """Whoever sits at the desk."""
        return Caller(role=Role.LEAD, organisation=self.yard.organisation)

    def client(self, **headers: str) -> httpx.Client:
        """A client of it."""
        return httpx.Client(base_url=self.url, headers=headers, timeout=30.0)

    def person(self, name: str) -> Person:
        """A new installer."""
        who = Person(
            id=fresh_id(), organisation=self.yard.organisation, name=name, language="es", units="us", role="installer"
        )
        with self.yard.store.writing() as connection:
            add_person(connection, who, made_at=now())
        return who

    def code(self, person: Person) -> str:
        """A fresh enrolment code for somebody."""
        return make_code(self.yard, self.lead, person_id=person.id, origin=self.url).code

    def phone(self, name: str, *, device: str) -> httpx.Client:
        """A client that is somebody's enrolled phone."""
        token = enrol(self.yard, self.code(self.person(name)), device=device, label="").token
        return self.client(Authorization=f"Bearer {token}")


@contextmanager
def serving(settings: Settings, port: int = 0) -> Iterator[Server]:
    """A server that runs as long as the block, on `port` or on any that is free."""
    app = create_app(settings)
    config = uvicorn.Config(app, port=port, log_level="error", server_header=False, timeout_graceful_shutdown=2)
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run)
    thread.start()
    give_up = time.monotonic() + START_S
    while not server.started and thread.is_alive() and time.monotonic() < give_up:
        time.sleep(0.01)
    try:
        port = server.servers[0].sockets[0].getsockname()[1]
        yield Server(f"http://127.0.0.1:{port}", app.state.running)
    finally:
        server.should_exit = True
        thread.join()


@pytest.fixture
def pages(tmp_path: Path) -> Path:
    """A folder for pages with nothing in it."""
    (tmp_path / "pages").mkdir()
    return tmp_path / "pages"


@pytest.fixture
def server(tmp_path: Path, pages: Path) -> Iterator[Server]:
    """A server on loopback, where the desk is open."""
    with serving(Settings(data=tmp_path / "data", pages=pages)) as found:
        yield found


@pytest.fixture
def shut_server(tmp_path: Path, pages: Path) -> Iterator[Server]:
    """A server that others can reach by a proxy, where the desk asks for a login; there is a lead named ada."""
    with serving(Settings(data=tmp_path / "data", pages=pages, origin="http://yard.test")) as found:
        add_lead(found.yard, "ada", password=PASSWORD)
        yield found


@pytest.fixture
def phone(server: Server) -> Iterator[httpx.Client]:
    """Ines's phone, `phone-a`."""
    with server.phone("Ines Okafor", device="phone-a") as client:
        yield client


@pytest.fixture
def desk(server: Server) -> Iterator[httpx.Client]:
    """Somebody at the desk of the server on loopback."""
    with server.client() as client:
        client.headers["X-CSRF-Token"] = server.running.local_csrf
        yield client
