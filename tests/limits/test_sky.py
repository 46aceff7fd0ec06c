"""What a fix needs, and the open sky."""

from __future__ import annotations

from backprobe.findings import Side
from backprobe.limits.sky import OPEN_SKY, SKY


def test_limits_are_named_by_their_ids() -> None:
    """Each limit under its own id; the three needs stand in order."""
    assert all(each.id == name for name, each in SKY.items())
    needs = [SKY[name].value for name in ("cn0_least", "cn0_needed", "cn0_sure")]
    assert needs == sorted(needs) == [28, 30, 32]
    assert SKY["fix_share"].side is Side.AT_LEAST


def test_the_open_sky_is_enough_at_every_elevation() -> None:
    """The curve never falls with elevation, begins at the mask angle, and is above what is surely enough throughout."""
    elevations, levels = zip(*OPEN_SKY, strict=True)
    assert list(levels) == sorted(levels)
    assert (elevations[0], elevations[-1]) == (SKY["elevation_least"].value, 90)
    assert levels[0] > SKY["cn0_sure"].value
