"""Where and how the vehicle was tapped."""

from __future__ import annotations

from tests.samples.wiring import (
    found,
    told,
)

from backprobe.findings import Verdict


def test_a_leased_vehicle_is_not_cut():
    """A butt connector in a wire that must be given back as it was."""
    assert found(told(reversible=True))["join_supply_order"].verdict is Verdict.FAILS
