"""Leads that were not used: named, cut to lengths of their own, insulated, tied back; by keys, never by wording."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import CAPPED, GOOD, UNIT, built, found

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Verdict
from backprobe.stages.join.wiring_case import WiringCase

SIREN = Lead(name="siren", purpose=Purpose.OUTPUT, mm2=0.35)


def two(door: Joint, siren: Joint) -> WiringCase:
    """A job with two leads that were not used."""
    case = built(door)
    sheet = replace(case.sheet, joints=(*case.sheet.joints, siren))
    return replace(case, unit=replace(UNIT, leads=(*UNIT.leads, SIREN)), sheet=sheet)


def test_each_unused_lead_has_its_finding():
    """Cut to 60 mm, capped, tied back."""
    door = found(GOOD)["join_door_unused"]
    assert door.verdict is Verdict.HOLDS
    assert door.because.startswith("cut to 60 mm, capped, tied back: insulated")


@pytest.mark.parametrize(("key", "words"), [("capped", "its end is bare"), ("tied_back", "it hangs loose")])
def test_a_bare_or_loose_end_fails(key: str, words: str):
    """Each by its own key, whatever the text says."""
    bad = found(built(replace(CAPPED, end="capped and tied back", **{key: False})))["join_door_unused"]
    assert (bad.verdict, bad.because) == (Verdict.FAILS, words)


def test_words_alone_are_not_enough():
    """'capped and tied back' in the text says nothing that a check could rely on."""
    case = built(Joint(lead="door", end="capped and tied back"))
    assert "join_door_unused" not in found(case)
    assert "of the unused 'door' capped, tied_back" in found(case)["join_inputs_told"].because


def test_two_ends_of_one_length_can_meet():
    """60 and 64 mm are one length, 60 and 90 are not; with another beside it the length must be said."""
    siren = replace(CAPPED, lead="siren", cut_mm=64.0)
    meet = found(two(CAPPED, siren))
    assert meet["join_door_unused"].verdict is Verdict.FAILS
    assert "cut to 64 mm as 'door' to 60: their ends can meet" in meet["join_siren_unused"].because
    apart = found(two(CAPPED, replace(siren, cut_mm=90.0)))
    assert {apart[f"join_{name}_unused"].verdict for name in ("door", "siren")} == {Verdict.HOLDS}
    assert "of the unused 'siren' cut_mm" in found(two(CAPPED, replace(siren, cut_mm=None)))["join_inputs_told"].because
