"""The second migration adds rosters and keeps all that was there."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import inspect, text
from tests.samples.migrated import columns_at

from backprobe.store.migrate import migrate
from backprobe.store.migrations.versions import v0002
from backprobe.store.opened import opened


def test_it_follows_the_first(tmp_path: Path) -> None:
    """A store of the first version is brought up with what is in it, and can go back."""
    assert v0002.down_revision == "0001"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    assert "roster_row" not in columns_at(store, "upgrade", "0001")
    with store.writing() as connection:
        connection.execute(text("INSERT INTO organisation (id, name, cursor) VALUES ('a', 'A', 7)"))
    migrate(store)
    with store.reading() as connection:
        assert "roster_row" in inspect(connection).get_table_names()
        assert connection.execute(text("SELECT cursor FROM organisation")).scalar() == 7
    assert "roster_row" not in columns_at(store, "downgrade", "0001")
    store.close()
