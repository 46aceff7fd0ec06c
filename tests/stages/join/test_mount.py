"""Where the unit sits."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import SEAT, found, told

from backprobe.evidence.join_sheet import Mount
from backprobe.findings import Finding, Standing, Verdict

SCREEN = replace(SEAT, windscreen=True, in_sight=False, safety_technology=True)


def place(**changes: object) -> Finding:
    """The finding on a seat with these answers."""
    return found(told(mount=replace(SEAT, **changes)))["mount_place"]


def screen(**changes: object) -> Finding:
    """The finding on a unit on the windscreen with these answers."""
    return found(told(mount=replace(SCREEN, **changes)))["mount_windscreen"]


@pytest.mark.parametrize("key", ["solid", "reachable", "dry", "cool", "quiet", "tied"])
def test_each_answer_counts(key: str):
    """Each no is a fault of its own; nothing is made up where it was not said."""
    assert place(**{key: False}).verdict is Verdict.FAILS
    assert key in found(told(mount=replace(SEAT, **{key: None})))["join_mount_told"].because


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("clear_of_airbags", "into which an airbag unfolds"),
        ("clear_of_column", "steering column"),
        ("clear_of_pedals", "pedals"),
        ("clear_of_ducts", "duct"),
    ],
)
def test_what_it_must_be_clear_of(key: str, words: str):
    """One by one, also where all was said to be clear; `clear` alone answers all four."""
    found_bad = place(**{key: False})
    assert (found_bad.verdict, words in found_bad.because) == (Verdict.FAILS, True)
    each = dict.fromkeys(("clear_of_airbags", "clear_of_column", "clear_of_pedals", "clear_of_ducts"), True)
    assert "join_mount_told" not in found(told(mount=replace(SEAT, clear=None, **each)))
    lacking = found(told(mount=replace(SEAT, clear=None, **{**each, key: None})))
    assert key in lacking["join_mount_told"].because
    assert place(clear=False).verdict is Verdict.FAILS


def test_a_places_name_can_give_it_away():
    """Beside an airbag is no place; away from one is."""
    assert place(place="beside the air bag").verdict is Verdict.FAILS
    assert place(place="on the dash carrier, clear of the air bag").verdict is Verdict.HOLDS


def test_the_strip_at_the_windscreens_edge():
    """216 mm below the upper edge are allowed, 217 are not; 175 above the lower are, 176 are not; either will do."""
    assert screen(top_mm=216.0).verdict is Verdict.HOLDS
    assert screen(top_mm=217.0).verdict is Verdict.FAILS
    assert screen(bottom_mm=175.0).verdict is Verdict.HOLDS
    assert screen(bottom_mm=176.0).verdict is Verdict.FAILS
    both = screen(top_mm=600.0, bottom_mm=100.0)
    assert (both.verdict, both.value, both.margin) == (Verdict.HOLDS, 100.0, 75.0)


def test_the_line_of_sight_counts_wherever_it_sits():
    """Inside the strip, but in sight."""
    seen = screen(top_mm=100.0, in_sight=True)
    assert (seen.verdict, seen.value) == (Verdict.FAILS, None)


def test_what_is_remembered_of_the_rule_decides_nothing():
    """That such a unit is vehicle safety technology is from memory: open until somebody looked it up."""
    unsure = screen(top_mm=100.0, safety_technology=None)
    assert unsure.verdict is Verdict.OPEN
    assert "from memory" in unsure.because
    assert "at most 152 mm" in unsure.because
    assert unsure.limit is not None
    assert unsure.limit.standing is Standing.PUBLISHED
    assert screen(top_mm=300.0, safety_technology=None).verdict is Verdict.FAILS


def test_a_windscreen_without_its_measures_is_asked_for():
    """And a job that says nothing of the mount."""
    assert "top_mm or bottom_mm" in found(told(mount=SCREEN))["join_mount_told"].because
    assert "where the unit sits" in found(told(mount=None))["join_mount_told"].because
    assert found(told(mount=Mount()))["join_mount_told"].verdict is Verdict.OPEN
