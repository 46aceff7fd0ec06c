"""Alembic's entry runs our migrations and nothing else."""

from __future__ import annotations

from pathlib import Path

from backprobe.store.migrate import MIGRATIONS


def test_the_entry_hands_over_at_once() -> None:
    """env.py holds one call, so that all there is to know stands in store/migrate.py."""
    text = Path(MIGRATIONS / "env.py").read_text(encoding="utf-8")
    assert text.splitlines()[-1] == "run_migrations()"
    assert len(text.splitlines()) < 10
