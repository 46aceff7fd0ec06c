"""How hot it gets at a joint."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import GOOD, ON_RED, built, found

from backprobe.evidence.joint import Method
from backprobe.findings import Finding, Standing, Verdict


def at(hottest_C: float, **changes: object) -> Finding:
    """The finding on the joint of the supply, so hot."""
    return found(built(replace(ON_RED, hottest_C=hottest_C, **changes)))["join_power_heat"]


def test_insulation_has_its_heat():
    """PVC of 105 °C: 105 °C are allowed, 106 are not; where nobody said anything nothing is judged."""
    assert at(105.0).verdict is Verdict.HOLDS
    hot = at(106.0)
    assert (hot.verdict, hot.limit is not None and hot.limit.value) == (Verdict.FAILS, 105.0)
    assert "join_power_heat" not in found(GOOD)


@pytest.mark.parametrize("method", [Method.TAP_CONNECTOR, Method.WRAPPED_SPLICE, Method.TWISTED_LEADS])
def test_some_methods_let_go_earlier(method: Method):
    """A clip or tape at 90 °C (common practice)."""
    loose = at(90.0, method=method)
    assert loose.verdict is Verdict.FAILS
    assert loose.limit is not None
    assert (loose.limit.value, loose.limit.standing) == (80.0, Standing.COMMON_PRACTICE)
    assert at(90.0).verdict is Verdict.HOLDS


def test_a_hot_joint_makes_its_lead_hot():
    """At 100 °C the wire carries less for good, and resists more, than at the 60 °C of the cab."""
    cool, hot = found(GOOD), found(built(replace(ON_RED, hottest_C=100.0)))
    name = "join_supply_wire_over_fuse"
    assert hot[name].value is not None
    assert cool[name].value is not None
    assert hot[name].value < cool[name].value
    assert hot["join_path_budget"].value > cool["join_path_budget"].value
    assert "at 100 °C" in hot[name].because
