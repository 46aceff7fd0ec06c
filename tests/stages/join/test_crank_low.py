"""The crank by a meter's MIN hold, where nobody recorded it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import GOOD, ON_RED, UNIT, found

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.unit_sheet import Lead, Purpose, UnitInput
from backprobe.findings import Verdict
from backprobe.job.next_step import asks_for_crank
from backprobe.limits.lookup import limit
from backprobe.physics.span import Span
from backprobe.stages.join.crank_low import HIDES, RECORD_IGNITION, RECORD_SUPPLY, crank_low, crank_low_of
from backprobe.stages.join.crank_volts import NO_CRANK, THICKER
from backprobe.stages.join.wiring_case import CrankLow, WiringCase
from backprobe.stages.probe.slots import CRANK_LIMIT, Check, SlotName

UNRECORDED = replace(GOOD, supply_crank=None)
SLOW = CrankLow(volts=Span(9.03, 10.2, 10.27), because="Red in the crank", is_slow=True)
QUICK = replace(SLOW, volts=Span(10.13, 10.2, 10.27), is_slow=False)


def held(low: CrankLow, *, least_V: float = 7.5, holdup_ms: float | None = 20) -> WiringCase:
    """The good case with such a crank on its supply, for a unit that needs so much."""
    supply = replace(UNIT.supply, least_V=least_V, holdup_ms=holdup_ms)
    return replace(UNRECORDED, unit=replace(UNIT, supply=supply), supply_low=low)


def crank(capture: Capture) -> Check:
    """What the probe found of Red in the crank."""
    rule = limit(CRANK_LIMIT[SlotName.SUPPLY], system_V=12)
    return Check(Key.CRANK, rule, Verdict.HOLDS, 10.2, 9.03, 10.27, capture)


def test_what_asks_for_a_crank_is_known_as_such():
    """So that nobody is asked for one who may not crank."""
    assert asks_for_crank(RECORD_SUPPLY)
    assert asks_for_crank(RECORD_IGNITION)


def test_the_range_is_the_probes_own():
    """A hold of 100 ms may have missed the inrush, one of 1 ms has not; a display proves no minimum."""
    slow = crank_low_of(crank(Capture.MIN), wire="Red", hold_ms=100)
    assert slow == replace(SLOW, because=f"Red in the crank: 10.20 V (9.03 to 10.27), MIN hold of 100 ms: {HIDES}")
    quick = crank_low_of(crank(Capture.MIN), wire="Red", hold_ms=1)
    assert quick is not None
    assert (quick.is_slow, quick.because) == (False, "Red in the crank: 10.20 V (9.03 to 10.27), MIN hold of 1 ms")
    assert crank_low_of(crank(Capture.DISPLAY), wire="Red", hold_ms=1) is None
    assert crank_low_of(None, wire="Red", hold_ms=1) is None


def test_a_slow_hold_is_thin_at_best_and_nothing_is_asked_for_openly():
    """10.2 V less 1.2 A × (3 m × 30.1 + 32.9 + 4 + 7 mΩ) = 10.2 - 0.161 V: 10.04 V for a unit that needs 7.5 V."""
    volts = found(held(SLOW))["join_unit_volts"]
    assert volts.value == pytest.approx(10.04)
    assert volts.low is not None
    assert volts.low > 7.5
    assert (volts.verdict, volts.next) == (Verdict.THIN, RECORD_SUPPLY)
    assert "join_wire_told" not in found(held(SLOW))
    assert NO_CRANK in found(UNRECORDED)["join_wire_told"].because


def test_a_quick_hold_says_what_its_uncertainty_says():
    """10.04 V, read to 0.07 V: above 7.5 V it holds, about 10 V it is thin."""
    assert found(held(QUICK))["join_unit_volts"].verdict is Verdict.HOLDS
    assert found(held(QUICK, least_V=10.0))["join_unit_volts"].verdict is Verdict.THIN


def test_below_its_least_volts_the_hold_up_needs_a_recording():
    """10.04 V where 10.5 V are needed: with 20 ms of hold-up nobody can say; with none the unit resets."""
    rides = found(held(QUICK, least_V=10.5))["join_unit_volts"]
    assert (rides.verdict, rides.next) == (Verdict.OPEN, RECORD_SUPPLY)
    resets = found(held(QUICK, least_V=10.5, holdup_ms=None))["join_unit_volts"]
    assert (resets.verdict, resets.next) == (Verdict.FAILS, THICKER)


def test_a_recording_goes_before_a_hold():
    """Where the crank was recorded, the MIN says nothing more."""
    case = replace(GOOD, supply_low=SLOW)
    assert list(crank_low(case)) == []
    assert found(case) == found(GOOD)


@pytest.mark.parametrize(
    ("low", "verdict", "then"),
    [
        (QUICK, Verdict.HOLDS, None),
        (SLOW, Verdict.THIN, RECORD_IGNITION),
        (replace(QUICK, volts=Span(0.0, 0.03, 0.05)), Verdict.OPEN, RECORD_IGNITION),
    ],
)
def test_the_ignition_wire_at_its_lowest(low: CrankLow, verdict: Verdict, then: str | None):
    """From 7 V up its input is sure to be on; below, the debounce decides, and that needs a recording."""
    lead = Lead(name="ignition", purpose=Purpose.IGNITION, mm2=0.75)
    entry = UnitInput(name="ignition", low_most_V=3.0, high_least_V=7.0)
    unit = replace(UNIT, leads=(*UNIT.leads, lead), inputs=(*UNIT.inputs, entry))
    joint = replace(ON_RED, lead="ignition", wire="Violet")
    sheet = replace(GOOD.sheet, joints=(*GOOD.sheet.joints, joint))
    ignition = found(replace(GOOD, unit=unit, sheet=sheet, ignition_low=low))["join_ignition_volts"]
    assert (ignition.verdict, ignition.next) == (verdict, then)
