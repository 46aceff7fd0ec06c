"""Maps that are read into an index, and what is said of them."""

from __future__ import annotations

import pytest
from tests.samples.street_maps import place_of, street, write_map

from backprobe.cases.corners import build_corners
from backprobe.errors import OptionError
from backprobe.files.corner_file import corners_in
from backprobe.files.osm_pbf import Around

WAYS = [
    street("Main Street", (0, 0), (0, 1000), (0, 2000)),
    street("Mill Lane", (0, 0), (50, 0)),
    street("Hill Road", (0, 1000), (50, 1000)),
    street("Cut Lane", (0, 2000), (50, 2000)),
]


def test_what_was_left_out_is_said(tmp_path):
    """Of three corners one is beyond the circle and one was cut off the map."""
    path = write_map(tmp_path / "m.osm.pbf", WAYS, lost=((0, 2000),))
    built = build_corners(path, tmp_path / "m.corners", around=Around(place_of((0, 0)), 0.5))
    assert corners_in(tmp_path / "m.corners").streets == ("Main Street", "Mill Lane")
    assert [note.split(" ")[0] for note in built.notes] == ["the", "1", "1"]
    assert built.as_json()["left_out"] == {"outside": 1, "lost": 1}


def test_streets_that_never_meet(tmp_path):
    """Two streets over a bridge: an index without corners, and that is said."""
    ways = [street("Main Street", (0, 0), (0, 9)), street("Mill Lane", (9, 0), (9, 9))]
    built = build_corners(write_map(tmp_path / "m.osm.pbf", ways), tmp_path / "m.corners")
    assert built.read.index.corners == ()
    assert built.notes[0] == "no two named streets meet on this map"


def test_a_circle_beside_the_map_is_refused(tmp_path):
    """And an index that was there stays."""
    path = write_map(tmp_path / "m.osm.pbf", WAYS)
    before = build_corners(path, tmp_path / "m.corners").size_bytes
    with pytest.raises(OptionError, match="none of 3 corners"):
        build_corners(path, tmp_path / "m.corners", around=Around((0.0, 0.0), 1.0))
    assert (tmp_path / "m.corners").stat().st_size == before
