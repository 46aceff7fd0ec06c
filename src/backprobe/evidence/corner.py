"""Places where streets meet, by which people say where something stands."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class CornerKind(StrEnum):
    """How the streets meet: they cross or branch, a ring joins them, or one goes on under another name."""

    CORNER = "corner"
    ROUNDABOUT = "roundabout"
    NAME_CHANGE = "name_change"


@dataclass(frozen=True, slots=True)
class Corner:
    """One meeting of at least two named streets: degrees north and east, the more important street first."""

    lat_deg: float
    lon_deg: float
    streets: tuple[str, ...]
    kind: CornerKind = CornerKind.CORNER


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerIndex:
    """The corners of an area from south to north, and what must be said wherever their names are shown.

    `attribution` is owed to whoever drew the map, `source` names the file the corners were taken from, `as_of` the
    moment of that map and `language` the one asked for; both None where it is not known.
    """

    corners: tuple[Corner, ...]
    attribution: str
    source: str
    as_of: str | None = None
    language: str | None = None

    @property
    def streets(self) -> tuple[str, ...]:
        """Every street by name, each once, in the order of the alphabet."""
        return tuple(sorted({street for corner in self.corners for street in corner.streets}))


def sorted_corners(corners: list[Corner]) -> tuple[Corner, ...]:
    """The corners from south to north, as an index holds them.

    >>> [c.lat_deg for c in sorted_corners([Corner(2.0, 1.0, ("A", "B")), Corner(1.0, 1.0, ("A", "C"))])]
    [1.0, 2.0]
    """
    return tuple(sorted(corners, key=lambda corner: (corner.lat_deg, corner.lon_deg, corner.streets)))
