"""Brings a database to the tables of this version, from nothing or from an earlier one."""

from __future__ import annotations

from pathlib import Path

from alembic import command, context
from alembic.config import Config
from sqlalchemy import Connection, text

from backprobe.store.opened import Store
from backprobe.store.tables import metadata

MIGRATIONS = Path(__file__).parent / "migrations"
LOCK = 6_201_417  # any number, the same for all that migrate


def migrate(store: Store) -> None:
    """Bring the store to the newest tables; nothing is done where it has them. All or nothing."""
    with store.writing() as connection:
        if not store.is_sqlite:
            connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": LOCK})
        command.upgrade(_config(connection), "head")


def run_migrations() -> None:
    """What alembic asks for (migrations/env.py): run over the connection that `migrate` holds."""
    connection = context.config.attributes["connection"]
    context.configure(connection=connection, target_metadata=metadata)
    context.run_migrations()


def _config(connection: Connection) -> Config:
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    config.attributes["connection"] = connection
    return config
