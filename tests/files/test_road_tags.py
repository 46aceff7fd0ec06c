"""Which ways are streets, and how they are named."""

from __future__ import annotations

import pytest

from backprobe.files.road_tags import CLASSES, road_of


@pytest.mark.parametrize("highway", [*CLASSES, "motorway_link", "tertiary_link"])
def test_what_vehicles_drive_on_is_a_street(highway):
    """Every class from motorway to living street, their slip roads, and pedestrian streets."""
    assert road_of({"highway": highway, "name": "Mill Lane"}).name == "Mill Lane"


@pytest.mark.parametrize(
    "tags",
    [
        {"highway": "footway"},
        {"highway": "cycleway"},
        {"highway": "steps"},
        {"highway": "track"},
        {"highway": "construction"},
        {"highway": "residential", "area": "yes"},
        {"building": "yes"},
        {},
    ],
)
def test_what_is_no_street_is_passed_over(tags):
    """Whatever its name, a footway, a building site or an area of roadway gives no corner."""
    assert road_of({"name": "Mill Lane", **tags}) is None


def test_more_important_streets_rank_lower():
    """A motorway before a residential street, that before a slip road, that before a piece of a street."""
    found = [road_of({"highway": h, "name": "A"}).rank for h in ("motorway", "residential", "motorway_link", "service")]
    assert found == sorted(found)
    assert len(set(found)) == 4


@pytest.mark.parametrize("tags", [{"highway": "service"}, {"highway": "pedestrian", "area": "yes"}])
def test_a_service_road_is_only_ever_a_piece(tags):
    """With a name it may be a piece of the street of that name; without one it is nothing."""
    assert road_of({"name": "High Street", **tags}).piece
    assert road_of({"ref": "B 4", **tags}) is None


def test_a_number_stands_in_for_a_name():
    """The first number of a road that has no name; a slip road's number is another road's."""
    assert road_of({"highway": "primary", "ref": "B 4;E 18"}).ref == "B 4"
    assert road_of({"highway": "primary", "ref": "B 4", "name": "High Street"}).ref is None
    assert road_of({"highway": "primary_link", "ref": "B 4"}) is None
    assert road_of({"highway": "primary"}) is None


def test_a_nameless_ring_is_kept():
    """It joins the streets that meet at it."""
    ring = road_of({"highway": "primary", "junction": "roundabout"})
    assert (ring.name, ring.ref, ring.ring, ring.one_way) == (None, None, True, True)


def test_the_language_asked_for():
    """The way's name in that language beside its own, nothing where it has none."""
    tags = {"highway": "residential", "name": "Bulevardi", "name:sv": "Bulevarden"}
    assert road_of(tags, language="sv").shown == "Bulevarden"
    assert road_of(tags, language="en").shown is None
    assert road_of(tags).shown is None


def test_names_are_made_plain():
    """Composed letters, single spaces, no control characters, at most 120 letters; nothing but spaces is no name."""
    assert road_of({"highway": "road", "name": " A\u0308b\n\u202ec  d "}).name == "Äb c d"
    assert len(road_of({"highway": "road", "name": "x" * 300}).name) == 120
    assert road_of({"highway": "road", "name": " \t"}) is None


@pytest.mark.parametrize(("oneway", "expected"), [("yes", True), ("-1", True), ("no", False), (None, False)])
def test_one_way(oneway, expected):
    """As the map says it, against the drawing too."""
    assert road_of({"highway": "road", "name": "A"} | ({"oneway": oneway} if oneway else {})).one_way is expected
