"""The store opened: SQLite in WAL by default, PostgreSQL by its address; the same calls on both."""

from __future__ import annotations

import sqlite3
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass, field

from sqlalchemy import Connection, Engine, create_engine, event, text
from sqlalchemy.engine import make_url
from sqlalchemy.engine.interfaces import DBAPIConnection, DBAPICursor
from sqlalchemy.exc import ArgumentError, DBAPIError

from backprobe.errors import OptionError, StoreError

SQLITE, POSTGRESQL = "sqlite", "postgresql"
WAIT_MS = 30_000  # for another process that writes
AGAIN_S = 0.05
POOL_SIZE = 10
POOL_MORE = 40  # as many as the server has threads
WRITES = "backprobe_writes"


@dataclass(frozen=True, slots=True)
class Store:
    """A database and how to read and write in it. What `writing` has left without an error is on the disk."""

    engine: Engine
    turn: threading.Lock = field(default_factory=threading.Lock)

    @property
    def is_sqlite(self) -> bool:
        """Whether this is SQLite, which takes one writer at a time."""
        return self.engine.dialect.name == SQLITE

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A connection that sees one state of the database. Raises StoreError where it cannot be read."""
        with _plain_words(), self.engine.connect() as connection, connection.begin():
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A connection whose changes come all or not at all. Raises StoreError where they cannot be written."""
        # SQLite's own waiting lets latecomers pass; threads of one process queue here instead
        turn = self.turn if self.is_sqlite else nullcontext()
        writer = self.engine.execution_options(**{WRITES: True})
        with _plain_words(), turn, writer.begin() as connection:
            yield connection

    def close(self) -> None:
        """Let go of all connections."""
        self.engine.dispose()


def opened(address: str) -> Store:
    """The store at `address`, as SQLAlchemy writes it: sqlite:///file.sqlite3, postgresql+psycopg://user@host/name.

    Nothing is made or changed in it yet. Raises OptionError where the address makes no sense.
    """
    try:
        url = make_url(address)
        kind = url.get_backend_name()
        if kind not in (SQLITE, POSTGRESQL):
            raise OptionError(
                f"the store's address begins with {kind!r}; sqlite:/// or postgresql+psycopg:// is expected"
            )
        engine = create_engine(url, pool_size=POOL_SIZE, max_overflow=POOL_MORE, pool_pre_ping=kind == POSTGRESQL)
    except (ArgumentError, ModuleNotFoundError) as fault:
        raise OptionError(f"the store's address cannot be used: {fault}") from None
    if kind == SQLITE:
        event.listen(engine, "connect", _prepared)
        event.listen(engine, "begin", _begun)
    return Store(engine)


def _prepared(connection: DBAPIConnection, _record: object) -> None:
    """Durable on the disk with each commit, also where the power fails; transactions begin as we say."""
    connection.isolation_level = None  # sqlite3's own guessing at transactions is off
    cursor = connection.cursor()
    cursor.execute(f"PRAGMA busy_timeout={WAIT_MS}")  # first: what follows may have to wait
    _into_wal(cursor)
    for pragma in ("synchronous=FULL", "foreign_keys=ON"):
        cursor.execute(f"PRAGMA {pragma}")
    cursor.close()


def _into_wal(cursor: DBAPICursor) -> None:
    """Into WAL, where the file is not in it yet; two that try at once are refused without waiting, so ask again."""
    give_up = time.monotonic() + WAIT_MS / 1000
    while True:
        try:
            cursor.execute("PRAGMA journal_mode=WAL")
            return
        except sqlite3.OperationalError as fault:
            if "locked" not in str(fault) or time.monotonic() > give_up:
                raise
            time.sleep(AGAIN_S)


def _begun(connection: Connection) -> None:
    """A transaction that will write takes its turn at once: one that reads first could be refused later."""
    writes = connection.get_execution_options().get(WRITES, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


@contextmanager
def _plain_words() -> Iterator[None]:
    try:
        yield
    except DBAPIError as fault:
        raise StoreError(f"the store cannot be used just now; the database says: {fault.orig}") from fault


def is_there(store: Store) -> bool:
    """Whether the database answers."""
    with store.reading() as connection:
        return connection.execute(text("SELECT 1")).scalar() == 1
