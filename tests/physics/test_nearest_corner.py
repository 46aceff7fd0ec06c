"""The nearest corner, wherever on the earth."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from backprobe.evidence.corner import Corner, CornerIndex, sorted_corners
from backprobe.physics.great_circle import distance_m
from backprobe.physics.nearest_corner import corners_near, nearest_corner, reach_of_longitudes_deg

M_PER_DEG = 111_195.0


def index_of(*places):
    """An index of corners at places; each is named for its place in the list."""
    corners = [Corner(lat, lon, ("A", f"S{at}")) for at, (lat, lon) in enumerate(places)]
    return CornerIndex(corners=sorted_corners(corners), attribution="x", source="y")


def test_the_nearer_of_two():
    """100 m and 200 m north of the place."""
    index = index_of((51 + 200 / M_PER_DEG, 7.0), (51 + 100 / M_PER_DEG, 7.0))
    near = nearest_corner(index, (51.0, 7.0), within_m=300.0)
    assert near.corner.streets == ("A", "S1")
    assert near.distance_m == pytest.approx(100.0, abs=0.1)
    assert near.bearing_deg == 180.0  # the place lies south of the corner


def test_none_beyond_the_reach_and_none_in_an_empty_index():
    """301 m are beyond 300 m."""
    assert nearest_corner(index_of((51 + 301 / M_PER_DEG, 7.0)), (51.0, 7.0), within_m=300.0) is None
    assert nearest_corner(index_of((51 + 299 / M_PER_DEG, 7.0)), (51.0, 7.0), within_m=300.0) is not None
    assert nearest_corner(index_of(), (51.0, 7.0), within_m=300.0) is None


def test_across_the_antimeridian():
    """0.001° on either side of 180° on the equator are 222 m."""
    near = nearest_corner(index_of((0.0, 179.999)), (0.0, -179.999), within_m=300.0)
    assert near.distance_m == pytest.approx(222.4, abs=0.1)
    assert near.bearing_deg == 90.0


@pytest.mark.parametrize("lon", [0.0, 90.0, 179.0, -120.0])
def test_at_the_pole(lon):
    """100 m on the other side of the pole is 200 m, whatever the longitudes."""
    north = 90 - 100 / M_PER_DEG
    across = lon + 180 if lon <= 0 else lon - 180
    near = nearest_corner(index_of((north, lon)), (north, across), within_m=300.0)
    assert near.distance_m == pytest.approx(200.0, abs=0.1)


def test_two_corners_at_one_place():
    """The one first by name, in whatever order."""
    index = index_of((51.0, 7.0), (51.0, 7.0))
    assert nearest_corner(index, (51.0, 7.0), within_m=1.0).corner.streets == ("A", "S0")


def test_how_far_a_circle_reaches_by_longitude():
    """1° at the equator and 2° at 60° north, near enough; all of them where it holds the pole."""
    one = 0.017453292519943295
    assert reach_of_longitudes_deg(0.0, one) == pytest.approx(1.0)
    assert reach_of_longitudes_deg(60.0, one) == pytest.approx(2.0, abs=0.01)
    assert reach_of_longitudes_deg(89.5, one) == 180.0


places = st.tuples(st.floats(-90, 90), st.floats(-180, 180))


@given(st.lists(places, max_size=8), places, st.floats(1, 2e7))
def test_none_nearer_is_missed(corners, here, reach_m):
    """Against looking at every corner there is, over the whole earth and any reach."""
    apart = [round(distance_m(place, here), 1) for place in corners]
    near = nearest_corner(index_of(*corners), here, within_m=reach_m)
    inside = [away for away in apart if away <= reach_m]
    assert (None if near is None else near.distance_m) == (min(inside) if inside else None)


@given(st.floats(-89.9, 89.9), st.sampled_from([-180.0, 180.0, 0.0]), st.floats(-0.02, 0.02), st.floats(-0.02, 0.02))
def test_close_by_none_is_missed(north, east, d_north, d_east):
    """Around the antimeridian and up to the poles, at the reach of a few streets."""
    place = (max(-90.0, min(90.0, north + d_north)), (east + d_east + 180) % 360 - 180)
    away = round(distance_m(place, (north, east)), 1)
    assume(abs(away - 300.0) > 0.2)
    assert (nearest_corner(index_of(place), (north, east), within_m=300.0) is not None) == (away < 300.0)


def test_corners_near_several_places():
    """Within 150 m of either place, each once and from south to north; 200 m off is too far."""
    step = 100 / M_PER_DEG
    index = index_of(*((51 + n * step, 7.0) for n in range(10)))
    found = corners_near(index, [(51.0, 7.0), (51 + step, 7.0), (51 + 8 * step, 7.0)], within_m=150.0)
    assert [round((corner.lat_deg - 51) / step) for corner in found] == [0, 1, 2, 7, 8, 9]
    assert corners_near(index, [], within_m=150.0) == ()
