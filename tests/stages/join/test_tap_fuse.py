"""Fuses at taps, and none in grounds."""

from __future__ import annotations

import pytest

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose, Supply, UnitSheet
from backprobe.findings import Side, Verdict
from backprobe.stages.join.tap_fuse import fused_grounds, tap_fuse

POWER = Lead(name="power", purpose=Purpose.SUPPLY, fuse_A=3.0)


@pytest.mark.parametrize(("fuse_A", "verdict"), [(2.0, Verdict.HOLDS), (3.0, Verdict.HOLDS), (5.0, Verdict.FAILS)])
def test_a_fuse_is_at_most_what_the_sheet_asks_for(fuse_A: float, verdict: Verdict):
    """3 A are asked for: 2 and 3 hold, 5 fail; value, limit and its basis are in the finding."""
    finding = tap_fuse(POWER, Joint(lead="power", wire="Red", fuse_A=fuse_A))
    assert finding.verdict is verdict
    assert (finding.value, finding.unit, finding.margin) == (fuse_A, "A", 3.0 - fuse_A)
    assert finding.limit is not None
    assert (finding.limit.side, finding.limit.basis) == (Side.AT_MOST, "the unit's sheet")
    assert (finding.next is None) == (verdict is Verdict.HOLDS)


def test_where_the_sheet_asks_for_none_any_fuse_holds():
    """Then there is no limit and no value to draw."""
    lead = Lead(name="power", purpose=Purpose.SUPPLY)
    finding = tap_fuse(lead, Joint(lead="power", wire="Red", fuse_A=10.0))
    assert (finding.verdict, finding.value, finding.limit) == (Verdict.HOLDS, None, None)


def test_no_fuse_fails_with_and_without_a_sheet_that_asks():
    """The size is named only where it is known."""
    joint = Joint(lead="power", wire="Red")
    for lead, words in ((POWER, "a fuse of 3 A into"), (Lead(name="power", purpose=Purpose.SUPPLY), "a fuse into")):
        finding = tap_fuse(lead, joint)
        assert finding.verdict is Verdict.FAILS
        assert words in (finding.next or "")


def test_every_ground_is_looked_at():
    """Two grounds, one of them with a fuse: that one is named."""
    grounds = (Lead(name="ground 1", purpose=Purpose.GROUND), Lead(name="ground 2", purpose=Purpose.GROUND))
    unit = UnitSheet(name="U", maker=None, supply=Supply(least_V=8, most_V=32), leads=(POWER, *grounds))
    said = {"ground 1": Joint(lead="ground 1", place="bolt"), "ground 2": Joint(lead="ground 2", fuse_A=1.0)}
    (finding,) = fused_grounds(said, unit)
    assert finding.what == "The ground lead 'ground 2'"
