"""The direction from one place on the ground to another, in degrees and as people say it."""

from __future__ import annotations

import math

POINTS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")
DIGITS = 1


def bearing_deg(here: tuple[float, float], there: tuple[float, float]) -> float:
    """The direction [degrees from north, clockwise, 0 up to 360] in which one sets out for `there`.

    Both places as degrees (north, east). It is the initial course of the great circle (Ed Williams, Aviation
    Formulary, 'Course between points'); rounded to a tenth, so that every machine names the same direction.

    >>> bearing_deg((0.0, 0.0), (0.0, 1.0)), bearing_deg((10.0, 20.0), (9.0, 20.0))
    (90.0, 180.0)
    """
    north, other_north = math.radians(here[0]), math.radians(there[0])
    east = math.radians(there[1] - here[1])
    across = math.sin(east) * math.cos(other_north)
    along = math.cos(north) * math.sin(other_north) - math.sin(north) * math.cos(other_north) * math.cos(east)
    return round(math.degrees(math.atan2(across, along)), DIGITS) % 360.0 + 0.0


def compass_point(bearing: float) -> str:
    """The nearest of the eight points of the compass.

    >>> compass_point(22.4), compass_point(22.5), compass_point(359.0)
    ('north', 'north-east', 'north')
    """
    return POINTS[math.floor(bearing / 45.0 + 0.5) % 8]
