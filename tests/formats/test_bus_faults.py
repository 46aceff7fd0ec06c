"""Counts and places of what was passed over."""

from __future__ import annotations

from backprobe.errors import Place
from backprobe.formats.bus_faults import MOST_PLACES, TORN_LINE, BusFaults


def test_all_are_counted_and_the_first_have_their_place() -> None:
    """A log of nothing but torn lines is counted in full and held in little."""
    faults = BusFaults("a.log")
    for number in range(1, 1001):
        faults.line(number, "x" * 500, expected="a frame")
    assert faults.counts == {TORN_LINE: 1000}
    assert [each.place.line for each in faults.places] == list(range(1, MOST_PLACES + 1))
    assert len(faults.places[0].place.text or "") == 80


def test_reasons_are_counted_apart() -> None:
    """Each reason has its own count."""
    faults = BusFaults("a.log")
    faults.add("clock_set_back", Place("a.log"), expected="times that rise")
    faults.line(3, "?", expected="a frame")
    assert dict(faults.counts) == {"clock_set_back": 1, TORN_LINE: 1}
