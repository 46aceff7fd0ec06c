"""Orbits as evidence."""

from __future__ import annotations

from tests.samples.navigation import elements

from backprobe.evidence.orbits import Orbits


def test_each_satellite_is_named_once() -> None:
    """Two sets of one satellite are one name; names are sorted."""
    sets = (elements(9), elements(2), elements(9, toe_s=0.0))
    assert Orbits(file="x", kind="invented", good_for_s=1.0, sets=sets).ids == ("G02", "G09")
