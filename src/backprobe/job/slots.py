"""The places in a job that hold one value: the vehicle's VIN, the unit's serial number, each tapped wire.

Two people may fill such a place with two values. Then it is open, both values stand beside it, and it stays so until
somebody replaces both.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from backprobe.job.kinds import text
from backprobe.job.lineage import Statement

# one sheet of each kind, known by its digest
SHEET_SLOTS = {
    "job": "job_sheet",
    "unit_sheet": "unit_sheet",
    "walkround": "walkround",
    "mount": "mount",
    "policy": "policy",
}


@dataclass(frozen=True, slots=True)
class Slot:
    """A place for one value: `values` claimed for it, sorted; `disputed` where a correction of one is contested."""

    name: str
    values: tuple[str, ...]
    disputed: bool = False

    @property
    def value(self) -> str | None:
        """The one value, None while the slot is open."""
        return None if self.is_open else self.values[0]

    @property
    def is_open(self) -> bool:
        """Whether somebody has still to decide."""
        return self.disputed or len(self.values) != 1


def slots_of(statements: Iterable[Statement]) -> dict[str, Slot]:
    """Every slot that `statements` claim something for, by name in alphabetical order."""
    values: dict[str, set[str]] = defaultdict(set)
    contested: set[str] = set()
    for one in statements:
        for name, value in _claims(one):
            values[name].add(value)
            contested |= {name} if one.disputed else set()
    return {name: Slot(name, tuple(sorted(values[name])), name in contested) for name in sorted(values)}


def _claims(one: Statement) -> Iterator[tuple[str, str]]:
    if one.kind == "claim":
        yield text(one.body, "slot") or "", text(one.body, "value") or ""
    elif one.kind in SHEET_SLOTS:
        yield SHEET_SLOTS[one.kind], text(one.body, "sha256") or ""
        for name in ("vin", "serial"):
            value = text(one.body, name)
            if value:
                yield name, value
