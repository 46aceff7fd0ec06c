"""How a job ends, as the people on site state it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class End(StrEnum):
    """The three ends of a job."""

    PROVEN = "proven"
    PROVISIONAL = "provisional"
    ABANDONED = "abandoned"


class Lack(StrEnum):
    """What keeps a job from being proven on the day, by the names that a sheet may give it."""

    NO_COVERAGE = "no coverage"
    INDOOR_YARD = "indoor yard"
    PARKED_NIGHT = "parked night"


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """What a provisional job still lacks, who owes it, and until when (YYYY-MM-DD, or as written)."""

    what: str
    owed_by: str | None = None
    until: str | None = None

    @property
    def lack(self) -> Lack | None:
        """Which of the named lacks this is, capitals and spaces aside; None for anything else.

        >>> Missing(what="Parked  night").lack, Missing(what="a new fuse").lack
        (<Lack.PARKED_NIGHT: 'parked night'>, None)
        """
        plain = " ".join(self.what.split()).casefold()
        return next((lack for lack in Lack if lack == plain), None)


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
