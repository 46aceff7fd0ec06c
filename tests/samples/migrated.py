"""A store that is taken to one version of its tables and back."""

from __future__ import annotations

from typing import Literal

from alembic import command
from alembic.config import Config
from sqlalchemy import inspect

from backprobe.store.migrate import MIGRATIONS
from backprobe.store.opened import Store


def columns_at(store: Store, step: Literal["upgrade", "downgrade"], to: str) -> dict[str, set[str]]:
    """The columns of each table once the store was taken to a version, seen in the transaction that took it there."""
    with store.writing() as connection:
        config = Config()
        config.set_main_option("script_location", str(MIGRATIONS))
        config.attributes["connection"] = connection
        getattr(command, step)(config, to)
        found = inspect(connection)
        return {table: {column["name"] for column in found.get_columns(table)} for table in found.get_table_names()}
