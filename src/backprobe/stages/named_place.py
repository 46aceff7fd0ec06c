"""A position in the words that people use for it: which corner, how far from it, on which side."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.corner import Corner, CornerIndex, CornerKind
from backprobe.physics.bearing import compass_point
from backprobe.physics.nearest_corner import Near, nearest_corner

WITHIN_M = 300.0
AT_M = 10.0  # nearer than this the side is not worth saying: neither map nor receiver is that good
STEP_M = 10
MOST_STREETS = 4


@dataclass(frozen=True, slots=True)
class NamedPlace:
    """A position with the nearest corner, None where there is none within reach, and what is owed to the map."""

    near: Near | None
    within_m: float
    attribution: str

    @property
    def text(self) -> str:
        """The place in words: 'corner of A and B, 40 m north-east'."""
        return in_words(self.near, within_m=self.within_m)

    def as_json(self) -> dict[str, object]:
        """The place as plain JSON values; metres whole, degrees as the index keeps them."""
        return {"text": self.text, "corner": _corner_json(self.near), "attribution": self.attribution}


def named_place(index: CornerIndex, place: tuple[float, float], *, within_m: float = WITHIN_M) -> NamedPlace:
    """A position (degrees north, east) by the nearest corner of an index, at most `within_m` away."""
    return NamedPlace(nearest_corner(index, place, within_m=within_m), within_m, index.attribution)


def in_words(near: Near | None, *, within_m: float = WITHIN_M) -> str:
    """The words for a place near a corner; metres to the nearest ten.

    >>> in_words(Near(Corner(60.0, 25.0, ("Main Street", "Mill Lane")), 42.0, 50.0))
    'corner of Main Street and Mill Lane, 40 m north-east'
    >>> in_words(None)
    'no named corner within 300 m'
    """
    if near is None:
        return f"no named corner within {within_m:.0f} m"
    if near.distance_m < AT_M:
        return corner_in_words(near.corner)
    metres = STEP_M * int(near.distance_m / STEP_M + 0.5)
    return f"{corner_in_words(near.corner)}, {metres} m {compass_point(near.bearing_deg)}"


def corner_in_words(corner: Corner) -> str:
    """A corner by its streets.

    >>> corner_in_words(Corner(60.0, 25.0, ("Main Street", "Mill Lane"), CornerKind.NAME_CHANGE))
    'where Main Street becomes Mill Lane'
    """
    if corner.kind is CornerKind.NAME_CHANGE:
        return f"where {' becomes '.join(corner.streets)}"
    streets = list(corner.streets[:MOST_STREETS])
    if len(corner.streets) > MOST_STREETS:
        streets[-1] = f"{len(corner.streets) - MOST_STREETS + 1} more"
    return f"{corner.kind} of {', '.join(streets[:-1])} and {streets[-1]}"


def _corner_json(near: Near | None) -> dict[str, object] | None:
    if near is None:
        return None
    corner = near.corner
    return {
        "streets": list(corner.streets),
        "kind": str(corner.kind),
        "lat": corner.lat_deg,
        "lon": corner.lon_deg,
        "distance_m": round(near.distance_m),
        "direction": compass_point(near.bearing_deg),
    }
