"""Extracts read into corners, and what is none refused."""

from __future__ import annotations

import tracemalloc

import pytest
from tests.samples.street_maps import place_of, street, write_map

from backprobe.errors import UnreadableError
from backprobe.evidence.corner import CornerKind
from backprobe.files.osm_pbf import Around, read_corners

CROSS = [
    street("Main Street", (0, -100), (0, 0), (0, 100), name__sv="Storgatan"),
    street("Mill Lane", (-100, 0), (0, 0), (100, 0)),
]


@pytest.fixture
def cross(tmp_path):
    """A map of two streets that cross in its middle."""
    return write_map(tmp_path / "cross.osm.pbf", CROSS)


def streets(path, **options):
    """The corners of a map, by their streets."""
    return [corner.streets for corner in read_corners(path, **options).index.corners]


def test_a_crossing(cross):
    """Its streets, its place to the map's own 0.0000001°, what is owed, and what was counted."""
    found = read_corners(cross)
    (corner,) = found.index.corners
    assert corner.streets == ("Main Street", "Mill Lane")
    assert (corner.lat_deg, corner.lon_deg) == pytest.approx(place_of((0, 0)), abs=1e-7)
    assert corner.kind is CornerKind.CORNER
    assert "© OpenStreetMap contributors, ODbL" in found.index.attribution
    assert found.index.source == "cross.osm.pbf"
    assert (found.ways, found.passed_over, found.meetings, found.lost) == (2, 0, 1, 0)


def test_the_language_asked_for(cross):
    """Where a street has a name in it; the other keeps its own."""
    assert streets(cross, language="sv") == [("Storgatan", "Mill Lane")]
    assert streets(cross, language="en") == [("Main Street", "Mill Lane")]


def test_a_dual_carriageway_and_a_roundabout(tmp_path):
    """Main Street crosses Mill Lane in two halves 20 m apart; 500 m on a nameless ring joins it to Hill Road."""
    ring = [(0, 500), (20, 520), (0, 540), (-20, 520), (0, 500)]
    ways = [
        street("Main Street", (0, -100), (0, 0), (0, 500), oneway="yes"),
        street("Main Street", (0, 500), (20, 0), (20, -100), oneway="yes"),
        street("Mill Lane", (-100, 0), (0, 0), (20, 0), (100, 0)),
        street(None, *ring, junction="roundabout", highway="tertiary"),
        street("Hill Road", (0, 540), (0, 900)),
    ]
    corners = read_corners(write_map(tmp_path / "m.osm.pbf", ways)).index.corners
    assert {(c.streets, str(c.kind)) for c in corners} == {
        (("Main Street", "Mill Lane"), "corner"),
        (("Hill Road", "Main Street"), "roundabout"),
    }
    (middle,) = [c for c in corners if c.kind is CornerKind.ROUNDABOUT]
    assert (middle.lat_deg, middle.lon_deg) == pytest.approx(place_of((0, 520)), abs=1e-6)


def test_footways_and_service_roads_give_no_corner(tmp_path):
    """A named footway, a named yard and a building across Main Street: streets with themselves alone."""
    across = [(-100, 0), (0, 0), (100, 0)]
    ways = [
        CROSS[0],
        street("Foot Way", *across, highway="footway"),
        street("Yard", *across, highway="service"),
        ({"building": "yes", "name": "Barn"}, across),
    ]
    found = read_corners(write_map(tmp_path / "m.osm.pbf", ways))
    assert found.index.corners == ()
    assert (found.ways, found.passed_over) == (2, 1)


def test_within_a_circle(tmp_path):
    """Mill Lane crosses in the middle, Hill Road 1000 m east; 990 m keep one, 1010 m both."""
    ways = [
        street("Main Street", (0, 0), (0, 1000)),
        street("Mill Lane", (0, 0), (9, 0)),
        street("Hill Road", (0, 1000), (9, 1000)),
    ]
    path = write_map(tmp_path / "m.osm.pbf", ways)
    near = read_corners(path, around=Around(place_of((0, 0)), 0.99))
    assert [corner.streets for corner in near.index.corners] == [("Main Street", "Mill Lane")]
    assert near.outside == 1
    assert len(streets(path, around=Around(place_of((0, 0)), 1.01))) == 2


