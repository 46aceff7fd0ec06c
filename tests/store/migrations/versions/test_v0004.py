"""The fourth migration adds the keys of phones and keeps the phones."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import inspect, text
from tests.samples.migrated import columns_at

from backprobe.store.migrate import migrate
from backprobe.store.migrations.versions import v0004
from backprobe.store.opened import opened

PHONE = "INSERT INTO phone (id, organisation, person, device, label, token_sha256, enrolled_at) VALUES ({})"


def test_it_follows_the_third(tmp_path: Path) -> None:
    """A phone that was enrolled before is still there; the table can go again."""
    assert v0004.down_revision == "0003"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    assert "signing_key" not in columns_at(store, "upgrade", "0003")
    with store.writing() as connection:
        connection.execute(text(PHONE.format("'p', 'a', 'ines', 'phone-a', '', 'x', ''")))
    migrate(store)
    with store.reading() as connection:
        assert "signing_key" in inspect(connection).get_table_names()
        assert connection.execute(text("SELECT device FROM phone")).scalar() == "phone-a"
    assert "signing_key" not in columns_at(store, "downgrade", "0003")
    store.close()
