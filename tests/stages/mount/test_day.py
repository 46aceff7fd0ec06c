"""A day under every heading: more sky never gives fewer satellites, and it is the sky over the vehicle that counts."""

from __future__ import annotations

import math
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.mount import DASH, LEFT_WINDOW, METAL_ROOF, ROOF, WINDSCREEN, thin_sky

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.limits.materials import MATERIALS
from backprobe.physics.dop import dop
from backprobe.stages.mount.day import Day, Quality, days
from backprobe.stages.mount.heard import Case, usable
from backprobe.stages.mount.mask import CELL_DEG, Mask, mask_of

QUALITY = Quality(6.0)
HEADINGS = tuple(range(0, 360, 15))
PARTS = st.lists(
    st.builds(
        Part,
        material=st.sampled_from(sorted(MATERIALS)),
        side=st.sampled_from(Side),
        away_mm=st.floats(50, 2000),
    ),
    max_size=4,
)
CASES = st.sampled_from(Case)


def by_heading(mask: Mask, case: Case = Case.USUAL, headings: tuple[float, ...] = HEADINGS) -> list[Day]:
    """The thinned day under each heading."""
    return days(thin_sky(), usable(mask, case), headings=headings, quality=QUALITY)


def no_better(one: list[Day], other: list[Day]) -> bool:
    """Whether in no minute under no heading more satellites are used, or a better fix made, than in `other`."""
    return all(a <= b for x, y in zip(one, other, strict=True) for a, b in zip(x.used, y.used, strict=True)) and all(
        a >= b - 1e-9 for x, y in zip(one, other, strict=True) for a, b in zip(x.hdop, y.hdop, strict=True)
    )


@settings(max_examples=20, deadline=None)
@given(PARTS, CASES)
def test_a_metal_roof_never_helps(parts: list[Part], case: Case) -> None:
    """Whatever is around the unit: with a metal roof above it no minute is better under any heading."""
    place = MountPlace(name="x", parts=tuple(parts), elsewhere="open")
    roofed = replace(place, parts=(*place.parts, METAL_ROOF))
    assert no_better(by_heading(mask_of(roofed), case), by_heading(mask_of(place), case))


@settings(max_examples=20, deadline=None)
@given(PARTS, st.integers(0, 3), CASES)
def test_more_sky_never_gives_fewer_satellites(parts: list[Part], number: int, case: Case) -> None:
    """With one part made of nothing, or with everything else open, no minute is worse."""
    place = MountPlace(name="x", parts=tuple(parts))
    opened = replace(place, elsewhere="open")
    assert no_better(by_heading(mask_of(place), case), by_heading(mask_of(opened), case))
    if number < len(parts):
        freed = [replace(part, material="open") if k == number else part for k, part in enumerate(parts)]
        cleared = replace(place, parts=tuple(freed))
        assert no_better(by_heading(mask_of(place), case), by_heading(mask_of(cleared), case))


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 23), st.integers(0, 23), CASES)
def test_turning_mask_and_heading_together_changes_nothing(turn: int, heading: int, case: Case) -> None:
    """A mask turned clockwise in a vehicle that is turned back by as much is the same sky."""
    step = 15 // CELL_DEG
    straight = by_heading(mask_of(DASH), case, (heading * 15.0,))[0]
    turned = by_heading(mask_of(DASH).turned(turn * step), case, ((heading - turn) * 15.0 % 360,))[0]
    assert (turned.hdop, turned.used, turned.good) == (straight.hdop, straight.used, straight.good)


def test_the_shared_work_is_that_of_each_heading_alone() -> None:
    """All headings at once give what each gives by itself, and what is worked plainly from the satellites used."""
    mask = mask_of(MountPlace(name="x", parts=(WINDSCREEN, LEFT_WINDOW)))
    together = by_heading(mask)
    for day in together[::5]:
        alone = by_heading(mask, headings=(day.heading_deg,))[0]
        assert alone == day
    allowed = usable(mask, Case.USUAL)
    for minute, cells in enumerate(thin_sky()):
        seen = [cell.direction for cell in cells if allowed[cell.row][cell.column]]
        found = dop(seen)
        assert together[0].used[minute] == len(seen)
        assert math.isclose(together[0].hdop[minute], math.inf if found is None else found.hdop, rel_tol=1e-9)


def test_a_heading_between_two_columns_is_taken_to_the_nearer() -> None:
    """31° is taken as 30°, of which the mask's columns are made."""
    assert by_heading(mask_of(DASH), headings=(31.0,))[0].hdop == by_heading(mask_of(DASH), headings=(30.0,))[0].hdop


def test_a_fix_must_be_good_enough() -> None:
    """On the roof every minute is good by PDOP 6; by HDOP 0.5, which no sky gives, none is."""
    allowed = usable(mask_of(ROOF), Case.USUAL)
    good, none = (
        days(thin_sky(), allowed, headings=[0.0], quality=quality)[0] for quality in (QUALITY, Quality(math.inf, 0.5))
    )
    assert (good.good, none.good) == (len(thin_sky()), 0)
