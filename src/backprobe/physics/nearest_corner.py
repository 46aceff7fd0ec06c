"""The nearest corner to a place, out of an index that is sorted from south to north.

Only the band of latitudes that the reach covers is looked at, and of it only what lies within the reach by longitude;
both hold across the antimeridian and near the poles, where the reach may span every longitude.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.physics.bearing import bearing_deg
from backprobe.physics.great_circle import EARTH_RADIUS_M, distance_m

DIGITS = 1
SLACK = 1.0 + 1e-9  # what lies just on the edge is not lost to rounding


@dataclass(frozen=True, slots=True)
class Near:
    """A corner, how far the place is from it [m], and in which direction from it [degrees from north]."""

    corner: Corner
    distance_m: float
    bearing_deg: float


def nearest_corner(index: CornerIndex, place: tuple[float, float], *, within_m: float) -> Near | None:
    """The corner nearest to a place (degrees north, east), at most `within_m` away; None where there is none.

    Of corners at the same tenth of a metre the one first by name.
    """
    near = [
        (away, corner.streets, corner)
        for corner in _around(index.corners, place, reach_m=within_m)
        if (away := round(distance_m((corner.lat_deg, corner.lon_deg), place), DIGITS)) <= within_m
    ]
    if not near:
        return None
    away, _, corner = min(near, key=lambda each: each[:2])
    return Near(corner, away, bearing_deg((corner.lat_deg, corner.lon_deg), place))


def corners_near(index: CornerIndex, places: Iterable[tuple[float, float]], *, within_m: float) -> tuple[Corner, ...]:
    """The corners that lie within a distance of any of the places (degrees north, east), each once, in their order."""
    near = {
        corner
        for place in places
        for corner in _around(index.corners, place, reach_m=within_m)
        if distance_m((corner.lat_deg, corner.lon_deg), place) <= within_m
    }
    return tuple(corner for corner in index.corners if corner in near)


def _around(corners: tuple[Corner, ...], place: tuple[float, float], *, reach_m: float) -> Iterator[Corner]:
    """Every corner that may lie within the reach; some that lie beyond it as well."""
    north, east = place
    angle = reach_m / EARTH_RADIUS_M * SLACK
    low = bisect_left(corners, north - math.degrees(angle), key=_north)
    high = bisect_right(corners, north + math.degrees(angle), key=_north)
    half_deg = reach_of_longitudes_deg(north, angle)
    for corner in corners[low:high]:
        apart = abs(corner.lon_deg - east)
        if min(apart, 360.0 - apart) <= half_deg:
            yield corner


def _north(corner: Corner) -> float:
    return corner.lat_deg


def reach_of_longitudes_deg(north_deg: float, angle: float) -> float:
    """How many degrees of longitude to either side a circle of `angle` [radians] around a place touches.

    The circle's tangent meridians lie at asin(sin angle / cos north); where it holds a pole, it touches all of them.

    >>> round(reach_of_longitudes_deg(60.0, math.radians(0.001)), 9), reach_of_longitudes_deg(89.9999, 0.01)
    (0.002, 180.0)
    """
    width = math.cos(math.radians(north_deg))
    reach = math.sin(min(angle, math.pi / 2))
    return math.degrees(math.asin(reach / width)) * SLACK if reach < width else 180.0
