"""A database is brought to the tables that the code expects, on both databases."""

from __future__ import annotations

import threading

from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import inspect

from backprobe.store.migrate import migrate
from backprobe.store.opened import opened
from backprobe.store.tables import metadata


def test_the_migrations_make_the_tables_of_the_code(fresh_address: str) -> None:
    """After all migrations alembic finds no difference to the tables in store/tables.py."""
    store = opened(fresh_address)
    migrate(store)
    with store.reading() as connection:
        differences = compare_metadata(MigrationContext.configure(connection, opts={"compare_type": True}), metadata)
    assert differences == []
    store.close()


def test_migrating_again_changes_nothing(fresh_address: str) -> None:
    """A second time is no fault, and rows stay."""
    store = opened(fresh_address)
    migrate(store)
    with store.writing() as connection:
        connection.execute(metadata.tables["organisation"].insert().values(id="a", name="A", cursor=7))
    migrate(store)
    with store.reading() as connection:
        assert connection.execute(metadata.tables["organisation"].select()).all() == [("a", "A", 7)]
    store.close()


def test_two_that_migrate_at_once_do_it_once(fresh_address: str) -> None:
    """Four servers that are started together on a new database all find its tables."""
    stores = [opened(fresh_address) for _ in range(4)]
    faults: list[BaseException] = []

    def run(number: int) -> None:
        try:
            migrate(stores[number])
        except BaseException as fault:  # noqa: BLE001 - whatever it is, the test is to show it
            faults.append(fault)

    threads = [threading.Thread(target=run, args=(number,)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []
    with stores[0].reading() as connection:
        assert set(inspect(connection).get_table_names()) >= set(metadata.tables)
    for store in stores:
        store.close()
