"""A key script as two strips: what the hand did, what the unit said."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.strips import HAND, UNIT

from backprobe.drawings.turns import Mark, Stretch, Turned, Turns, described_turns, turns

GOOD = Turns(
    hand=HAND,
    unit=UNIT,
    turned=(Turned(200, 203, "on 3.0 s late"), Turned(700, 720, "off 20.0 s late")),
    by_hand=(Mark(850, "doors shut"),),
    ticks=tuple(Mark(t, f"08:{t // 60:02d}") for t in range(0, 900, 120)),
)


@pytest.mark.parametrize("width", [320, 760, 1200])
def test_words_keep_apart_and_inside(width: int, clashes: Any, outside: Any) -> None:
    """A healthy unit, at any width: every word is legible and within the picture."""
    svg = turns(GOOD, width=width)
    assert outside(svg) == []
    if width > 320:
        assert clashes(svg) == []


def test_marks_of_the_unit_hang_below_without_clashes(clashes: Any, outside: Any) -> None:
    """Events that nobody turned the key for, and a restart, close together."""
    odd = tuple(Mark(300 + 9 * n, f"{'on' if n % 2 else 'off'}: no ignition was turned") for n in range(5))
    svg = turns(Turns(hand=HAND, unit=UNIT, by_unit=(*odd, Mark(401, "restart")), ticks=GOOD.ticks))
    assert clashes(svg) == []
    assert outside(svg) == []


def test_a_position_without_room_flies_its_word_above() -> None:
    """The crank of two seconds: its word is there, with a lead; the strip moves down for it."""
    assert ">crank<" in turns(GOOD)
    long = Turns(hand=(Stretch(0, 900, "off", on=False),), unit=UNIT)
    heights = [float(ElementTree.fromstring(turns(content)).get("height", "0")) for content in (long, GOOD)]
    assert heights[1] == heights[0] + 14


def test_each_turn_has_a_line_to_its_report_or_a_cross() -> None:
    """Two lines in the accent on a healthy unit; a cross, and the words, where a turn was not reported."""
    assert turns(GOOD).count('stroke="#87370c"') == 2
    lost = Turns(hand=HAND, unit=UNIT, turned=(Turned(200, None, "on not reported"),))
    svg = turns(lost)
    assert svg.count('stroke="#87370c"') == 0
    assert "on not reported" in svg


def test_what_nobody_knows_has_a_broken_outline() -> None:
    """A unit that was not heard: no hatch, a dashed box."""
    svg = turns(Turns(hand=HAND, unit=(Stretch(0, 900, "no report"),)))
    assert svg.count("stroke-dasharray") == 1
    assert "no report" in svg


def test_the_picture_in_words() -> None:
    """What is seen is said: the positions, each report, and what was odd."""
    assert described_turns(GOOD) == (
        "The key: off, accessory, on, crank, running, off. The unit: on 3.0 s late; off 20.0 s late."
    )
    bare = Turns(hand=HAND[:1], unit=UNIT, by_unit=(Mark(4, "restart"),))
    assert described_turns(bare) == "The key: off. The unit: none to report; restart."


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.floats(0, 1e7, allow_nan=False), min_size=2, max_size=12, unique=True),
    st.lists(st.floats(0, 1e7, allow_nan=False), max_size=12),
)
def test_any_script_is_drawn(edges: list[float], marks: list[float]) -> None:
    """Well-formed, whatever the moments are."""
    edges.sort()
    hand = tuple(Stretch(a, b, "accessory", n % 2 == 0) for n, (a, b) in enumerate(pairwise(edges)))
    content = Turns(
        hand=hand,
        unit=(Stretch(edges[0], edges[-1], "on", on=True),),
        turned=tuple(Turned(at, at if n % 2 else None, "late") for n, at in enumerate(marks)),
        by_unit=tuple(Mark(at, "restart & <odd>") for at in marks),
        ticks=tuple(Mark(at, "08:00") for at in marks),
    )
    assert ElementTree.fromstring(turns(content)).tag.endswith("svg")
