"""The store opens on both databases, and says in plain words where it does not."""

from __future__ import annotations

import shutil
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from sqlalchemy import text

from backprobe.errors import OptionError, StoreError
from backprobe.store.opened import Store, is_there, opened


def test_both_answer(store: Store) -> None:
    """A store that was just made can be asked."""
    assert is_there(store)


def test_sqlite_is_durable(tmp_path: Path) -> None:
    """Write-ahead log, and every commit waits for the disk: 2 is FULL (sqlite.org/pragma.html, synchronous)."""
    with opened(f"sqlite:///{tmp_path / 'a.sqlite3'}").reading() as connection:
        assert connection.execute(text("PRAGMA journal_mode")).scalar() == "wal"
        assert connection.execute(text("PRAGMA synchronous")).scalar() == 2


@pytest.mark.parametrize("address", ["", "nonsense", "mysql://a/b", "postgresql+nothing://a/b"])
def test_other_addresses_are_refused(address: str) -> None:
    """What is neither of the two is no store."""
    with pytest.raises(OptionError):
        opened(address)


def test_a_database_that_is_not_there_is_said(tmp_path: Path) -> None:
    """The database's own words stand in the message."""
    nowhere = opened(f"sqlite:///{tmp_path / 'no' / 'folder' / 'a.sqlite3'}")
    with pytest.raises(StoreError, match="unable to open database file"):
        is_there(nowhere)


def test_what_fails_leaves_nothing(store: Store) -> None:
    """A transaction that ends in an error has changed nothing."""

    def fail() -> None:
        with store.writing() as connection:
            connection.execute(text("UPDATE organisation SET name = 'other'"))
            raise KeyError

    with pytest.raises(KeyError):
        fail()
    with store.reading() as connection:
        assert connection.execute(text("SELECT name FROM organisation")).scalar() == "Linden Yard"


def test_many_threads_take_their_turn(store: Store) -> None:
    """8 threads add 1 to a figure 5 times each: 40; no change is lost and nobody is turned away."""

    def add() -> None:
        for _ in range(5):
            with store.writing() as connection:
                lock = "" if store.is_sqlite else " FOR UPDATE"
                before = connection.execute(text(f"SELECT cursor FROM organisation{lock}")).scalar_one()
                connection.execute(text("UPDATE organisation SET cursor = :now"), {"now": before + 1})

    threads = [threading.Thread(target=add) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with store.reading() as connection:
        assert connection.execute(text("SELECT cursor FROM organisation")).scalar() == 40


def test_a_full_disk_is_said_and_nothing_is_half_written(tmp_path: Path, sqlite_template: Path) -> None:
    """SQLite may not grow beyond 10 pages more: the write is refused whole, and works again when there is room."""
    shutil.copy(sqlite_template, tmp_path / "a.sqlite3")
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")

    def rename(pages: int, names: int) -> None:
        with store.writing() as connection:
            now = connection.execute(text("PRAGMA page_count")).scalar_one()
            connection.execute(text(f"PRAGMA max_page_count = {now + pages}"))
            for number in range(names):
                row = {"id": str(number), "name": "x" * 3000}
                connection.execute(text("INSERT INTO organisation VALUES (:id, :name, 0)"), row)

    def count() -> int:
        with store.reading() as connection:
            return int(connection.execute(text("SELECT count(*) FROM organisation")).scalar_one())

    with pytest.raises(StoreError, match="full"):
        rename(10, 100)
    assert count() == 1
    rename(1000, 100)
    assert count() == 101
    store.close()


def test_several_that_open_a_new_file_at_once_all_write(tmp_path: Path) -> None:
    """Six stores on a file that none of them has made yet, thirty times over: nobody is told that it is locked."""
    for number in range(30):
        stores = [opened(f"sqlite:///{tmp_path / f'new-{number}.sqlite3'}") for _ in range(6)]
        with ThreadPoolExecutor(len(stores)) as threads:
            list(threads.map(_one_row, stores))
        with stores[0].reading() as connection:
            assert connection.execute(text("SELECT count(*) FROM seen")).scalar() == len(stores)
        for store in stores:
            store.close()


def _one_row(store: Store) -> None:
    with store.writing() as connection:
        connection.execute(text("CREATE TABLE IF NOT EXISTS seen (at INTEGER)"))
        connection.execute(text("INSERT INTO seen VALUES (1)"))
