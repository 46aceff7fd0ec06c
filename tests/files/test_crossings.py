"""One corner for one crossing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.street_maps import place_of

from backprobe.evidence.corner import CornerKind
from backprobe.files.crossings import corners_of, middle_of
from backprobe.files.road_net import Meeting


def meeting(names, north=0.0, east=0.0, *, one_way="", ends=4, ring=False):
    """A meeting of streets, each a letter, ranked as they stand, at metres from a middle."""
    ranks = {name: rank for rank, name in enumerate(names)}
    return Meeting(ranks, frozenset(one_way), ends, ring, (place_of((north, east)),))


def corners(*meetings):
    """What they come to: streets, kind."""
    return [(corner.streets, str(corner.kind)) for corner in corners_of(meetings, translations={})]


def test_two_carriageways_that_cross_two_are_one_corner():
    """Four points 30 m apart; the corner lies in their middle, 15 m north and east of the first."""
    square = [meeting("AB", n, e, one_way="AB") for n in (0, 30) for e in (0, 30)]
    (corner,) = corners_of(square, translations={})
    assert corner.streets == ("A", "B")
    assert (corner.lat_deg, corner.lon_deg) == pytest.approx(place_of((15, 15)), abs=1e-7)


@pytest.mark.parametrize(("apart_m", "one_way", "count"), [(24, "", 1), (26, "", 2), (59, "A", 1), (61, "A", 2)])
def test_how_near_one_crossing_is(apart_m, one_way, count):
    """25 m for any streets, 60 m where a street of both is one-way there."""
    assert len(corners(meeting("AB", one_way=one_way), meeting("AB", apart_m, one_way=one_way))) == count


def test_one_carriageway_alone_is_no_pair():
    """A street that is one-way at one of the points only keeps both corners."""
    assert len(corners(meeting("AB", one_way="A"), meeting("AB", 50))) == 2


def test_a_crescent_keeps_its_two_corners():
    """It leaves the street and comes back to it 120 m on."""
    assert corners(meeting("AB"), meeting("AB", 120)) == [(("A", "B"), "corner")] * 2


def test_a_point_with_fewer_streets_joins_one_with_more():
    """{A, B} beside {A, B, C} is the same crossing; {A, C} beside {A, B} is another one."""
    assert corners(meeting("AB"), meeting("ABC", 20)) == [(("A", "B", "C"), "corner")]
    assert len(corners(meeting("AB"), meeting("AC", 20))) == 2


def test_the_kind_is_that_of_the_busiest_point():
    """A ring before a crossing, a crossing before a change of name."""
    assert corners(meeting("AB", ends=2)) == [(("A", "B"), "name_change")]
    assert corners(meeting("AB", ends=2), meeting("AB", 10, ends=3)) == [(("A", "B"), "corner")]
    assert corners(meeting("AB", ends=2, ring=True)) == [(("A", "B"), "roundabout")]


def test_the_more_important_street_stands_first():
    """By rank, then by name."""
    one = Meeting({"Z": 1, "A": 3, "M": 3}, frozenset(), 4, ring=False, places=((1.0, 1.0),))
    assert corners(one) == [(("Z", "A", "M"), "corner")]


def test_translations_stand_in_for_names():
    """Two names that are one in the language asked for are no corner any more."""
    (corner,) = corners_of([meeting("AB")], translations={"A": "Ä"})
    assert corner.streets == ("Ä", "B")
    assert corners_of([meeting("AB")], translations={"A": "B"}) == []


def test_across_the_antimeridian():
    """Two carriageways on both sides of 180°: one corner, on it."""
    pair = [Meeting({"A": 0, "B": 1}, frozenset("A"), 4, ring=False, places=((0.0, e),)) for e in (179.9999, -179.9999)]
    (corner,) = corners_of(pair, translations={})
    assert abs(corner.lon_deg) == 180.0
    assert corner.kind is CornerKind.CORNER


@given(st.lists(st.tuples(st.floats(-80, 80), st.floats(-180, 180)), min_size=1, max_size=1), st.floats(-0.5, 0.5))
def test_the_middle_of_two_lies_between_them(places, step):
    """Half a step away, whatever the longitude, and never beyond ±180°."""
    (north, east), other = places[0], (places[0][0], (places[0][1] + step + 180) % 360 - 180)
    lat_deg, lon_deg = middle_of([(north, east), other])
    assert middle_of([other, (north, east)]) == (lat_deg, lon_deg)
    assert lat_deg == pytest.approx(north)
    assert (lon_deg - east - step / 2 + 180) % 360 - 180 == pytest.approx(0.0, abs=1e-9)
    assert abs(lon_deg) <= 180.0


@given(
    st.lists(st.tuples(st.integers(0, 300), st.integers(0, 300), st.sampled_from(["AB", "AC", "ABC"])), max_size=12),
    st.randoms(),
)
def test_the_order_of_the_map_does_not_matter(points, rolled):
    """The same meetings in another order give the same corners, to the last digit."""
    meetings = [meeting(names, n, e) for n, e, names in points]
    other = list(meetings)
    rolled.shuffle(other)
    assert set(corners_of(meetings, translations={})) == set(corners_of(other, translations={}))
