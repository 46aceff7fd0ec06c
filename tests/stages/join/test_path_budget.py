"""The whole way added up against the volts that may be lost on it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.wiring import AT_STUD, GOOD, ON_RED, UNIT, built, found, told

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.join_sheet import Drop
from backprobe.findings import Standing, Verdict
from backprobe.stages.join.path_budget import BUDGET_ID


def test_every_part_is_added_up():
    """134.2 mΩ at 1.2 A are 161 mV of the 200 + 100 that wire and ground may lose."""
    budget = found(GOOD)[BUDGET_ID]
    assert (budget.verdict, budget.value) == (Verdict.HOLDS, pytest.approx(161.0, abs=0.3))
    assert budget.limit is not None
    assert (budget.limit.value, budget.limit.standing) == (300.0, Standing.PUBLISHED)
    assert "lead 'power' 72.2 mV (45%), the 3 A fuse 39.5 mV (25%), lead 'ground' 36.1 mV (22%)" in budget.because
    assert "all else 4.8 mV; nobody read the joint of 'power', the joint of 'ground'" in budget.because
    assert "up to the tap the vehicle's own wiring takes 44.4 mV more" in budget.because
    assert "31.1 mΩ from memory, unverified: not used" in budget.because


def test_the_part_that_takes_most_is_the_one_to_look_at():
    """A ground of 170 mΩ takes 204 mV; a lead of 12 m, 361 mΩ, takes 433 mV."""
    poor = found(told(ground=Drop(340, 2)))[BUDGET_ID]
    assert poor.verdict is Verdict.FAILS
    assert poor.next == "look at the ground first, it takes 204 mV: clean, tighten or make it again"
    long = found(built(replace(ON_RED, length_m=12.0)))[BUDGET_ID]
    assert long.verdict is Verdict.FAILS
    assert long.next is not None
    assert long.next.startswith("look at lead 'power' first, it takes 433 mV: shorten it")


def test_what_is_only_unsure_is_read_first():
    """With 5.2 m the likely sum is inside; a ground that nobody read spoils it: read that."""
    case = built(replace(ON_RED, length_m=4.0))
    case = replace(case, sheet=replace(case.sheet, join=replace(case.sheet.join, ground=None)))
    unsure = found(case)[BUDGET_ID]
    assert unsure.verdict is Verdict.THIN
    assert unsure.next is not None
    assert unsure.next.startswith("read the drop across the ground under a known load")


def test_a_fleet_may_allow_less():
    """120 mV by its policy: 161 are too many."""
    tight = found(replace(GOOD, policy=FleetPolicy(file="fleet.toml", path_drop_mV=120)))[BUDGET_ID]
    assert (tight.verdict, tight.limit is not None and tight.limit.value) == (Verdict.FAILS, 120)


def test_without_a_peak_current_there_is_no_budget():
    """The unit's sheet lacks it; that is asked for with the crank."""
    bare = replace(GOOD, unit=replace(UNIT, supply=replace(UNIT.supply, peak_A=None)))
    assert BUDGET_ID not in found(bare)
    assert "the unit's peak current" in found(bare)["join_wire_told"].because


@given(st.floats(0.1, 20), st.floats(0, 20), st.floats(0, 400), st.floats(0, 400))
def test_longer_and_worse_never_loses_less(length_m: float, more_m: float, drop_mV: float, more_mV: float):
    """A longer lead, a worse ground: never a better verdict."""

    def at(metres: float, mV: float) -> tuple[int, float]:
        case = built(replace(ON_RED, length_m=metres))
        case = replace(case, sheet=replace(case.sheet, join=replace(case.sheet.join, ground=Drop(mV, 2))))
        seen = found(case)[BUDGET_ID]
        assert seen.value is not None
        return [Verdict.HOLDS, Verdict.THIN, Verdict.FAILS].index(seen.verdict), seen.value

    assert at(length_m + more_m, drop_mV + more_mV) >= at(length_m, drop_mV)


def test_the_ground_leads_joint_is_on_the_way():
    """20 mV at 2 A across the ring: 12 mV at the unit's 1.2 A, in the place of the 2.4 taken before."""
    before, after = found(GOOD)[BUDGET_ID], found(built(replace(AT_STUD, drop_mV=20.0, drop_A=2.0)))[BUDGET_ID]
    assert before.value is not None
    assert after.value == pytest.approx(before.value - 2.4 + 12.0, abs=0.11)
