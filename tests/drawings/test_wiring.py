"""The wiring drawing says in words and lines what was joined to what."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.lettering import text_width
from backprobe.drawings.wiring import NARROWEST, DrawnLead, Wiring, described, wiring
from backprobe.findings import Verdict

POWER = DrawnLead(
    lead="power, RD 0.75 mm²",
    wire="X12/4 RD 2.5 mm²",
    feeds="body-builder connector X12, permanent supply, fuse F12",
    joint="crimped butt splice, sleeve",
    fuse="3 A",
)
GROUND = DrawnLead(lead="ground, BK 0.75 mm²", wire=None, joint="ring terminal, cab floor stud", ground=True)
DOOR = DrawnLead(lead="door, WH 0.35 mm²", wire=None, joint="cut back, insulated, tied")
DEMO = Wiring(vehicle="Harrow & Vale Drover 7", unit="Lantern 2", leads=(POWER, GROUND, DOOR))


def said(svg: str) -> list[str]:
    """All lettering of a drawing."""
    return [node.text or "" for node in ElementTree.fromstring(svg).iter("{http://www.w3.org/2000/svg}text")]


def test_a_lead_shows_its_wire_joint_and_fuse():
    """What an installer would ask stands on the line."""
    words = said(wiring(DEMO))
    for expected in (POWER.lead, POWER.wire, POWER.joint, "fuse 3 A", GROUND.lead, GROUND.joint, DOOR.joint):
        assert expected in words


def test_the_words_for_those_who_cannot_see_it():
    """One sentence a lead: joined, grounded, not used."""
    assert described(DEMO) == (
        "power, RD 0.75 mm² is joined to X12/4 RD 2.5 mm² by crimped butt splice, sleeve behind a fuse of 3 A. "
        "ground, BK 0.75 mm² is grounded: ring terminal, cab floor stud. "
        "door, WH 0.35 mm² is not used: cut back, insulated, tied."
    )


def test_a_wire_without_a_fuse_is_said_to_have_none():
    """A missing fuse is never passed over in silence."""
    bare = DrawnLead(lead="power", wire="Red")
    assert "without a fuse" in described(Wiring(vehicle="v", unit="u", leads=(bare,)))


def test_a_fuse_in_the_ground_is_drawn_for_all_to_see():
    """It does not belong there, so it is not left out."""
    fused = Wiring(vehicle="v", unit="u", leads=(DrawnLead(lead="ground", wire=None, fuse="3 A", ground=True),))
    assert "fuse 3 A" in said(wiring(fused))
    assert described(fused) == "ground is grounded: place not stated, behind a fuse of 3 A."


def test_a_lead_that_nobody_has_told_of_gets_no_cap():
    """A capped end is work that was done; where nothing is known the drawing asks."""
    forgotten = Wiring(vehicle="v", unit="u", leads=(DrawnLead(lead="door", wire=None),))
    assert described(forgotten) == "door: not told where it went."
    assert {"?", "not told where it went"} <= set(said(wiring(forgotten)))
    assert "?" not in said(wiring(DEMO))


def test_nothing_joined_gets_a_picture_that_says_so():
    """A job that has not come so far still has its drawing."""
    assert "No lead was joined yet." in said(wiring(Wiring(vehicle="v", unit="u", leads=())))


def test_each_lead_adds_one_row():
    """The picture is as high as its rows."""
    heights = [
        float(ElementTree.fromstring(wiring(Wiring(vehicle="v", unit="u", leads=(POWER,) * n))).get("height", "0"))
        for n in (1, 2, 5)
    ]
    assert heights[1] - heights[0] == (heights[2] - heights[1]) / 3


@given(
    texts=st.lists(
        st.text(alphabet=st.characters(exclude_categories=["Cs", "Cc"]), max_size=60), min_size=6, max_size=6
    ),
    kind=st.sampled_from(["wire", "ground", "unused"]),
    width=st.sampled_from([NARROWEST, 360.0, 760.0]),
)
def test_whatever_the_words_nothing_runs_out_or_into_each_other(
    texts: list[str], kind: str, width: float, clashes: Callable, text_boxes: Callable
):
    """Long or strange names are cut, never drawn over each other or past the frame."""
    vehicle, unit, lead, wire, feeds, joint = texts
    drawn = DrawnLead(
        lead=lead, wire=wire if kind == "wire" else None, feeds=feeds, joint=joint, fuse="3 A", ground=kind == "ground"
    )
    svg = wiring(Wiring(vehicle=vehicle, unit=unit, leads=(drawn, POWER)), width=width)
    assert clashes(svg) == []
    assert all(box.left >= -0.5 and box.right <= width + 0.5 for box in text_boxes(svg) if box.text.strip())


@pytest.mark.parametrize("width", [320.0, 760.0])
def test_it_is_well_formed_at_any_width(width):
    """Phone and paper draw the same string."""
    assert ElementTree.fromstring(wiring(DEMO, width=width)).get("width") == f"{width:g}"


def test_a_lead_on_which_something_does_not_hold_is_marked():
    """By shape, word and reason; a lead on which all holds has no mark."""
    bad = replace(GROUND, verdict=Verdict.FAILS, remark="The ground under load: 340 mV, at most 100 mV")
    content = replace(DEMO, leads=(POWER, bad, DOOR))
    assert "fails: The ground under load: 340 mV, at most 100 mV" in said(wiring(content))
    assert described(content).count("Fails: The ground under load: 340 mV, at most 100 mV.") == 1
    assert len(wiring(content)) > len(wiring(DEMO))
    assert not any("fails" in words for words in said(wiring(DEMO)))


@pytest.mark.parametrize("width", [NARROWEST, 760.0])
def test_a_long_remark_is_cut_and_stays_clear_of_what_stands_beside_it(width: float):
    """On a phone as on paper: the mark's words end inside the drawing."""
    bad = replace(POWER, verdict=Verdict.OPEN, remark="what is not known, in many words, " * 5)
    words = said(wiring(replace(DEMO, leads=(bad,)), width=width))
    mark = next(text for text in words if text.startswith("open: "))
    assert mark.endswith("…")
    feeds = next(text for text in words if text.startswith("body"))
    assert text_width(mark, 10.5, bold=True) + text_width(feeds, 10.5) < width
