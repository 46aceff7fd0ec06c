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

from backprobe.store.migrate import migrate
from backprobe.store.opened import Store, opened
from backprobe.store.people import make_organisation

__all__ = ["address", "fresh_address", "postgres", "sqlite_template", "store"]

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
        _execute(server, "CREATE DATABASE template_of_tests")
        _prepare(f"{server}/template_of_tests")
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
    name = f"fresh_{next(_numbers)}"
    _execute(server, f"CREATE DATABASE {name}")
    return f"{server}/{name}"


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of a database with all tables and the organisation, nothing else in it."""
    if request.param == "sqlite":
        shutil.copy(request.getfixturevalue("sqlite_template"), tmp_path / "store.sqlite3")
        return f"sqlite:///{tmp_path / 'store.sqlite3'}"
    server = request.getfixturevalue("postgres")
    name = f"test_{next(_numbers)}"
    _execute(server, f"CREATE DATABASE {name} TEMPLATE template_of_tests")
    return f"{server}/{name}"


@pytest.fixture
def store(address: str) -> Iterator[Store]:
    """The store at `address`."""
    found = opened(address)
    yield found
    found.close()


def _prepare(address: str) -> None:
    found = opened(address)
    migrate(found)
    with found.writing() as connection:
        make_organisation(connection, ORGANISATION, name="Linden Yard")
    found.close()


def _execute(server: str, statement: str) -> None:
    url = make_url(server)
    connection = psycopg.connect(
        host=url.host, port=url.port, user=url.username, password=url.password, dbname="postgres", autocommit=True
    )
    with connection:
        connection.execute(statement)
    connection.close()
