"""A fleet's own limits tighten, and never loosen."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import GOOD, found, told

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.evidence.join_sheet import Drop
from backprobe.findings import Verdict
from backprobe.stages.join.policy import tightened

FLEET = FleetPolicy(file="fleet.toml", ground_drop_mV=20, wire_over_fuse=8, fuse_load_part=0.2, unit_margin_V=1)


def test_a_policy_makes_findings_worse_and_says_so():
    """30 mV at 2 A hold at 100 mV and fail at the fleet's 20 mV; 3 A × 8 is more than the wire carries."""
    case = told(ground=Drop(30, 2))
    assert found(case)["join_ground_drop"].verdict is Verdict.HOLDS
    strict = found(replace(case, policy=FLEET))
    drop = strict["join_ground_drop"]
    assert drop.verdict is Verdict.FAILS
    assert drop.limit is not None
    assert drop.limit.value == 20
    assert drop.limit.basis.startswith("fleet.toml, the fleet's own policy; without it 100 mV")
    assert strict["join_supply_wire_over_fuse"].verdict is Verdict.FAILS
    assert strict["join_supply_fuse_load"].verdict is Verdict.FAILS
    assert strict["join_unit_reset"].verdict is Verdict.FAILS


def test_a_looser_value_changes_nothing():
    """200 mV instead of 100 mV leave the finding as it was."""
    drop = found(GOOD)["join_ground_drop"]
    assert tightened(drop, 200.0, policy=FLEET) == drop
