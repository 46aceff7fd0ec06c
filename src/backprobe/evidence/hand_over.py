"""How a job ends, as the people on site state it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class End(StrEnum):
    """The three ends of a job."""

    PROVEN = "proven"
    PROVISIONAL = "provisional"
    ABANDONED = "abandoned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """What a provisional job still lacks, who owes it, and until when (YYYY-MM-DD, or as written)."""

    what: str
    owed_by: str | None = None
    until: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """How the job ends.

    `missing` belongs to a provisional end; `undone` (what was taken out again), `restored` (fuses put back, functions
    tested again) and `why` to an abandoned one. `told_driver` is what the driver was told, whatever the end.
    """

    end: End
    missing: tuple[Missing, ...] = ()
    undone: tuple[str, ...] = ()
    restored: tuple[str, ...] = ()
    why: str | None = None
    told_driver: tuple[str, ...] = ()
