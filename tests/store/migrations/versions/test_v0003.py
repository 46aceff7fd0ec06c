"""The third migration adds which jobs others may follow, and has finished ones judged once more."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import text
from tests.samples.migrated import columns_at

from backprobe.store.migrate import migrate
from backprobe.store.migrations.versions import v0003
from backprobe.store.opened import opened

JOB = (
    "INSERT INTO job (organisation, id, name, state, verdict, urgency, fails, thin, open, entries, cursor,"
    " judged_cursor, search, made_at, updated_at)"
    " VALUES ('a', '{0}', 'n', '{0}', 'open', 2, 0, 0, 0, 1, 9, 9, '', '', '')"
)


def test_it_follows_the_second(tmp_path: Path) -> None:
    """Finished jobs wait to be judged, the others do not; it can go back."""
    assert v0003.down_revision == "0002"
    store = opened(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    assert "usual" not in columns_at(store, "upgrade", "0002")["job"]
    with store.writing() as connection:
        for state in ("proven", "provisional", "in_work", "abandoned"):
            connection.execute(text(JOB.format(state)))
    migrate(store)
    with store.reading() as connection:
        waiting = connection.execute(text("SELECT id FROM job WHERE judged_cursor < cursor ORDER BY id"))
        assert list(waiting.scalars()) == ["proven", "provisional"]
        assert connection.execute(text("SELECT count(*) FROM job WHERE usual IS NULL")).scalar() == 4
    assert "usual" not in columns_at(store, "downgrade", "0002")["job"]
    store.close()
