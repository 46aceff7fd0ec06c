"""The vehicle's own fuse above the unit's."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import GOOD, ON_RED, built, found, told

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.join_sheet import Drop
from backprobe.evidence.joint import Method
from backprobe.findings import Standing, Verdict


def test_the_circuits_fuse_carries_both_loads():
    """15 A at 60 °C: 0.75 × 13 A = 9.75 A for 4 + 1.2; with 9 A on it there is no room."""
    good = found(GOOD)["join_vehicle_fuse"]
    assert (good.verdict, good.value) == (Verdict.HOLDS, 5.2)
    full = found(told(vehicle_load_A=9))["join_vehicle_fuse"]
    assert (full.verdict, full.value) == (Verdict.FAILS, 10.2)
    assert full.next is not None
    assert "never put a larger fuse into the vehicle's own holder" in full.next


def test_fuse_and_load_that_nobody_said_are_asked_for():
    """Both by their keys."""
    because = found(told(vehicle_fuse_A=None, vehicle_load_A=None))["join_fuse_told"].because
    assert "vehicle_fuse_A and vehicle_load_A" in because


def test_the_units_fuse_opens_first():
    """3 A below 15 A: within 7.5. 10 A below 15 A is too near."""
    good = found(GOOD)["join_selectivity"]
    assert (good.verdict, good.limit is not None and good.limit.value) == (Verdict.HOLDS, 7.5)
    near = found(built(replace(ON_RED, fuse_A=10.0)))["join_selectivity"]
    assert (near.verdict, near.limit is not None and near.limit.standing) == (Verdict.FAILS, Standing.COMMON_PRACTICE)


def test_what_the_gates_of_both_say_stands_beside():
    """Loop 134 + 37 mΩ: 70 A. 3 A of type C: 0.5 s × (10.5 / 70)² at the latest; 15 A: 0.08 s × (52.5 / 70)²."""
    good = found(GOOD)["join_selectivity"]
    assert "at a dead short of 70.1 A" in good.because
    assert f"the unit's opens within {0.5 * (10.5 / 70.1) ** 2:.3g} s" in good.because
    assert f"the vehicle's not before {0.08 * (52.5 / 70.1) ** 2:.3g} s" in good.because
    assert good.because.endswith("beyond its last gate by our own model")
    near = found(built(replace(ON_RED, fuse_A=7.5)))["join_selectivity"]
    assert near.because.endswith("their gates alone do not say which is first")


def test_a_short_that_opens_neither_is_said():
    """12 V behind 5 Ω drive 2.3 A: less than 135 % of 3 A."""
    weak = found(told(tap=Drop(5000, 1)))["join_selectivity"]
    assert weak.because.endswith("the unit's is not sure to open")


def test_the_type_of_the_vehicles_fuse_counts():
    """A slow type E of 30 A opens no earlier than a type C of 30 A."""

    def earliest_s(kind: str) -> float:
        because = found(told(vehicle_fuse_A=30, vehicle_fuse_type=kind))["join_selectivity"].because
        return float(because.rpartition("not before ")[2].split(" s")[0])

    assert earliest_s("E") > earliest_s("C")
    assert "not before" not in found(told(vehicle_fuse_A=10, vehicle_fuse_type="E"))["join_selectivity"].because


def test_a_fleet_may_ask_for_more():
    """Six times: 3 A below 15 A is too near; a third of the rating: 5.2 A are more than 4.3."""
    case = replace(GOOD, policy=FleetPolicy(file="fleet.toml", selective_times=6.0, fuse_load_part=1 / 3))
    assert found(case)["join_selectivity"].verdict is Verdict.FAILS
    load = found(case)["join_vehicle_fuse"]
    assert load.limit is not None
    assert (load.verdict, load.limit.value) == (Verdict.FAILS, pytest.approx(13.0 / 3, abs=0.01))


def test_a_fuse_tap_the_right_way_round_goes_past_the_vehicles_fuse():
    """Its two fuses stand side by side; the wrong way round they stand in a row."""
    tap = replace(ON_RED, method=Method.FUSE_TAP, right_way=True, tap_most_A=10.0)
    past = found(built(tap))
    assert "join_selectivity" not in past
    assert "join_vehicle_fuse" not in past
    assert found(built(replace(tap, right_way=False)))["join_selectivity"].verdict is Verdict.HOLDS
