"""Satellites in their orbits and as seen from the ground."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.navigation import TOE_S, elements

from backprobe.evidence.orbits import Elements
from backprobe.physics.geodesy import az_el_deg
from backprobe.physics.orbit import EARTH_RATE_RAD_S, MU_M3_S2, Observer, ecef_of, nearest_set

# a circular orbit over the equator of radius (5153.7)² m, that crosses 0° of longitude at toe, the beginning of a week
ROUND = Elements(id="G01", toe_s=0.0, sqrt_a=5153.7, e=0.0, i0_rad=0.0, omega0_rad=0.0, omega_rad=0.0, m0_rad=0.0)


def test_a_round_orbit_over_the_equator() -> None:
    """After a quarter of its period it stands 90° on, less what the earth has turned meanwhile."""
    radius_m = 5153.7**2
    quarter_s = math.pi / 2 * math.sqrt(radius_m**3 / MU_M3_S2)
    east_rad = math.pi / 2 - EARTH_RATE_RAD_S * quarter_s
    x, y, z = ecef_of(ROUND, quarter_s)
    assert (x, y) == pytest.approx((radius_m * math.cos(east_rad), radius_m * math.sin(east_rad)), rel=1e-9)
    assert z == pytest.approx(0.0, abs=1e-6)


def test_straight_above() -> None:
    """Seen from below it stands overhead, but for the 72 ms of its way: 3.9 km/s × 0.072 s are 280 m of 20 200 km."""
    _, el = az_el_deg(Observer(0.0, 0.0).direction(ROUND, 0.0))
    assert 90 - el == pytest.approx(math.degrees(280 / 20.2e6), rel=0.2)


@given(st.integers(1, 31), st.floats(-90, 90), st.floats(-180, 180), st.floats(-7200, 7200))
def test_directions_are_unit_vectors(number: int, lat: float, lon: float, after_s: float) -> None:
    """Whatever satellite, place and moment."""
    direction = Observer(lat, lon).direction(elements(number), TOE_S + after_s)
    assert math.hypot(*direction) == pytest.approx(1.0, abs=1e-12)


@given(st.integers(1, 31), st.floats(-7200, 7200))
def test_distance_and_height_are_those_of_the_orbit(number: int, after_s: float) -> None:
    """Between a(1 - e) and a(1 + e), but for some 300 m of corrections; never further north than its inclination."""
    each = elements(number)
    a_m = each.sqrt_a**2
    x, y, z = ecef_of(each, TOE_S + after_s)
    radius_m = math.hypot(x, y, z)
    assert a_m * (1 - each.e) - 300 <= radius_m <= a_m * (1 + each.e) + 300
    assert abs(z) / radius_m <= math.sin(each.i0_rad) + 1e-5


def test_the_nearest_set_is_taken() -> None:
    """Of sets of 0, 2 and 4 o'clock that of 2 until 3, then that of 4; in the very middle the later one."""
    sets = tuple(elements(toe_s=TOE_S + 7200 * k) for k in (-1, 0, 1))
    assert nearest_set(sets, TOE_S + 3599).toe_s == TOE_S
    assert nearest_set(sets, TOE_S + 3600).toe_s == TOE_S + 7200
