"""The unit's supply through a crank."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import (
    GOOD,
    UNIT,
    found,
)

from backprobe.findings import Verdict


def test_a_unit_that_resets_is_found_by_time():
    """Level I at 12 V stays for more than a second below 9.6 V; the unit rides through 20 ms."""
    hungry = replace(UNIT, supply=replace(UNIT.supply, least_V=9.6))
    reset = found(replace(GOOD, unit=hungry))["join_unit_reset"]
    assert reset.verdict is Verdict.FAILS
    assert reset.limit is not None
    assert reset.limit.value == 0.02
