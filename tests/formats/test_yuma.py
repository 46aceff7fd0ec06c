"""YUMA almanacs: figures, weeks modulo 1024, torn blocks."""

from __future__ import annotations

import pytest
from tests.samples.navigation import TOE_S, WEEK, constellation, elements, yuma

from backprobe.errors import UnreadableError
from backprobe.formats.yuma import is_yuma, read_yuma


def test_every_satellite_is_read() -> None:
    """All blocks, with the figures to the digits that stand there."""
    lines = yuma(constellation(31, plain=True))
    orbits = read_yuma(lines, file="yuma.txt", near_week=WEEK)
    assert is_yuma(lines[:20])
    assert (len(orbits.ids), orbits.skipped_count) == (31, 0)
    first, told = elements(1, plain=True), orbits.sets[0]
    assert (told.id, told.toe_s, told.sqrt_a) == ("G01", TOE_S, pytest.approx(first.sqrt_a, abs=1e-6))
    assert told.m0_rad == pytest.approx(first.m0_rad, abs=1e-9)


def test_a_week_modulo_1024_is_the_nearest_one() -> None:
    """2155 is written as 107: near week 2150 it is 2155, near 1100 it is 107 + 1024 = 1131; both are said."""
    lines = yuma([elements(plain=True)])
    near = read_yuma(lines, file="yuma.txt", near_week=2150)
    assert near.sets[0].toe_s == TOE_S
    assert near.notes == (
        "Week 107 is counted modulo 1024; it was taken as week 2155, the nearest to the day asked for.",
    )
    assert read_yuma(lines, file="yuma.txt", near_week=1100).sets[0].toe_s == TOE_S - 1024 * 604_800
    assert read_yuma(yuma([elements(plain=True)], modulo=False), file="yuma.txt", near_week=2150).notes == ()


def test_a_torn_block_costs_itself_alone() -> None:
    """A block without its mean anomaly, and one cut in the middle of a figure, are passed over and named."""
    lines = yuma(constellation(4, plain=True))
    torn = [line for k, line in enumerate(lines) if k != 15 + 10]
    torn[30 + 6] = torn[30 + 6][:31] + "E"
    orbits = read_yuma(torn, file="yuma.txt", near_week=WEEK)
    assert orbits.ids == ("G01", "G04")
    assert [("m0" in each.expected, each.place.line) for each in orbits.skipped] == [(True, 16), (False, 30)]


def test_a_block_without_its_headline_is_told_by_its_id() -> None:
    """Where the starred lines are gone, a new ID begins a new satellite."""
    lines = [line for line in yuma(constellation(3, plain=True)) if not line.startswith("*")]
    assert read_yuma(lines, file="yuma.txt", near_week=WEEK).ids == ("G01", "G02", "G03")


def test_a_week_that_cannot_be_is_passed_over() -> None:
    """Week 10^12, and a time beyond the week's end, are no times: such blocks are passed over."""
    for old, new in (("week:                        107", "week:  1000000000000"), ("352800.0000", "9999999")):
        lines = [line.replace(old, new) for line in yuma(constellation(1, plain=True))]
        orbits = read_yuma([*lines, *yuma([elements(2, plain=True)])], file="yuma.txt", near_week=WEEK)
        assert (orbits.ids, orbits.skipped_count) == (("G02",), 1)


def test_nothing_to_read_is_refused() -> None:
    """An almanac in which no block is whole is refused with its first fault."""
    with pytest.raises(UnreadableError, match="cannot be read; not one satellite"):
        read_yuma(yuma([elements(plain=True)])[:8], file="yuma.txt", near_week=WEEK)
