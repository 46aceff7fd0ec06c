"""The first migration makes every table and can be taken back."""

from __future__ import annotations

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import inspect

from backprobe.store.migrate import MIGRATIONS, migrate
from backprobe.store.migrations.versions import v0001
from backprobe.store.opened import opened


def test_it_is_the_first() -> None:
    """There is nothing before it."""
    assert (v0001.revision, v0001.down_revision) == ("0001", None)


def test_it_can_be_taken_back(tmp_path: Path) -> None:
    """Taken back, only alembic's own note is left."""
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    migrate(store)
    with store.writing() as connection:
        config = Config()
        config.set_main_option("script_location", str(MIGRATIONS))
        config.attributes["connection"] = connection
        command.downgrade(config, "base")
    with store.reading() as connection:
        assert inspect(connection).get_table_names() == ["alembic_version"]
    store.close()