def test_far_beyond_a_circle(tmp_path):
    """A crossing 3 km off is not even kept until carriageways are joined; it is counted all the same."""
    ways = [*CROSS, street("Far Street", (0, 3000), (9, 3000)), street("Farther", (9, 3000), (9, 3100))]
    found = read_corners(write_map(tmp_path / "m.osm.pbf", ways), around=Around(place_of((0, 0)), 0.5))
    assert (len(found.index.corners), found.meetings, found.outside, found.lost) == (1, 1, 1, 0)


def test_a_point_that_was_cut_off_the_extract_is_counted(tmp_path):
    """A way names it, the file does not hold it."""
    assert read_corners(write_map(tmp_path / "m.osm.pbf", CROSS, lost=((0, 0),))).lost == 1


def refusal(path):
    """What is said of a file."""
    with pytest.raises(UnreadableError) as refused:
        read_corners(path)
    return refused.value.message


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xd8\xff\xe0" + bytes(500), "this file is of another kind"),
        (b'<?xml version="1.0"?><osm version="0.6"></osm>', "this file is of another kind"),
        (b"", "this file is empty"),
        (b"\x00\x00\x00\r\n\tOSMHeader\x18Q\x10H" + bytes(90), "its reader says"),
    ],
)
def test_what_is_no_extract_is_refused(tmp_path, content, said):
    """A photo, the map's other form, nothing, and a head with rubbish behind it."""
    path = tmp_path / "photo.osm.pbf"
    path.write_bytes(content)
    assert said in refusal(path)


def test_a_file_that_was_cut_off_is_refused(tmp_path, cross):
    """At any length but between two blocks, where nothing shows it; then there are no streets."""
    whole = cross.read_bytes()
    path = tmp_path / "cut.osm.pbf"
    for length in range(30, len(whole), 7):
        path.write_bytes(whole[:length])
        said = refusal(path)
        assert "cut off" in said or "not one in it" in said


def test_a_changed_byte_is_noticed_or_does_no_harm(tmp_path, cross):
    """Whatever is damaged, the answer is a corner, or a refusal in words."""
    whole = bytearray(cross.read_bytes())
    path = tmp_path / "bad.osm.pbf"
    refused = 0
    for at in range(0, len(whole), 5):
        path.write_bytes(bytes([*whole[:at], whole[at] ^ 0x55, *whole[at + 1 :]]))
        try:
            assert len(read_corners(path).index.corners) <= 1
        except UnreadableError:
            refused += 1
    assert refused > 20


def test_what_cannot_be_opened_is_refused(tmp_path):
    """No file, a folder, a name that no system takes."""
    assert "there is none of this name" in refusal(tmp_path / "none.osm.pbf")
    assert "a folder" in refusal(tmp_path)
    assert "cannot" in refusal(tmp_path / "a\0b") or "system says" in refusal(tmp_path / "a\0b")


def test_a_map_without_streets_is_refused(tmp_path):
    """Buildings alone."""
    path = write_map(tmp_path / "m.osm.pbf", [({"building": "yes"}, [(0, 0), (9, 9)])])
    assert "not one in it" in refusal(path)


def test_buildings_take_no_memory(tmp_path):
    """20,000 points of buildings beside one crossing: Python holds well under a megabyte."""
    rows = [({"building": "yes"}, [(n, m) for m in range(200, 300)]) for n in range(200, 400)]
    path = write_map(tmp_path / "m.osm.pbf", [*CROSS, *rows])
    tracemalloc.start()
    try:
        assert streets(path) == [("Main Street", "Mill Lane")]
        assert tracemalloc.get_traced_memory()[1] < 1_000_000
    finally:
        tracemalloc.stop()
