"""The unit's inputs against the signals' real levels, and their proof by a report."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.wiring import GOOD, MADE, TOLD, UNIT, built, found

from backprobe.evidence.join_sheet import Drop, SignalLevels
from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose, UnitInput
from backprobe.findings import Finding, Verdict

ON_WHITE = Joint(lead="door", wire="White", method=Method.CRIMPED_BUTT, **MADE)
REPORTED = {"reported_on": "2026-03-31T08:12:00Z", "reported_off": "2026-03-31T08:14:00Z"}


def at(**level: object) -> dict[str, Finding]:
    """The findings with these levels at the door input, which is off up to 1.0 V and on from 4.0 V."""
    case = built(ON_WHITE)
    levels = (SignalLevels(lead="door", **level),)
    return found(replace(case, sheet=replace(case.sheet, join=replace(TOLD, levels=levels))))


def test_an_input_is_held_against_its_thresholds():
    """Active low: 0.2 V when on, at most 1.0 V; 12.3 V when off, at least 4.0 V. A lamp's 2.4 V is neither."""
    good = at(on_V=0.2, off_V=12.3)
    assert (good["join_door_low"].verdict, good["join_door_high"].verdict) == (Verdict.HOLDS, Verdict.HOLDS)
    assert good["join_door_high"].margin == pytest.approx(8.3)
    assert at(on_V=2.4, off_V=12.3)["join_door_low"].verdict is Verdict.FAILS
    assert "active low" in good["join_door_low"].because


def test_levels_that_nobody_read_are_asked_for():
    """All of them, or the one that is lacking."""
    assert "[[input]] of 'door': on_V and off_V" in found(built(ON_WHITE))["join_inputs_told"].because
    assert "of 'door' off_V, or floats_off" in at(on_V=0.2)["join_inputs_told"].because
    assert "of 'door' on_V" in at(off_V=12.3)["join_inputs_told"].because


def test_a_diode_takes_its_part_of_the_level():
    """12.0 V behind a diode are 11.4, 11.0 to 11.7; 4.4 V are 3.8, not on for sure. A low 0.2 V is 0.8, up to 1.2."""
    high = at(on_V=12.0, off_V=0.0, sources=("A", "B"), isolation="diode")["join_door_high"]
    assert (high.verdict, high.value) == (Verdict.HOLDS, 11.4)
    assert at(on_V=4.4, off_V=0.0, sources=("A", "B"), isolation="diode")["join_door_high"].verdict is Verdict.FAILS
    low = at(on_V=0.2, off_V=12.0, sources=("A", "B"), isolation="diode")["join_door_low"]
    assert (low.verdict, low.value) == (Verdict.THIN, 0.8)
    assert "0.3 to 1 V go in the diode" in low.because


def test_a_poor_ground_takes_margin():
    """170 mΩ at 1.2 A lift the unit's ground by 0.2 V: a level of 4.1 V is no longer sure to be on."""
    case = built(ON_WHITE)
    levels = (SignalLevels(lead="door", on_V=4.15, off_V=0.0),)

    def with_ground(drop: Drop) -> Verdict:
        told = replace(TOLD, levels=levels, ground=drop)
        return found(replace(case, sheet=replace(case.sheet, join=told)))["join_door_high"].verdict

    assert with_ground(Drop(14, 2)) is Verdict.HOLDS
    assert with_ground(Drop(340, 2)) is Verdict.THIN


def test_an_input_is_proven_by_reports_of_its_change():
    """On and off again; one way alone is not enough, nor is one time for both."""
    assert at(on_V=0.2, off_V=12.3, **REPORTED)["join_door_proof"].verdict is Verdict.HOLDS
    assert at(on_V=0.2, off_V=12.3)["join_door_proof"].verdict is Verdict.OPEN
    half = at(on_V=0.2, off_V=12.3, reported_on="2026-03-31T08:12:00Z")["join_door_proof"]
    assert (half.verdict, half.because) == (Verdict.OPEN, "seen one way only")
    same = at(on_V=0.2, off_V=12.3, reported_on="2026-03-31T08:12:00Z", reported_off="2026-03-31T08:12:00Z")
    assert same["join_door_proof"].verdict is Verdict.OPEN


def test_the_ignition_is_an_input_too_where_its_levels_are_given():
    """12.4 V against 7.0; without levels nothing is asked: the probe has them."""
    ignition = Lead(name="ign", purpose=Purpose.IGNITION, mm2=0.5)
    entry = UnitInput(name="ign", low_most_V=3.0, high_least_V=7.0, debounce_s=2.0)
    unit = replace(UNIT, leads=(*UNIT.leads, ignition), inputs=(*UNIT.inputs, entry))
    joint = Joint(lead="ign", wire="Violet", method=Method.FUSE_TAP, fuse_A=1.0, length_m=2.0, **MADE)
    sheet = replace(GOOD.sheet, joints=(*GOOD.sheet.joints, joint))
    levels = (SignalLevels(lead="ign", on_V=12.4, off_V=0.0),)
    case = replace(GOOD, unit=unit, sheet=replace(sheet, join=replace(TOLD, levels=levels)))
    assert found(case)["join_ign_high"].verdict is Verdict.HOLDS
    assert "join_ign_high" not in found(replace(case, sheet=sheet))
    assert "join_ign_proof" not in found(case)


@given(st.floats(0, 14), st.floats(0, 14))
def test_a_higher_level_is_never_less_sure_to_be_on(volts: float, more: float):
    """More volts on an active-high input: never a worse verdict."""
    order = [Verdict.FAILS, Verdict.THIN, Verdict.HOLDS]
    less, higher = (at(on_V=v, off_V=-0.5)["join_door_high"].verdict for v in (volts, volts + more))
    assert order.index(higher) >= order.index(less)
