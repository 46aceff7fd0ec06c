"""The distance between two places on the ground.

The earth is taken as a sphere of its mean radius, 6371.0088 km (IUGG mean radius R1 of the GRS 80 ellipsoid; from
memory, unverified). Against the ellipsoid that is wrong by at most about 0.6 %: half a metre in a yard of 100 m. The
haversine form keeps its accuracy down to centimetres (R. W. Sinnott, Virtues of the Haversine, 1984; from memory).
"""

from __future__ import annotations

import math

EARTH_RADIUS_M = 6_371_008.8


def distance_m(here: tuple[float, float], there: tuple[float, float]) -> float:
    """The great-circle distance [m] between two places, each as degrees (north, east).

    A degree along a meridian is 6371008.8 m × pi / 180:

    >>> round(distance_m((51.0, 7.0), (52.0, 7.0)))
    111195
    """
    north, other_north = math.radians(here[0]), math.radians(there[0])
    half_north = math.sin((other_north - north) / 2)
    half_east = math.sin(math.radians(there[1] - here[1]) / 2)
    haversine = half_north**2 + math.cos(north) * math.cos(other_north) * half_east**2
    return 2 * EARTH_RADIUS_M * math.asin(math.sqrt(min(1.0, haversine)))
