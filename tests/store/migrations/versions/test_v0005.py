"""The fifth migration adds when reports reached a job, and counts of pushes; feeds stay."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import text
from tests.samples.migrated import columns_at

from backprobe.store.migrate import migrate
from backprobe.store.migrations.versions import v0005
from backprobe.store.opened import opened

FEED = (
    "INSERT INTO feed (id, organisation, label, token_sha256, columns, made_at) VALUES ('f', 'a', 'l', 't', '{}', '')"
)


def test_it_follows_the_fourth(tmp_path: Path) -> None:
    """A feed made before goes on; it can go back."""
    assert v0005.down_revision == "0004"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    added = {"said_at", "reported_at", "day", "requests", "bytes"}
    at = columns_at(store, "upgrade", "0004")
    assert not added & (at["job"] | at["feed"])
    with store.writing() as connection:
        connection.execute(text(FEED))
    migrate(store)
    with store.reading() as connection:
        assert connection.execute(text("SELECT label, requests FROM feed")).all() == [("l", None)]
    at = columns_at(store, "downgrade", "0004")
    assert not added & (at["job"] | at["feed"])
    store.close()
