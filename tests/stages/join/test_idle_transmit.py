"""The unit's supply seen idle and transmitting: the resistance of its whole way, without a meter at it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.wiring import GOOD, UNIT, found

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.findings import Finding, Standing, Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.join.idle_transmit import STEP_ID
from backprobe.stages.join.wiring_case import WiringCase
from backprobe.stages.prove.supply import supply_of

TALKS = replace(UNIT, supply=replace(UNIT.supply, idle_mA=50, transmit_mA=550))  # a step of 0.5 A


def seen(idle_V: float, transmit_V: float, *, count_V: float = 0.001, unit: object = TALKS) -> WiringCase:
    """The good case with its supply seen twice."""
    pair = SupplyPair(idle_V, transmit_V, count_V)
    return replace(GOOD, unit=unit, sheet=replace(GOOD.sheet, supply_pair=pair))


def step(case: WiringCase) -> Finding:
    """The finding on it."""
    return found(case)[STEP_ID]


def test_the_step_gives_the_resistance_with_its_uncertainty():
    """86 mV at 0.5 A are 172 mΩ. ±2 × 1 mV × √(2/3) = 1.63 mV and ±10 % of the step: 153 to 195 mΩ. 0.172 V at 1 A."""
    good = step(seen(12.600, 12.514))
    assert (good.verdict, good.value) == (Verdict.HOLDS, 0.172)
    assert (good.low, good.high) == (pytest.approx(84.367 / 0.55 / 1000, abs=6e-4), pytest.approx(0.195, abs=6e-4))
    assert "86 mV, which is 172 mΩ (153 to 195)" in good.because
    assert "by what was read and by the leads it should be 171 mΩ" in good.because  # 134.2 + 37 of the tap


def test_the_limit_is_that_of_the_proof():
    """The drop that installers allow a supply under a load of 1 to 2 A, taken at 1 A."""
    rule = step(seen(12.6, 12.5)).limit
    assert rule is not None
    assert (rule.value, rule.standing) == (0.3, Standing.COMMON_PRACTICE)
    pair = SupplyPair(12.6, 12.4, 0.001)
    proof = supply_of((), pair=pair, sheet=TALKS, limit=limit("supply_loaded_drop", system_V=12))
    assert (proof.verdict, step(seen(12.6, 12.4)).verdict) == (Verdict.FAILS, Verdict.FAILS)
    assert proof.loop_ohm == pytest.approx(step(seen(12.6, 12.4)).value)


def test_a_bad_joint_shows():
    """200 mV at 0.5 A are 400 mΩ: too much. 130 mV are 260: inside the limit, but more than anything that was read."""
    bad = step(seen(12.600, 12.400))
    assert bad.verdict is Verdict.FAILS
    assert bad.next is not None
    assert "read the drop across tap, fuse, each joint and ground" in bad.next
    odd = step(seen(12.600, 12.470))
    assert odd.verdict is Verdict.THIN
    assert "something on the way resists more than that" in odd.because


def test_a_coarse_display_says_little():
    """0.1 V at 0.5 A with a count of 0.1 V: anything from nothing to 0.58 V at 1 A."""
    coarse = step(seen(12.6, 12.5, count_V=0.1))
    assert (coarse.verdict, coarse.low) == (Verdict.THIN, 0.0)
    assert coarse.next is not None
    assert "one more digit" in coarse.next


def test_a_supply_that_rose_says_nothing():
    """The alternator came in between: open, and read again."""
    rose = step(seen(12.50, 12.90, count_V=0.01))
    assert rose.verdict is Verdict.OPEN
    assert "rose" in rose.because


def test_without_the_pair_nothing_is_said_and_without_the_step_it_is_asked_for():
    """Nobody must see it twice; who did needs the unit's currents."""
    assert STEP_ID not in found(GOOD)
    case = seen(12.6, 12.5, unit=UNIT)
    assert STEP_ID not in found(case)
    assert "idle_mA and transmit_mA, in the unit's sheet" in found(case)["join_wire_told"].because


def test_a_fleet_may_allow_less():
    """0.1 V at 1 A by its policy."""
    case = replace(seen(12.600, 12.514), policy=FleetPolicy(file="fleet.toml", loaded_drop_V=0.1))
    assert step(case).verdict is Verdict.FAILS


@given(st.floats(0, 1), st.floats(0, 1))
def test_a_larger_change_is_never_better(change_V: float, more_V: float):
    """By verdict and by value."""
    order = [Verdict.HOLDS, Verdict.THIN, Verdict.FAILS]
    small, large = step(seen(12.6, 12.6 - change_V)), step(seen(12.6, 12.6 - change_V - more_V))
    assert order.index(large.verdict) >= order.index(small.verdict)
    assert small.value is not None
    assert large.value is not None
    assert large.value >= small.value
