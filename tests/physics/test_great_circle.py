"""Distances on the ground."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.great_circle import EARTH_RADIUS_M, distance_m

PLACES = st.tuples(st.floats(-90, 90), st.floats(-180, 180))


def test_an_arc_of_one_degree():
    """Along the equator and along a meridian alike: 6371008.8 m × pi / 180 = 111195.08 m."""
    assert distance_m((0, 0), (0, 1)) == pytest.approx(111195.08, abs=0.01)
    assert distance_m((45, 10), (46, 10)) == pytest.approx(111195.08, abs=0.01)


def test_a_yard_is_measured_to_the_centimetre():
    """0.0001° north is 11.1195 m; the same east at 60° north is half of it."""
    assert distance_m((60, 10), (60.0001, 10)) == pytest.approx(11.1195, abs=0.001)
    assert distance_m((60, 10), (60, 10.0001)) == pytest.approx(11.1195 / 2, abs=0.001)


def test_across_the_date_line_and_to_the_other_side():
    """Longitudes 179 and -179 are two degrees apart; antipodes half the circumference."""
    assert distance_m((0, 179), (0, -179)) == pytest.approx(2 * 111195.08, abs=0.1)
    assert distance_m((0, 0), (0, 180)) == pytest.approx(math.pi * EARTH_RADIUS_M)


@given(PLACES, PLACES)
def test_a_distance_is_a_distance(here, there):
    """The same both ways, never negative, at most half the circumference, zero to oneself."""
    assert distance_m(here, here) == 0
    assert distance_m(here, there) == pytest.approx(distance_m(there, here))
    assert 0 <= distance_m(here, there) <= math.pi * EARTH_RADIUS_M + 1e-6
