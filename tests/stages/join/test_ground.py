"""The unit's ground under load, and where it was fixed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import (
    AT_STUD,
    TOLD,
    built,
    found,
    told,
    verdicts,
)

from backprobe.evidence.join_sheet import Drop
from backprobe.findings import Verdict


def test_a_poor_ground_fails_in_millivolts_and_says_what_the_unit_reads():
    """340 mV at 2 A are 170 mΩ; at 1.2 A they are 204 mV that the unit's supply reads low; 100 mV are allowed."""
    drop = found(told(ground=Drop(340, 2)))["join_ground_drop"]
    assert (drop.verdict, drop.value, drop.margin) == (Verdict.FAILS, 340.0, -240.0)
    assert "170 mΩ" in drop.because
    assert "204 mV low" in drop.because
    assert drop.next is not None
    assert drop.next.startswith("clean the ground")


def test_a_small_test_load_is_scaled_to_the_units_peak():
    """20 mV at 0.2 A look fine; at the peak of 1.2 A they are 120 mV."""
    assert found(told(ground=Drop(20, 0.2)))["join_ground_drop"].value == 120.0


@pytest.mark.parametrize(
    ("place", "verdict"),
    [
        ("seat belt anchor, left", Verdict.FAILS),
        ("airbag module bracket", Verdict.FAILS),
        ("fuel tank strap", Verdict.FAILS),
        ("brake pipe clip", Verdict.FAILS),
        ("painted cross member", Verdict.FAILS),
        ("door hinge", Verdict.FAILS),
        ("ECU ground stud", Verdict.FAILS),
        ("bolt of the pedal bracket", Verdict.HOLDS),
        ("painted cross member, bared", Verdict.HOLDS),
        ("factory ground stud G104", Verdict.HOLDS),
    ],
)
def test_where_not_to_ground(place: str, verdict: Verdict):
    """The place's own words decide; what nobody forbids holds."""
    assert found(built(replace(AT_STUD, place=place)))["join_ground_place"].verdict is verdict


def test_the_batterys_post_behind_a_negative_switch_is_no_ground():
    """With the switch open the unit would lose its ground or bridge the switch."""
    post = built(replace(AT_STUD, place="battery negative post"))
    assert found(post)["join_ground_place"].verdict is Verdict.HOLDS
    switched = replace(post, sheet=replace(post.sheet, join=replace(TOLD, switched_negative=True)))
    assert found(switched)["join_ground_place"].verdict is Verdict.FAILS


def test_a_self_tapping_screw_is_asked_what_it_met():
    """Not told is open, a loom fails, nothing holds."""
    assert verdicts(told(self_tapping=True))["join_ground_told"] is Verdict.OPEN
    assert verdicts(told(self_tapping=True, behind="the main loom"))["join_ground_screw"] is Verdict.FAILS
    assert verdicts(told(self_tapping=True, behind="nothing: no loom, no pipe"))["join_ground_screw"] is Verdict.HOLDS
