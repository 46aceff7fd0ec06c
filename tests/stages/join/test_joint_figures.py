"""What was measured of a joint."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import ON_RED, POWER, UNIT, built, found

from backprobe.evidence.joint import Method
from backprobe.findings import Verdict


def test_a_crimp_that_pulled_out_fails():
    """88 N on 0.75 mm² where 18 AWG asks for 89 N."""
    assert found(built(replace(ON_RED, pull_N=88.0)))["join_power_pull"].verdict is Verdict.FAILS


def test_a_sleeve_does_not_hold_by_a_figure_from_memory():
    """8 mm: it is only said beside the joint. 4 mm: open until somebody looked it up."""
    sleeve = replace(ON_RED, method=Method.SOLDERED_SLEEVE, overlap_mm=8.0)
    long = found(built(sleeve))
    assert "join_power_overlap" not in long
    assert "8 mm of sleeve on each side (6 mm are from memory, unverified)" in long["join_power_made"].because
    short = found(built(replace(sleeve, overlap_mm=4.0)))["join_power_overlap"]
    assert short.verdict is Verdict.OPEN


def test_tape_is_held_to_a_published_figure():
    """One inch, 25.4 mm, on each side."""
    wrapped = replace(ON_RED, method=Method.WRAPPED_SPLICE, strip_mm=20.0)
    assert found(built(replace(wrapped, overlap_mm=25.4)))["join_power_overlap"].verdict is Verdict.HOLDS
    assert found(built(replace(wrapped, overlap_mm=25.0)))["join_power_overlap"].verdict is Verdict.FAILS


@pytest.mark.parametrize(
    ("mm2", "bare_mm", "verdict"),
    [
        *((0.75, 0.2, Verdict.FAILS), (0.75, 0.25, Verdict.HOLDS), (0.75, 1.25, Verdict.HOLDS)),
        *((0.75, 1.3, Verdict.FAILS), (0.5, 0.75, Verdict.HOLDS), (0.5, 0.8, Verdict.FAILS)),
    ],
)
def test_a_little_bare_wire_before_the_barrel(mm2: float, bare_mm: float, verdict: Verdict):
    """At least 0.25 mm; at most 0.75 mm of 20 AWG and thinner, 1.25 mm of 18 AWG and thicker."""
    case = built(replace(ON_RED, bare_mm=bare_mm))
    case = replace(case, unit=replace(UNIT, leads=(replace(POWER, mm2=mm2), *UNIT.leads[1:])))
    assert found(case)["join_power_bare"].verdict is verdict


@pytest.mark.parametrize(("turns", "verdict"), [(2.0, Verdict.FAILS), (3.0, Verdict.HOLDS)])
def test_a_wrapped_splice_goes_round_three_times(turns: float, verdict: Verdict):
    """Two turns slip out."""
    wrapped = replace(ON_RED, method=Method.WRAPPED_SPLICE, strip_mm=20.0, overlap_mm=30.0, turns=turns)
    assert found(built(wrapped))["join_power_turns"].verdict is verdict


def test_the_drop_is_judged_at_the_units_peak():
    """30 mV at 0.6 A are 60 mV at the 1.2 A of the unit's peak: more than 50."""
    poor = found(built(replace(ON_RED, drop_mV=30.0, drop_A=0.6)))["join_power_joint_drop"]
    assert (poor.verdict, poor.value) == (Verdict.FAILS, 60.0)
    assert found(built(replace(ON_RED, drop_mV=3.0, drop_A=1.2)))["join_power_joint_drop"].verdict is Verdict.HOLDS
