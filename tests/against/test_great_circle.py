"""Great-circle distances against published examples.

Ed Williams, Aviation Formulary, worked examples: Los Angeles (33° 57' N, 118° 24' W) to New York (40° 38' N,
73° 47' W) is 0.623585 radians or 2144 nautical miles (read in copies of the page).

Rosetta Code, task Haversine formula: Nashville (36.12, -86.67) to Los Angeles (33.94, -118.40) is
2886.44444283798 km with a radius of 6371.0 km and 2887.25995060711 km with 6372.8 km (read in copies of the page).

T. Vincenty, Survey Review 176 (1975), and the Geocentric Datum of Australia technical manual: Flinders Peak to
Buninyong is 54972.271 m on the ellipsoid (read in copies): a sphere must come within the 0.6 % that the module states.
"""

import math

import pytest

from backprobe.physics.great_circle import EARTH_RADIUS_M, distance_m

LOS_ANGELES, NEW_YORK = (33 + 57 / 60, -(118 + 24 / 60)), (40 + 38 / 60, -(73 + 47 / 60))
FLINDERS_PEAK, BUNINYONG = (-37.9510334166667, 144.424867888889), (-37.6528211388889, 143.926495527778)


def test_the_aviation_formulary():
    """As an angle, and in nautical miles, of which 60 make a degree."""
    angle = distance_m(LOS_ANGELES, NEW_YORK) / EARTH_RADIUS_M
    assert round(angle, 6) == 0.623585
    assert round(math.degrees(angle) * 60) == 2144


@pytest.mark.parametrize(("radius_km", "km"), [(6371.0, 2886.44444283798), (6372.8, 2887.25995060711)])
def test_the_haversine_task(radius_km, km):
    """Scaled to the radius that the task names."""
    distance = distance_m((36.12, -86.67), (33.94, -118.40)) / EARTH_RADIUS_M * radius_km
    assert distance == pytest.approx(km, rel=1e-12)


def test_the_ellipsoid_is_within_the_error_stated():
    """0.6 % of 54,972 m is 330 m."""
    assert distance_m(FLINDERS_PEAK, BUNINYONG) == pytest.approx(54972.271, rel=0.006)
