"""The fifth migration adds when reports reached a job, and counts of pushes; feeds stay."""

from __future__ import annotations

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import inspect, text

from backprobe.store.migrate import MIGRATIONS, migrate
from backprobe.store.migrations.versions import v0005
from backprobe.store.opened import opened

FEED = (
    "INSERT INTO feed (id, organisation, label, token_sha256, columns, made_at) VALUES ('f', 'a', 'l', 't', '{}', '')"
)


def test_it_follows_the_fourth(tmp_path: Path) -> None:
    """A feed made before goes on; it can go back."""
    assert v0005.down_revision == "0004"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")

    def run(step: str, to: str) -> set[str]:
        with store.writing() as connection:
            config = Config()
            config.set_main_option("script_location", str(MIGRATIONS))
            config.attributes["connection"] = connection
            getattr(command, step)(config, to)
            found = inspect(connection)
            return {column["name"] for table in ("job", "feed") for column in found.get_columns(table)}

    added = {"said_at", "reported_at", "day", "requests", "bytes"}
    assert not added & run("upgrade", "0004")
    with store.writing() as connection:
        connection.execute(text(FEED))
    migrate(store)
    with store.reading() as connection:
        assert connection.execute(text("SELECT label, requests FROM feed")).all() == [("l", None)]
    assert not added & run("downgrade", "0004")
    store.close()
