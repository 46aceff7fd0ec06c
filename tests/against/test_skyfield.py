"""Orbits, directions and leap seconds against skyfield 1.55.

An orbit without small corrections is a plain ellipse in space: skyfield carries position and speed along it by
universal variables, and gives the place on the ground from its own ellipsoid. Its leap seconds are those of the IERS.
"""

from __future__ import annotations

import math
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from skyfield.api import load, wgs84
from skyfield.keplerlib import propagate
from tests.samples.navigation import TOE_S, WEEK_S, constellation

from backprobe.evidence.orbits import Elements
from backprobe.physics.geodesy import az_el_deg
from backprobe.physics.gps_time import leap_s
from backprobe.physics.orbit import EARTH_RATE_RAD_S, MU_M3_S2, Observer

WITHIN_DEG = 0.001  # the fixed 72 ms stand for 67 to 86 ms on the way: 60 m of 20 200 km, 0.0002°
LIGHT_M_S = 299_792_458.0


def turn(axis: int, angle: float) -> np.ndarray:
    """The matrix that turns by `angle` about an axis."""
    c, s = math.cos(angle), math.sin(angle)
    i, j = [(1, 2), (2, 0), (0, 1)][axis]
    found = np.eye(3)
    found[i, i] = found[j, j] = c
    found[i, j], found[j, i] = -s, s
    return found


def in_space(each: Elements) -> tuple[np.ndarray, np.ndarray]:
    """Position [m] and speed [m/s] at toe, in axes that do not turn: those of the earth at the week's beginning."""
    a_m, e = each.sqrt_a**2, each.e
    anomaly = each.m0_rad
    for _ in range(50):
        anomaly = each.m0_rad + e * math.sin(anomaly)
    rate = math.sqrt(MU_M3_S2 / a_m**3) / (1 - e * math.cos(anomaly))
    flat = a_m * np.array([math.cos(anomaly) - e, math.sqrt(1 - e * e) * math.sin(anomaly), 0.0])
    speed = a_m * rate * np.array([-math.sin(anomaly), math.sqrt(1 - e * e) * math.cos(anomaly), 0.0])
    matrix = turn(2, each.omega0_rad) @ turn(0, each.i0_rad) @ turn(2, each.omega_rad)
    return matrix @ flat, matrix @ speed


def by_skyfield(each: Elements, gps_s: float, place: tuple[float, float]) -> tuple[float, float]:
    """Azimuth and elevation [degrees] with skyfield's propagation and ellipsoid, the way of the light worked out."""
    here = wgs84.latlon(*place).itrs_xyz.m
    position, speed = in_space(each)
    delay_s = 0.0
    for _ in range(4):
        flown_s = np.array([gps_s - delay_s - each.toe_s])
        there = propagate(position, speed, 0.0, flown_s, MU_M3_S2)[0][:, 0]
        turned = EARTH_RATE_RAD_S * (gps_s - (each.toe_s - each.toe_s % WEEK_S))
        there = turn(2, -turned) @ there  # to the earth's axes when the signal arrives
        delay_s = float(np.linalg.norm(there - here)) / LIGHT_M_S
    lat, lon = np.radians(place)
    up, east, north = turn(1, lat) @ turn(2, -lon) @ (there - here)
    return math.degrees(math.atan2(east, north)) % 360, math.degrees(math.asin(up / np.linalg.norm(there - here)))


@pytest.mark.parametrize("place", [(60.2, 24.9), (-33.1, 151.2), (0.0, 10.0)])
def test_directions(place: tuple[float, float]) -> None:
    """Eight satellites at five moments within four hours: azimuth (shortened by cos el) and elevation agree."""
    observer = Observer(*place)
    for each in constellation(31, plain=True)[::4]:
        plain = Elements(
            **{name: getattr(each, name) for name in ("id", "toe_s", "sqrt_a", "e", "i0_rad", "omega0_rad")},
            omega_rad=each.omega_rad,
            m0_rad=each.m0_rad,
        )
        for after_s in (-7200.0, -3000.0, 0.0, 1234.5, 7200.0):
            az, el = az_el_deg(observer.direction(plain, TOE_S + after_s))
            other_az, other_el = by_skyfield(plain, TOE_S + after_s, place)
            across = ((az - other_az + 180) % 360 - 180) * math.cos(math.radians(el))
            assert abs(across) < WITHIN_DEG
            assert abs(el - other_el) < WITHIN_DEG


def test_leap_seconds() -> None:
    """Every leap second since 1980 in skyfield's table is ours: GPS time was set to TAI - 19 s."""
    scale = load.timescale(builtin=True)
    julian_of_1970 = 2_440_587.5
    checked = {
        datetime(1970, 1, 1, tzinfo=UTC) + timedelta(days=float(day) - julian_of_1970): int(offset) - 19
        for day, offset in zip(scale.leap_dates, scale.leap_offsets, strict=True)
    }
    checked = {day: seconds for day, seconds in checked.items() if day.year > 1980}
    assert len(checked) == 18
    assert {day: leap_s(day.timestamp()) for day in checked} == checked
