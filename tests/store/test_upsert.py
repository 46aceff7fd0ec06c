"""A row is written unless its key is there."""

from __future__ import annotations

from sqlalchemy import select

from backprobe.store.opened import Store
from backprobe.store.tables import organisation
from backprobe.store.upsert import insert_if_new, insert_new


def test_the_first_row_stays(store: Store) -> None:
    """Of two rows with one key the first is kept, and whoever wrote it is told so."""
    row = {"id": "a", "name": "first", "cursor": 0}
    with store.writing() as connection:
        assert insert_if_new(connection, organisation, row=row)
        assert not insert_if_new(connection, organisation, row={**row, "name": "second"})
        insert_new(connection, organisation, rows=[{**row, "name": "third"}, {**row, "id": "b"}])
        insert_new(connection, organisation, rows=[])
        rows = connection.execute(select(organisation.c.id, organisation.c.name).order_by(organisation.c.id)).all()
    assert rows == [("a", "first"), ("b", "first"), ("linden", "Linden Yard")]
