"""The sixth migration adds the stage of the next thing to do; jobs stay."""

from __future__ import annotations

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import inspect

from backprobe.store.migrate import MIGRATIONS, migrate
from backprobe.store.migrations.versions import v0006
from backprobe.store.opened import opened


def test_it_follows_the_fifth(tmp_path: Path) -> None:
    """It can go back."""
    assert v0006.down_revision == "0005"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")

    def run(step: str, to: str) -> set[str]:
        with store.writing() as connection:
            config = Config()
            config.set_main_option("script_location", str(MIGRATIONS))
            config.attributes["connection"] = connection
            getattr(command, step)(config, to)
            return {column["name"] for column in inspect(connection).get_columns("job")}

    assert "next_stage" not in run("upgrade", "0005")
    migrate(store)
    assert "next_stage" in run("upgrade", "0006")
    assert "next_stage" not in run("downgrade", "0005")
    store.close()
