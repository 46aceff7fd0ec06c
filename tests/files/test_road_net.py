"""Points at which streets meet."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from backprobe.files.road_net import RoadNet
from backprobe.files.road_tags import road_of

PLACES = {point: (51.0 + point / 1000, 7.0) for point in range(100)}


def net_of(*ways):
    """A net of ways, each a name or tags, and its points."""
    net = RoadNet()
    for tags, points in ways:
        road = road_of({"highway": "residential", **({"name": tags} if isinstance(tags, str) else tags)}, language="sv")
        assert road is not None
        net.add(road, points)
    return net


def met(net):
    """The names at each meeting with the pieces of street that lead away, by place."""
    found = sorted(net.meetings(PLACES), key=lambda meeting: meeting.places)
    return [(sorted(meeting.streets), meeting.ends) for meeting in found]


def test_two_streets_cross():
    """At the shared point, with four pieces leading away."""
    net = net_of(("A", [1, 2, 3]), ("B", [4, 2, 5]))
    assert net.candidates() == [2]
    assert met(net) == [(["A", "B"], 4)]


def test_a_street_in_many_ways_does_not_meet_itself():
    """Where its ways join, where it closes to a ring, and where it crosses itself."""
    net = net_of(("A", [1, 2]), ("A", [2, 3]), ("A", [3, 4, 5, 3]), ("A", [6, 4, 7]))
    assert met(net) == []
    assert net.candidates() == []


def test_a_street_goes_on_under_another_name():
    """Two pieces lead away."""
    assert met(net_of(("A", [1, 2]), ("B", [2, 3]))) == [(["A", "B"], 2)]


def test_a_bridge_shares_no_point():
    """Streets that only cross on the drawing do not meet."""
    assert met(net_of(("A", [1, 2]), ("B", [3, 4]))) == []


def test_a_number_gives_way_to_the_name_of_the_same_road():
    """'B 4' goes on as 'High Street', which is the B 4: no corner; with a side street, the name and that street."""
    numbered, named = {"ref": "B 4"}, {"name": "High Street", "ref": "B 4"}
    net = net_of((numbered, [1, 2]), (named, [2, 3]), ("Side", [2, 4]), (numbered, [5, 6]), (named, [6, 7]))
    assert met(net) == [(["High Street", "Side"], 3)]


def test_a_number_makes_a_corner_with_a_street():
    """Where the numbered road has no name."""
    assert met(net_of(({"ref": "B 4"}, [1, 2, 3]), ("Side", [2, 4]))) == [(["B 4", "Side"], 3)]


def test_a_ring_joins_the_streets_around_it():
    """Drawn in two ways; three streets touch it, none another; its own name is among them."""
    ring = {"junction": "roundabout"}
    net = net_of((ring, [1, 2, 3]), (ring, [3, 4, 1]), ("A", [1, 10]), ("B", [2, 11]), ("C", [4, 12]))
    assert net.candidates() == [1, 2, 3, 4]
    (meeting,) = net.meetings(PLACES)
    assert meeting.ring
    assert sorted(meeting.streets) == ["A", "B", "C"]
    assert len(meeting.places) == 4
    named = net_of(({**ring, "name": "Circle"}, [1, 2, 3, 1]), ("A", [1, 10]))
    assert [sorted(meeting.streets) for meeting in named.meetings(PLACES)] == [["A", "Circle"]]


def test_rings_that_are_drawn_in_any_order_become_one():
    """Two ways that do not touch, then one that touches both."""
    ring = {"junction": "roundabout"}
    net = net_of((ring, [1, 2]), (ring, [3, 4]), ("A", [1, 10]), ("B", [4, 11]), (ring, [2, 3]))
    assert [sorted(meeting.streets) for meeting in net.meetings(PLACES)] == [["A", "B"]]


def test_a_piece_counts_where_its_street_is_drawn():
    """A service road named as a street is a piece of it, also where that street is read later; another one is not."""
    piece, yard = {"highway": "service", "name": "High Street"}, {"highway": "service", "name": "Yard Way"}
    alone = net_of((piece, [1, 2, 3]), ("A", [2, 4]), (yard, [5, 4, 6]))
    assert met(alone) == []
    alone.add(road_of({"highway": "tertiary", "name": "High Street"}), [3, 9])
    assert met(alone) == [(["A", "High Street"], 3)]


def test_what_has_no_place_is_counted():
    """Extracts cut ways at their edge: the point is named and not in the file."""
    net = net_of(("A", [1, 2]), ("B", [2, 3]))
    assert list(net.meetings({})) == []
    assert (net.lost, net.outside) == (1, 0)


def test_what_lies_beyond_is_counted_apart():
    """Its place is known, and not wanted."""
    net = net_of(("A", [1, 2]), ("B", [2, 3]), ("C", [3, 4]))
    assert list(net.meetings({}, beyond={2})) == []
    assert (net.lost, net.outside) == (1, 1)


def test_the_most_frequent_translation_counts():
    """Ways of one street may be written differently; of equals the one first in the alphabet."""
    written = [({"name": "A", "name:sv": sv}, [n, n + 1]) for n, sv in enumerate(("X", "Y", "Y"))]
    assert net_of(*written, ({"name": "B"}, [8, 9])).translations() == {"A": "Y"}


@given(st.lists(st.tuples(st.sampled_from("ABCD"), st.lists(st.integers(0, 9), min_size=2, max_size=6)), max_size=8))
def test_every_shared_point_is_a_meeting(ways):
    """Counted plainly: a point meets when ways of two names touch it, and with all their names."""
    names = {}
    for name, points in ways:
        for point in points:
            names.setdefault(point, set()).add(name)
    wanted = sorted((PLACES[p], sorted(found)) for p, found in names.items() if len(found) > 1)
    found = sorted((m.places[0], sorted(m.streets)) for m in net_of(*ways).meetings(PLACES))
    assert found == wanted
