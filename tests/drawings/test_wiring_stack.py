"""The wiring drawing for a narrow page can be read, and says all that the wide one says."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.drawings.wiring import DrawnLead, Wiring
from backprobe.drawings.wiring_stack import stacked_wiring
from backprobe.findings import Verdict

SVG = "{http://www.w3.org/2000/svg}text"
POWER = DrawnLead(
    lead="main supply behind the battery master switch, RDBU 2.5 mm², 12.5 m",
    wire="central electrics plug 1, chamber 14, RDYE 2.5 mm²",
    feeds="X12 cavity 4: body-builder connector X12, permanent supply, fuse F12",
    joint="crimped butt connector with a sleeve, 200 mm behind the connector",
    fuse="3 A",
)
GROUND = DrawnLead(lead="ground, BK 0.75 mm²", wire=None, joint="ring terminal, cab floor stud", ground=True)
DOOR = DrawnLead(lead="door contact of the left side door, WH 0.35 mm²", wire=None, joint="cut back, insulated, tied")
UNTOLD = DrawnLead(lead="second digital input for a tail lift, GN 0.35 mm²", wire=None)
BAD = replace(POWER, verdict=Verdict.FAILS, remark="The fuse of the ignition lead 'ignition': 15 A, at most 1 A")
SEVEN = Wiring(
    vehicle="Harrow & Vale Drover 7 with a refrigerated body, HV 4711",
    unit="Lantern 2 LN2-00417",
    leads=(POWER, GROUND, BAD, DOOR, UNTOLD, replace(GROUND, verdict=Verdict.OPEN, remark="not measured"), POWER),
)


def words(svg: str) -> str:
    """All lettering of a drawing, line after line."""
    return " ".join(node.text or "" for node in ElementTree.fromstring(svg).iter(SVG))


@pytest.mark.parametrize("width", [320.0, 360.0, 412.0])
def test_seven_leads_with_long_names_can_be_read(width: float, clashes: Any, outside: Any) -> None:
    """No two words overlap, none runs out, all letters are 13.5 units (12.3 px on a page of 360 px) or more."""
    svg = stacked_wiring(SEVEN, width=width)
    assert (clashes(svg), outside(svg)) == ([], [])
    assert min(float(node.get("font-size", "0")) for node in ElementTree.fromstring(svg).iter(SVG)) >= 13.5
    assert f'viewBox="0 0 {width:g} ' in svg


def test_nothing_is_cut() -> None:
    """Whatever a lead has to say stands there in full, in the order in which the current goes."""
    said = words(stacked_wiring(SEVEN, width=360.0))
    places = [said.index(part) for part in (POWER.wire or "", POWER.feeds, POWER.joint, "fuse 3 A", POWER.lead)]
    assert places == sorted(places)
    assert "frame ring terminal, cab floor stud ground, BK 0.75 mm²" in said
    assert f"{DOOR.joint} {DOOR.lead}" in said
    assert f"? not told where it went {UNTOLD.lead}" in said
    assert f"fails: {BAD.remark}" in said
    assert "open: not measured" in said
    assert "…" not in said


def test_a_fuse_in_the_ground_is_drawn_for_all_to_see() -> None:
    """It does not belong there, so it is not left out."""
    fused = Wiring(vehicle="v", unit="u", leads=(replace(GROUND, fuse="3 A"),))
    assert "fuse 3 A" in words(stacked_wiring(fused, width=360.0))


def test_nothing_joined_gets_a_picture_that_says_so() -> None:
    """A job that has not come so far still has its drawing."""
    assert "No lead was joined yet." in words(stacked_wiring(Wiring(vehicle="v", unit="u", leads=()), width=360.0))


@settings(deadline=None, max_examples=60)
@given(
    texts=st.lists(
        st.text(alphabet=st.characters(categories=["L", "N", "P", "Zs"]), max_size=60), min_size=6, max_size=6
    ),
    kind=st.sampled_from(["wire", "ground", "unused"]),
    verdict=st.sampled_from([None, *Verdict]),
)
def test_whatever_the_words_nothing_runs_out_or_into_each_other(
    texts: list[str], kind: str, verdict: Verdict | None, clashes: Any, outside: Any
) -> None:
    """Long or strange names are broken, never drawn over each other or past the frame."""
    vehicle, unit, name, wire, feeds, joint = texts
    drawn = DrawnLead(
        lead=name,
        wire=wire if kind == "wire" else None,
        feeds=feeds,
        joint=joint,
        fuse="3 A",
        ground=kind == "ground",
        verdict=verdict,
        remark=feeds,
    )
    svg = stacked_wiring(Wiring(vehicle=vehicle, unit=unit, leads=(drawn, POWER)), width=360.0)
    assert (clashes(svg), outside(svg)) == ([], [])
