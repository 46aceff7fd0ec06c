"""Where the unit sits."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import (
    SEAT,
    told,
    verdicts,
)

from backprobe.findings import Verdict


def test_the_mount_and_the_windscreen():
    """A unit that rattles fails; on the windscreen 216 mm from the top are allowed, 217 mm are not."""
    assert verdicts(told(mount=replace(SEAT, quiet=False)))["mount_place"] is Verdict.FAILS
    assert verdicts(told(mount=replace(SEAT, place="beside the air bag")))["mount_place"] is Verdict.FAILS
    screen = replace(SEAT, windscreen=True, in_sight=False)
    assert verdicts(told(mount=replace(screen, top_mm=216.0)))["mount_windscreen"] is Verdict.HOLDS
    assert verdicts(told(mount=replace(screen, top_mm=217.0)))["mount_windscreen"] is Verdict.FAILS
    assert verdicts(told(mount=replace(screen, top_mm=100.0, in_sight=True)))["mount_windscreen"] is Verdict.FAILS
