"""Where a unit could sit, and what stands between it and the sky, as measured with a tape."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Side(StrEnum):
    """On which side of the unit a part of the vehicle is, the vehicle's front being ahead."""

    ABOVE = "above"
    AHEAD = "ahead"
    BEHIND = "behind"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A flat part of the vehicle near the unit: a pane, a roof, a wall, a seat's back.

    `away_mm` is how far it is from the unit: straight up for a part above, else level with the unit. `rake_deg` is its
    slope against the floor, 90 upright, less where its top leans over the unit. How far it reaches is counted from the
    unit, None for as far as matters: to the front, rear, left, right (`ahead_mm` …), and from a height to a height
    above the unit (`from_mm`, `to_mm`). A negative reach ends before it gets to the unit.
    """

    material: str
    side: Side
    away_mm: float
    rake_deg: float = 90.0
    ahead_mm: float | None = None
    behind_mm: float | None = None
    left_mm: float | None = None
    right_mm: float | None = None
    from_mm: float | None = None
    to_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Supposed:
    """Of a place that was described and not measured: its parts as they would be at the worst and at the best for it.

    `figures` says in words what its parts were taken to be, and `basis` what that rests on.
    """

    worst: tuple[Part, ...]
    best: tuple[Part, ...]
    figures: tuple[str, ...]
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MountPlace:
    """A place for the unit: the parts around it, its own cover, and what everything is made of that no part names.

    `supposed` is None where the parts were measured.
    """

    name: str
    parts: tuple[Part, ...] = ()
    cover: tuple[str, ...] = ()
    elsewhere: str = "metal"
    supposed: Supposed | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MountSheet:
    """The places that were thought of.

    `heading_deg` is where the vehicle's front will point, None for anywhere. `chosen` names the place that was taken.
    `share_percent`, `pdop_most` and `hdop_most` are what is wanted of a place, None where the usual figures will do.
    """

    file: str
    places: tuple[MountPlace, ...]
    heading_deg: float | None = None
    chosen: str | None = None
    share_percent: float | None = None
    pdop_most: float | None = None
    hdop_most: float | None = None
