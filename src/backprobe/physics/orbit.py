"""Where a satellite stands, from broadcast ephemerides or an almanac, and in which direction it is seen.

User algorithm for ephemeris determination, IS-GPS-200 table 20-IV (almanac: 20.3.3.5.2.1, the same without the small
corrections), with its constants. The signal was sent some 70 ms before it arrives, and the earth turned meanwhile:
both are taken into account. The satellite's clock (1 ms at most, 4 m of its way) is not, nor is the bending of the
air, which lifts a satellite by about 0.1° at 8° of elevation and 0.02° at 45°: azimuth and elevation are those of the
straight line.
"""

from __future__ import annotations

import math

from backprobe.evidence.orbits import Elements
from backprobe.physics.geodesy import Vector, ecef_m, local_axes
from backprobe.physics.gps_time import WEEK_S

MU_M3_S2 = 3.986005e14
EARTH_RATE_RAD_S = 7.2921151467e-5
LIGHT_M_S = 299_792_458.0
_KEPLER_ROUNDS = 4  # Newton's rule; at e < 0.1 the fourth changes nothing any more
_USUAL_DELAY_S = 0.072


def ecef_of(elements: Elements, gps_s: float) -> Vector:
    """The satellite's place [m] at a moment [GPS seconds], in the frame that turns with the earth at that moment."""
    a_m = elements.sqrt_a**2
    e = elements.e
    t_s = gps_s - elements.toe_s
    motion = math.sqrt(MU_M3_S2 / a_m**3) + elements.delta_n_rad_s
    anomaly = _eccentric(elements.m0_rad + motion * t_s, e)
    cos_e = math.cos(anomaly)
    latitude = math.atan2(math.sqrt(1 - e * e) * math.sin(anomaly), cos_e - e) + elements.omega_rad
    s2, c2 = math.sin(2 * latitude), math.cos(2 * latitude)
    latitude += elements.cus_rad * s2 + elements.cuc_rad * c2
    radius_m = a_m * (1 - e * cos_e) + elements.crs_m * s2 + elements.crc_m * c2
    tilt = elements.i0_rad + elements.i_dot_rad_s * t_s + elements.cis_rad * s2 + elements.cic_rad * c2
    node = (
        elements.omega0_rad
        + (elements.omega_dot_rad_s - EARTH_RATE_RAD_S) * t_s
        - EARTH_RATE_RAD_S * (elements.toe_s % WEEK_S)
    )
    x_m, y_m = radius_m * math.cos(latitude), radius_m * math.sin(latitude)
    cos_node, sin_node = math.cos(node), math.sin(node)
    y_flat_m = y_m * math.cos(tilt)
    return x_m * cos_node - y_flat_m * sin_node, x_m * sin_node + y_flat_m * cos_node, y_m * math.sin(tilt)


def _eccentric(mean: float, e: float) -> float:
    """The eccentric anomaly of a mean anomaly: Kepler's equation by Newton's rule."""
    anomaly = mean + e * math.sin(mean)
    for _ in range(_KEPLER_ROUNDS):
        anomaly -= (anomaly - e * math.sin(anomaly) - mean) / (1 - e * math.cos(anomaly))
    return anomaly


class Observer:
    """A place on the ground from which satellites are looked at; made once, used for every satellite and moment."""

    __slots__ = ("_axes", "_place_m")

    def __init__(self, lat_deg: float, lon_deg: float, *, height_m: float = 0.0) -> None:
        self._place_m = ecef_m(lat_deg, lon_deg, height_m=height_m)
        self._axes = local_axes(lat_deg, lon_deg)

    def direction(self, elements: Elements, gps_s: float) -> Vector:
        """The unit vector east, north, up to where the satellite stood when it sent what arrives at `gps_s`."""
        px, py, pz = self._place_m
        delay_s = _USUAL_DELAY_S  # wrong by 15 ms at most, in which the satellite moves 60 m: 0.0002° at the ground
        x, y, z = ecef_of(elements, gps_s - delay_s)
        turned = EARTH_RATE_RAD_S * delay_s
        dx, dy, dz = x + turned * y - px, y - turned * x - py, z - pz
        range_m = math.sqrt(dx * dx + dy * dy + dz * dz)
        (ex, ey, _), (nx, ny, nz), (ux, uy, uz) = self._axes
        return (
            (ex * dx + ey * dy) / range_m,
            (nx * dx + ny * dy + nz * dz) / range_m,
            (ux * dx + uy * dy + uz * dz) / range_m,
        )


def nearest_set(sets: tuple[Elements, ...], gps_s: float) -> Elements:
    """Of several sets of one satellite the one whose own moment is nearest to `gps_s`; of two alike the later one."""
    return min(sets, key=lambda each: (abs(each.toe_s - gps_s), -each.toe_s))
