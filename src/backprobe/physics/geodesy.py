"""Places on the earth's ellipsoid (WGS 84) and directions as seen from there."""

from __future__ import annotations

import math

Vector = tuple[float, float, float]

A_M = 6_378_137.0  # WGS 84
FLATTENING = 1 / 298.257223563


def ecef_m(lat_deg: float, lon_deg: float, *, height_m: float = 0.0) -> Vector:
    """The place [m] in the frame that turns with the earth: x to 0° N 0° E, z to the north pole.

    >>> [round(each) for each in ecef_m(0.0, 90.0, height_m=100.0)]
    [0, 6378237, 0]
    """
    lat, lon = math.radians(lat_deg), math.radians(lon_deg)
    squared = FLATTENING * (2 - FLATTENING)
    across_m = A_M / math.sqrt(1 - squared * math.sin(lat) ** 2)
    out_m = (across_m + height_m) * math.cos(lat)
    return out_m * math.cos(lon), out_m * math.sin(lon), (across_m * (1 - squared) + height_m) * math.sin(lat)


def local_axes(lat_deg: float, lon_deg: float) -> tuple[Vector, Vector, Vector]:
    """Unit vectors to the east, to the north and straight up at a place, in the frame that turns with the earth."""
    lat, lon = math.radians(lat_deg), math.radians(lon_deg)
    s, c, sl, cl = math.sin(lat), math.cos(lat), math.sin(lon), math.cos(lon)
    return (-sl, cl, 0.0), (-s * cl, -s * sl, c), (c * cl, c * sl, s)


def az_el_deg(direction: Vector) -> tuple[float, float]:
    """Azimuth (from north over east, 0 to 360) and elevation [degrees] of a direction given as east, north, up.

    >>> az_el_deg((0.0, -1.0, 1.0))
    (180.0, 45.0)
    """
    east, north, up = direction
    return math.degrees(math.atan2(east, north)) % 360.0, math.degrees(math.atan2(up, math.hypot(east, north)))


def east_north_up(az_deg: float, el_deg: float) -> Vector:
    """The unit vector east, north, up of an azimuth and an elevation [degrees]."""
    az, el = math.radians(az_deg), math.radians(el_deg)
    return math.sin(az) * math.cos(el), math.cos(az) * math.cos(el), math.sin(el)
