"""The wiring of a whole job: what holds, what is asked for, and that worse wiring is never judged better."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.wiring import (
    DOOR,
    GOOD,
    GROUND,
    ON_RED,
    POWER,
    TOLD,
    UNIT,
    built,
    found,
)

from backprobe.evidence.join_sheet import Drop, JoinSheet
from backprobe.evidence.joint import Joint, Method
from backprobe.findings import Stage, Standing, Verdict, worst
from backprobe.stages.join.join import join_findings
from backprobe.stages.join.level_waveform import level_waveform
from backprobe.stages.join.wiring_case import WiringCase


def test_a_job_without_joints_is_not_asked():
    """Nothing is said before anything was joined."""
    assert join_findings(replace(GOOD, sheet=replace(GOOD.sheet, joints=()))) == ()


def test_a_good_job_holds_in_all_matters():
    """Also on level I, 8.0 V in its trough, less what 2 m, 1 m, fuse, joints and 7 mΩ of ground take at 1.2 A."""
    findings = found(GOOD)
    assert {name: each.verdict for name, each in findings.items() if each.verdict is not Verdict.HOLDS} == {}
    assert {each.stage for each in findings.values()} == {Stage.JOIN}
    volts = findings["join_unit_volts"]
    # 0.75 mm² at 60 °C: 26 mΩ/m × (234.5 + 60) / 254.5 = 30.09 mΩ/m, 3 m 90.3; fuse 31.1, joints 4, ground 7
    assert volts.value == pytest.approx(8.0 - 1.2 * (0.0903 + 0.0311 + 0.004 + 0.007), abs=0.006)


def test_nothing_told_is_asked_for_once_a_matter():
    """Twenty things missing are not twenty findings: at most one for each of the seven matters."""
    bare = tuple(Joint(lead=each.lead, wire=each.wire, place=each.place, end=each.end) for each in GOOD.sheet.joints)
    sheet = replace(GOOD.sheet, joints=bare, join=JoinSheet())
    findings = found(replace(GOOD, sheet=sheet, supply_crank=None))
    open_ = [each for each in findings.values() if each.verdict is Verdict.OPEN]
    assert 4 <= len(open_) <= 7
    assert all(each.id.endswith("_told") and each.because.startswith("not told: ") and each.next for each in open_)


RANK = {Verdict.HOLDS: 0, Verdict.THIN: 1, Verdict.OPEN: 2, Verdict.FAILS: 3}
FALLS = (
    "join_unit_volts",
    "join_unit_reset",
    "join_supply_fuse_clears",
    "join_supply_wire_over_fuse",
    "join_supply_fuse_load",
    "join_path_budget",
)


def rank(case: WiringCase) -> int:
    """How bad volts, wire and load are together."""
    return RANK[worst(each.verdict for each in join_findings(case) if each.id in FALLS)]


def wired(*, length_m: float, mm2: float, ambient_C: float, ground_mV: float) -> WiringCase:
    """The good case with another lead, heat and ground."""
    case = built(replace(ON_RED, length_m=length_m))
    unit = replace(UNIT, leads=(replace(POWER, mm2=mm2), GROUND, DOOR))
    join = replace(TOLD, ambient_C=ambient_C, ground=Drop(round(ground_mV), 2))
    return replace(case, unit=unit, sheet=replace(case.sheet, join=join))


@settings(max_examples=40, deadline=None)
@given(
    st.floats(0.1, 40),
    st.floats(1, 3),
    st.sampled_from([0.22, 0.35, 0.5, 0.75, 1.0, 1.5]),
    st.sampled_from([0.22, 0.35, 0.5, 0.75, 1.0, 1.5]),
    st.floats(-20, 100),
    st.floats(0, 25),
    st.floats(1, 900),
)
def test_longer_thinner_hotter_is_never_better(length_m, longer, one_mm2, other_mm2, ambient_C, hotter_K, ground_mV):
    """Nor is a worse ground: each for itself, and all together."""
    thick, thin = max(one_mm2, other_mm2), min(one_mm2, other_mm2)
    good = {"length_m": length_m, "mm2": thick, "ambient_C": ambient_C, "ground_mV": ground_mV}
    worse = {
        "length_m": min(100.0, length_m * longer),
        "mm2": thin,
        "ambient_C": ambient_C + hotter_K,
        "ground_mV": ground_mV * longer,
    }
    base = rank(wired(**good))
    for key, value in worse.items():
        assert base <= rank(wired(**{**good, key: value}))
    assert base <= rank(wired(**worse))


def test_nothing_holds_or_fails_by_a_figure_from_memory():
    """A sleeve, a level of the starting profile, a fuse that nobody read, a windscreen: shown, and open at most."""
    sleeve = replace(ON_RED, method=Method.SOLDERED_SLEEVE, strip_mm=8.0)
    cases = [built(replace(sleeve, overlap_mm=mm)) for mm in (3.0, 6.0, 12.0)]
    cases += [replace(GOOD, supply_crank=level_waveform(level, system_V=12)) for level in ("II", "III", "IV")]
    for case in cases:
        for each in join_findings(case):
            remembered = each.limit is not None and each.limit.standing is Standing.FROM_MEMORY
            assert not remembered or each.verdict is Verdict.OPEN, each.id
    assert all(found(case)["join_unit_reset"].verdict is Verdict.OPEN for case in cases[3:])
