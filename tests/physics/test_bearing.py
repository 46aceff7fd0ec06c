"""Directions on the ground."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.bearing import POINTS, bearing_deg, compass_point


@pytest.mark.parametrize(
    ("there", "bearing"),
    [((1.0, 0.0), 0.0), ((0.0, 1.0), 90.0), ((-1.0, 0.0), 180.0), ((0.0, -1.0), 270.0), ((0.001, 0.001), 45.0)],
)
def test_from_the_middle_of_the_chart(there, bearing):
    """The four points, and between two of them where a degree is as long either way."""
    assert bearing_deg((0.0, 0.0), there) == bearing


def test_at_high_latitudes():
    """At 60° north a degree east is half as long as one north: atan(0.5 / 1) = 26.6°."""
    assert bearing_deg((60.0, 25.0), (60.001, 25.001)) == pytest.approx(26.6, abs=0.05)


def test_across_the_antimeridian():
    """From 179.999° east the place 0.002° on lies east, not the long way round."""
    assert bearing_deg((0.0, 179.999), (0.0, -179.999)) == 90.0


def test_nothing_is_ever_360():
    """A hair west of north is shown as 0, not as 360 or -0."""
    found = bearing_deg((0.0, 0.0), (1.0, -1e-9))
    assert str(found) == "0.0"


@pytest.mark.parametrize(
    ("bearing", "point"),
    [(0, 0), (22.4, 0), (22.5, 1), (67.4, 1), (67.5, 2), (180, 4), (337.4, 7), (337.5, 0), (359.9, 0)],
)
def test_points_change_halfway(bearing, point):
    """22.5° is halfway between north and north-east."""
    assert compass_point(bearing) == POINTS[point]


@given(st.floats(-85, 85), st.floats(-180, 180), st.floats(-0.01, 0.01), st.floats(-0.01, 0.01))
def test_back_is_the_other_way(north, east, d_north, d_east):
    """Over a short way the direction back is 180° from the direction there."""
    there = (north + d_north, east + d_east)
    if abs(d_north) + abs(d_east) > 1e-4:
        turn = (bearing_deg((north, east), there) - bearing_deg(there, (north, east))) % 360
        assert turn == pytest.approx(180.0, abs=0.3)
