"""Rows written unless they are there: said the same way to both databases."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeAlias

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite

Row: TypeAlias = Mapping[str, object]


def insert_new(connection: Connection, table: Table, *, rows: Sequence[Row]) -> None:
    """Write those rows whose key is not there yet; the others are left as they stand."""
    if rows:
        connection.execute(_insert(connection, table).on_conflict_do_nothing(), list(rows))


def insert_if_new(connection: Connection, table: Table, *, row: Row) -> bool:
    """Write a row unless its key is there already, and say whether it was written; the index decides."""
    key = next(iter(table.primary_key.columns))
    written = _insert(connection, table).values(**row).on_conflict_do_nothing().returning(key)
    return connection.execute(written).first() is not None


def _insert(connection: Connection, table: Table) -> sqlite.Insert | postgresql.Insert:
    return sqlite.insert(table) if connection.dialect.name == "sqlite" else postgresql.insert(table)
