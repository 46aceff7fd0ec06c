"""Fixtures for tests of the store, each run on SQLite and on PostgreSQL: `from tests.samples.stores import *`."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from itertools import count
from pathlib import Path

import psycopg
import pytest
from sqlalchemy.engine import make_url
from tests.samples.postgres import programs, running

from backprobe.cases.may import Caller, phone_caller
from backprobe.cases.tokens import hashed
from backprobe.cases.yard import Yard
from backprobe.store.blobs import BlobFolder
from backprobe.store.migrate import migrate
from backprobe.store.opened import Store, opened
from backprobe.store.people import Person, add_person, add_phone, make_organisation, phone_of_device

__all__ = ["address", "fresh_address", "ines", "marta", "postgres", "sqlite_template", "sqlite_yard", "store", "yard"]

ORGANISATION = "linden"
AT = "2026-03-31T08:00:00.000Z"
_numbers = count(1)


@pytest.fixture(scope="session")
def postgres() -> Iterator[str]:
    """A running PostgreSQL with a database `template` that has all tables and the organisation."""
    bin_folder = programs()
    if bin_folder is None:
        pytest.skip("PostgreSQL is not installed (Debian: apt-get install postgresql)")
    with running(bin_folder) as server:
        _prepare(new_database(server, "template_of_tests"))
        yield server


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An SQLite file that has all tables and the organisation."""
    path = tmp_path_factory.mktemp("template") / "store.sqlite3"
    _prepare(f"sqlite:///{path}")
    return path


@pytest.fixture(params=["sqlite", "postgresql"])
def fresh_address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of an empty database without any table."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'fresh.sqlite3'}"
    server = request.getfixturevalue("postgres")
    return new_database(server, f"fresh_{next(_numbers)}")


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of a database with all tables and the organisation, nothing else in it."""
    if request.param == "sqlite":
        shutil.copy(request.getfixturevalue("sqlite_template"), tmp_path / "store.sqlite3")
        return f"sqlite:///{tmp_path / 'store.sqlite3'}"
    server = request.getfixturevalue("postgres")
    return new_database(server, f"test_{next(_numbers)}", like="template_of_tests")


@pytest.fixture
def store(address: str) -> Iterator[Store]:
    """The store at `address`."""
    found = opened(address)
    yield found
    found.close()


@pytest.fixture
def yard(store: Store, tmp_path: Path) -> Yard:
    """A yard over `store`, with a folder for files."""
    return yard_over(store, tmp_path)


@pytest.fixture
def sqlite_yard(sqlite_template: Path, tmp_path: Path) -> Iterator[Yard]:
    """A yard over SQLite, for what does not depend on the database."""
    shutil.copy(sqlite_template, tmp_path / "store.sqlite3")
    store = opened(f"sqlite:///{tmp_path / 'store.sqlite3'}")
    yield yard_over(store, tmp_path)
    store.close()


def yard_over(store: Store, folder: Path) -> Yard:
    """A yard over a store, its files in `folder`."""
    (folder / "made").mkdir()
    return Yard(store=store, blobs=BlobFolder(folder / "files"), made=folder / "made", organisation=ORGANISATION)


@pytest.fixture
def ines(request: pytest.FixtureRequest) -> Caller:
    """Ines, an installer, by her phone `phone-a`."""
    return enrolled(_yard_of(request), "ines", device="phone-a")


@pytest.fixture
def marta(request: pytest.FixtureRequest) -> Caller:
    """Marta, another installer, by her phone `phone-b`."""
    return enrolled(_yard_of(request), "marta", device="phone-b")


def _yard_of(request: pytest.FixtureRequest) -> Yard:
    name = "sqlite_yard" if "sqlite_yard" in request.fixturenames else "yard"
    found = request.getfixturevalue(name)
    assert isinstance(found, Yard)
    return found


def enrolled(yard: Yard, name: str, *, device: str) -> Caller:
    """Somebody with a phone, written straight into the store."""
    who = Person(id=name, organisation=ORGANISATION, name=name.title(), language="en", units="metric", role="installer")
    row = {"id": f"id-{device}", "organisation": ORGANISATION, "person": name, "device": device, "label": name}
    with yard.store.writing() as connection:
        add_person(connection, who, made_at=AT)
        add_phone(connection, {**row, "token_sha256": hashed(f"token-{device}"), "enrolled_at": AT})
        phone = phone_of_device(connection, ORGANISATION, device=device)
    assert phone is not None
    return phone_caller(phone)


def _prepare(address: str) -> None:
    found = opened(address)
    migrate(found)
    with found.writing() as connection:
        make_organisation(connection, ORGANISATION, name="Linden Yard")
    found.close()


def new_database(server: str, name: str, *, like: str = "template0") -> str:
    """The address of a new database on a server."""
    url = make_url(server)
    connection = psycopg.connect(
        host=url.host, port=url.port, user=url.username, password=url.password, dbname="postgres", autocommit=True
    )
    with connection:
        connection.execute(f"CREATE DATABASE {name} TEMPLATE {like}")
    connection.close()
    return f"{server}/{name}"
