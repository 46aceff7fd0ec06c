"""The figures of a cab that nobody has measured."""

from __future__ import annotations

from itertools import pairwise

import pytest

from backprobe.evidence.mount_sheet import Side
from backprobe.findings import Standing
from backprobe.limits.cab import BASIS, NEAR_MM, RAKE_DEG, SEATS, WINDSCREEN_MM, Span


def test_they_call_themselves_our_own_model() -> None:
    """No source gives such figures, and that is said."""
    assert BASIS.standing is Standing.MODEL


@pytest.mark.parametrize("spans", [NEAR_MM, RAKE_DEG], ids=["near", "rake"])
def test_choices_leave_no_gap_between_them(spans: dict[str, Span]) -> None:
    """A hand ends where a forearm begins: 220 mm. What lies between two choices is in one of them."""
    in_order = sorted(spans.values(), key=lambda span: span.value)
    for span in in_order:
        assert span.least < span.value < span.most
    for lower, upper in pairwise(in_order):
        assert lower.most >= upper.least


def test_each_rake_has_a_height_of_its_windscreen() -> None:
    """What is asked of the rake settles the upper edge, too."""
    assert set(WINDSCREEN_MM) == set(RAKE_DEG)


def test_a_seat_has_at_most_one_wall_on_a_side() -> None:
    """A choice for a side is about one wall; a seat beneath a panel has the panel above it."""
    for seat in SEATS.values():
        sides = [wall.side for wall in seat.walls]
        assert len(sides) == len(set(sides))
        assert not seat.sunk or Side.ABOVE in sides
