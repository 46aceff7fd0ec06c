"""Files of orbits are told by how they begin; what is none is refused."""

from __future__ import annotations

import contextlib
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.navigation import TOE_S, WEEK, constellation, rinex2, rinex3, sem, yuma

from backprobe.errors import UnreadableError
from backprobe.evidence.orbits import Elements
from backprobe.formats.navigation import read_navigation
from backprobe.physics.orbit import Observer


@pytest.mark.parametrize(
    ("write", "kind"),
    [
        (rinex2, "RINEX 2 navigation file"),
        (rinex3, "RINEX 3 navigation file"),
        (yuma, "YUMA almanac"),
        (sem, "SEM almanac"),
    ],
)
def test_each_kind_is_told(write, kind: str) -> None:
    """A file of each kind is read as what it is."""
    orbits = read_navigation(write(constellation(8, plain=True)), file="x", near_week=WEEK)
    assert (orbits.kind, len(orbits.ids)) == (kind, 8)


def test_each_kind_gives_the_same_sky() -> None:
    """The same orbits written in each form stand in the same place an hour after their own time, within 0.001°."""
    sets, observer = constellation(31, plain=True), Observer(60.2, 24.9)
    for write in (rinex2, rinex3, yuma, sem):
        for own, told in zip(sets, read_navigation(write(sets), file="x", near_week=WEEK).sets, strict=True):
            there, here = (observer.direction(each, TOE_S + 3600) for each in (own, told))
            assert math.degrees(math.dist(there, here)) < 0.001


def damaged(lines: list[str], cuts: list[tuple[int, int, str]]) -> list[str]:
    """The lines with some of them cut at a column, and what is given put there."""
    found = list(lines)
    for line, column, put in cuts:
        at = line % len(found)
        found[at : at + 1] = (found[at][: column % 90] + put + found[at][column % 90 + len(put) :]).split("\n")
    return found


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from([rinex2, rinex3, yuma, sem]),
    st.lists(
        st.tuples(st.integers(0, 300), st.integers(0, 90), st.text("\n \t-+.:*0123456789DEG\u00e9\x00٣", max_size=12)),
        max_size=12,
    ),
)
def test_no_damage_is_more_than_a_refusal(write, cuts: list[tuple[int, int, str]]) -> None:
    """Lines cut, spliced, torn or with other characters in them: what is left is read, or the file is refused."""
    sets: tuple[Elements, ...] = ()
    with contextlib.suppress(UnreadableError):
        sets = read_navigation(damaged(write(constellation(6, plain=True)), cuts), file="x", near_week=WEEK).sets
    for each in sets:
        assert 0.99 < math.hypot(*Observer(60.2, 24.9).direction(each, TOE_S)) < 1.01


@pytest.mark.parametrize("lines", [["wire,key,volts", "Red,off,12.3"], ["$GPGGA,123519,4807.038,N*47"], ["", ""]])
def test_other_files_are_refused(lines: list[str]) -> None:
    """A table of readings, a receiver's log and an empty page are no orbits; the message names what would be."""
    with pytest.raises(UnreadableError, match="RINEX 2 or 3 navigation file, a YUMA almanac or a SEM almanac"):
        read_navigation(lines, file="x", near_week=WEEK)
