"""The two strips of a proof for a narrow page."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.strips import HAND, UNIT

from backprobe.drawings.turns import Mark, Stretch, Turned, Turns
from backprobe.drawings.turns_narrow import turns_narrow

SVG = "{http://www.w3.org/2000/svg}text"
ODD = Turns(
    hand=HAND,
    unit=UNIT,
    turned=(Turned(200, 203, "on 3.0 s late"), Turned(700, None, "off not reported")),
    by_hand=(Mark(850, "doors shut"),),
    by_unit=(*(Mark(300 + 9 * n, "on: no ignition was turned") for n in range(5)), Mark(401, "restart")),
    ticks=tuple(Mark(t, f"08:{t // 60:02d}") for t in range(0, 900, 120)),
)


def said(svg: str) -> list[str]:
    """All lettering of a picture."""
    return [node.text or "" for node in ElementTree.fromstring(svg).iter(SVG)]


@pytest.mark.parametrize("width", [320.0, 360.0, 412.0])
def test_words_keep_apart_inside_and_legible(width: float, clashes: Any, outside: Any) -> None:
    """No two words overlap, none runs out, all letters are 13.2 units (12 px on a page of 360 px) or more."""
    svg = turns_narrow(ODD, width=width)
    assert (clashes(svg), outside(svg)) == ([], [])
    assert min(float(node.get("font-size", "0")) for node in ElementTree.fromstring(svg).iter(SVG)) >= 13.2


def test_each_number_stands_in_the_picture_and_in_the_list() -> None:
    """What has no room in its place: off for 20 s, the crank, the doors; two turns; six marks of the unit."""
    words = said(turns_narrow(ODD, width=360.0))
    count = 4 + 2 + 6  # off, accessory, crank, the doors above; the turns; the marks below
    assert [words.count(str(n)) for n in range(1, count + 1)] == [2] * count
    assert str(count + 1) not in words
    for label in ("accessory", "crank", "doors shut", "on 3.0 s late", "off not reported", "restart", "running"):
        assert label in words


def test_a_turn_has_a_line_to_its_report_or_a_cross() -> None:
    """One line in the accent for the one report; the turn that was not reported has none."""
    assert turns_narrow(ODD, width=360.0).count('stroke="#87370c"') == 1


def test_what_nobody_knows_has_a_broken_outline() -> None:
    """A unit that was not heard: no hatch, a dashed box."""
    svg = turns_narrow(Turns(hand=HAND, unit=(Stretch(0, 900, "no report"),)), width=360.0)
    assert svg.count("stroke-dasharray") == 1
    assert "no report" in said(svg)


@settings(deadline=None, max_examples=60)
@given(marks=st.lists(st.floats(0, 900, allow_nan=False), max_size=12))
def test_any_moments_keep_apart(marks: list[float], clashes: Any, outside: Any) -> None:
    """Marks at any moment, all at once too."""
    content = Turns(
        hand=HAND,
        unit=UNIT,
        turned=tuple(Turned(at, at if n % 2 else None, "late") for n, at in enumerate(marks)),
        by_unit=tuple(Mark(at, "restart") for at in marks),
        ticks=tuple(Mark(at, "08:00") for at in sorted(marks)),
    )
    svg = turns_narrow(content, width=360.0)
    assert (clashes(svg), outside(svg)) == ([], [])
