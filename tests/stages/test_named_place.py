"""Positions in words."""

from __future__ import annotations

import pytest

from backprobe.evidence.corner import Corner, CornerIndex, CornerKind
from backprobe.physics.nearest_corner import Near
from backprobe.stages.named_place import corner_in_words, in_words, named_place

CORNER = Corner(51.0, 7.0, ("Main Street", "Mill Lane"))
INDEX = CornerIndex(corners=(CORNER,), attribution="© somebody", source="m.osm.pbf")
M_PER_DEG = 111_195.0


@pytest.mark.parametrize(
    ("distance_m", "words"),
    [
        (0.0, "corner of Main Street and Mill Lane"),
        (9.9, "corner of Main Street and Mill Lane"),
        (10.0, "corner of Main Street and Mill Lane, 10 m east"),
        (14.9, "corner of Main Street and Mill Lane, 10 m east"),
        (15.0, "corner of Main Street and Mill Lane, 20 m east"),
        (300.0, "corner of Main Street and Mill Lane, 300 m east"),
    ],
)
def test_how_far_and_where(distance_m, words):
    """To the nearest ten metres; nearer than ten the side is not said."""
    assert in_words(Near(CORNER, distance_m, 90.0)) == words


def test_nothing_near():
    """Says within which distance it was looked for; an empty index has nothing near."""
    assert in_words(None) == "no named corner within 300 m"
    assert named_place(INDEX, (52.0, 7.0), within_m=120.0).text == "no named corner within 120 m"
    empty = CornerIndex(corners=(), attribution="© somebody", source="m.osm.pbf")
    assert named_place(empty, (51.0, 7.0)).as_json()["corner"] is None


@pytest.mark.parametrize(
    ("streets", "kind", "words"),
    [
        ("AB", CornerKind.CORNER, "corner of A and B"),
        ("ABC", CornerKind.CORNER, "corner of A, B and C"),
        ("ABCD", CornerKind.ROUNDABOUT, "roundabout of A, B, C and D"),
        ("ABCDE", CornerKind.CORNER, "corner of A, B, C and 2 more"),
        ("AB", CornerKind.NAME_CHANGE, "where A becomes B"),
    ],
)
def test_corners_by_their_streets(streets, kind, words):
    """Up to four streets by name."""
    assert corner_in_words(Corner(0.0, 0.0, tuple(streets), kind)) == words


def test_the_answer():
    """100 m north of the corner: whole metres, the direction from the corner, and what is owed to the map."""
    assert named_place(INDEX, (51.0 + 100 / M_PER_DEG, 7.0)).as_json() == {
        "text": "corner of Main Street and Mill Lane, 100 m north",
        "corner": {
            "streets": ["Main Street", "Mill Lane"],
            "kind": "corner",
            "lat": 51.0,
            "lon": 7.0,
            "distance_m": 100,
            "direction": "north",
        },
        "attribution": "© somebody",
    }
