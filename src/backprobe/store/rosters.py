"""Rosters as they were taken in: vehicles and units, each row once, with a mark that changes when any of it does."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence

from sqlalchemy import Connection, insert, select, update

from backprobe.store.entries import Held
from backprobe.store.tables import roster_row

Values = Mapping[str, "str | float"]


def rows(connection: Connection, organisation_id: str, *, kind: str) -> tuple[tuple[int, dict[str, str | float]], ...]:
    """Every row with its number, in the order in which they came."""
    found = (
        select(roster_row.c.number, roster_row.c.content)
        .where(roster_row.c.organisation == organisation_id, roster_row.c.kind == kind)
        .order_by(roster_row.c.number)
    )
    return tuple((row.number, json.loads(row.content)) for row in connection.execute(found))


def mark_of(kept: Sequence[tuple[int, Values]]) -> str:
    """A text that is another one as soon as anything of the rows has changed."""
    said = json.dumps([[number, dict(values)] for number, values in kept], sort_keys=True)
    return hashlib.sha256(said.encode()).hexdigest()


def write(held: Held, changes: Sequence[tuple[int | None, Values]], *, kind: str, mark: str) -> bool:
    """Write rows (number of the one to change, None for a new one), all or none; False where `mark` is no longer so."""
    kept = rows(held.connection, held.organisation, kind=kind)
    if mark_of(kept) != mark:
        return False
    here = {"organisation": held.organisation, "kind": kind}
    next_number = max((number for number, _ in kept), default=0) + 1
    fresh = [values for number, values in changes if number is None]
    new = [{**here, "number": next_number + place, "content": _written(values)} for place, values in enumerate(fresh)]
    if new:
        held.connection.execute(insert(roster_row), new)
    for number, values in changes:
        if number is not None:
            one = (roster_row.c.organisation == held.organisation, roster_row.c.kind == kind)
            held.connection.execute(
                update(roster_row).where(*one, roster_row.c.number == number).values(content=_written(values))
            )
    return True


def _written(values: Values) -> str:
    return json.dumps(dict(values), sort_keys=True)  # ASCII: no letter that a database does not take
