"""A fuse tap in the vehicle's fuse box."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import AT_STUD, GOOD, ON_RED, built, found

from backprobe.evidence.joint import Method
from backprobe.findings import Verdict

TAP = replace(ON_RED, method=Method.FUSE_TAP, right_way=True, tap_most_A=10.0)


def test_a_tap_the_right_way_round_with_room_for_both():
    """4 A of the vehicle and 1.2 A of the unit through 10 A."""
    good = found(built(TAP))
    assert good["join_power_tap_way"].verdict is Verdict.HOLDS
    load = good["join_power_tap_load"]
    assert (load.verdict, load.value, load.margin) == (Verdict.HOLDS, 5.2, 4.8)


def test_the_wrong_way_round_puts_both_loads_on_the_vehicles_fuse():
    """It is turned."""
    wrong = found(built(replace(TAP, right_way=False)))["join_power_tap_way"]
    assert wrong.verdict is Verdict.FAILS
    assert wrong.next is not None
    assert "turn it round" in wrong.next


def test_too_much_in_all():
    """5.2 A through a tap for 5."""
    assert found(built(replace(TAP, tap_most_A=5.0)))["join_power_tap_load"].verdict is Verdict.FAILS


def test_what_was_not_said_of_a_tap_is_asked_for():
    """Both keys; of other joints neither."""
    because = found(built(replace(TAP, right_way=None, tap_most_A=None)))["join_joints_told"].because
    assert "right_way" in because
    assert "tap_most_A" in because
    assert "join_joints_told" not in found(GOOD)
    case = built(TAP)
    bare = replace(case, sheet=replace(case.sheet, join=replace(case.sheet.join, vehicle_load_A=None)))
    assert "vehicle_load_A" in found(bare)["join_joints_told"].because


def test_a_tap_in_a_ground_is_another_fault():
    """It is said of the joint."""
    bad = found(built(replace(AT_STUD, method=Method.FUSE_TAP)))
    assert "a fuse tap in a ground" in bad["join_ground_made"].because
    assert "join_ground_tap_way" not in bad
