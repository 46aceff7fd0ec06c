"""Corners, and the index that holds them."""

from __future__ import annotations

from backprobe.evidence.corner import Corner, CornerIndex, sorted_corners


def test_corners_stand_from_south_to_north():
    """Then from west to east, then by name."""
    corners = [
        Corner(1.0, 2.0, ("B", "C")),
        Corner(1.0, 2.0, ("A", "C")),
        Corner(1.0, 1.0, ("X", "Y")),
        Corner(0.5, 9.0, ("X", "Z")),
    ]
    assert [corner.streets[0] for corner in sorted_corners(corners)] == ["X", "X", "A", "B"]
    assert sorted_corners(corners)[0].lat_deg == 0.5


def test_the_streets_of_an_index():
    """Each once, in the order of the alphabet."""
    index = CornerIndex(
        corners=(Corner(0.0, 0.0, ("B", "A")), Corner(1.0, 0.0, ("B", "C"))), attribution="x", source="y"
    )
    assert index.streets == ("A", "B", "C")
