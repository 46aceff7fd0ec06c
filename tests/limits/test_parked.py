"""What a vehicle at rest is held against."""

from __future__ import annotations

from backprobe.findings import Side, Standing
from backprobe.limits.parked import ASLEEP, BALANCE


def test_each_limit_says_what_it_rests_on():
    """20 min from two workshop manuals; 0.1 V between two batteries is common practice."""
    assert (ASLEEP.value, ASLEEP.unit, ASLEEP.side, ASLEEP.standing) == (20, "min", Side.AT_LEAST, Standing.PUBLISHED)
    assert (BALANCE.value, BALANCE.unit, BALANCE.side) == (0.1, "V", Side.AT_MOST)
    assert BALANCE.standing is Standing.COMMON_PRACTICE
