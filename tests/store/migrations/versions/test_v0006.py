"""The sixth migration adds the stage of the next thing to do; jobs stay."""

from __future__ import annotations

from pathlib import Path

from tests.samples.migrated import columns_at

from backprobe.store.migrate import migrate
from backprobe.store.migrations.versions import v0006
from backprobe.store.opened import opened


def test_it_follows_the_fifth(tmp_path: Path) -> None:
    """It can go back."""
    assert v0006.down_revision == "0005"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    assert "next_stage" not in columns_at(store, "upgrade", "0005")["job"]
    migrate(store)
    assert "next_stage" in columns_at(store, "upgrade", "0006")["job"]
    assert "next_stage" not in columns_at(store, "downgrade", "0005")["job"]
    store.close()
