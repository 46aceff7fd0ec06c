"""The crank where no recording shows it: what a meter's MIN hold says of the tapped wires' lowest volts.

How long a dip lasts no MIN says. So where a wire dips below what is needed, whether the unit rides through it, or
its input is debounced long enough, stays open until somebody records it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.keys import Capture
from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge, worst
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.crank_volts import SHEET, THICKER, VOLT_DIGITS, VOLTS_ID, least_needed
from backprobe.stages.join.lead_fuse import fuse_at
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.wiring_case import CrankLow, WiringCase
from backprobe.stages.probe.crank_range import WHOLE_TROUGH_MS
from backprobe.stages.probe.slots import PROOF, Check

IGNITION_LOW_ID = "join_ignition_volts"
HIDES = "the starter's inrush may hide a deeper dip (range by our own model)"
HOW_LONG = "how long it stays below, no MIN hold says"
RECORD_SUPPLY = "record the supply wire through a crank with a fast recorder: that shows how deep and how long it dips"
RECORD_IGNITION = (
    "record the ignition wire through a crank with a fast recorder: that shows how deep and how long it dips"
)


def crank_low_of(check: Check | None, *, wire: str, hold_ms: float) -> CrankLow | None:
    """What the probe found of a wire in the crank, where a MIN hold or a fast recorder read it; else None.

    The range is the probe's own, so that both say the same of one reading.
    """
    if check is None or check.capture not in PROOF:
        return None
    value_V, low_V, high_V = check.value_V, check.low_V, check.high_V
    if value_V is None or low_V is None or high_V is None:
        return None
    by_hold = check.capture is Capture.MIN
    is_slow = by_hold and hold_ms > WHOLE_TROUGH_MS
    by = f"MIN hold of {hold_ms:g} ms" if by_hold else "lowest value of a fast recording"
    shown = f"{wire} in the crank: {value_V:.2f} V ({low_V:.2f} to {high_V:.2f}), {by}"
    because = f"{shown}: {HIDES}" if is_slow else shown
    return CrankLow(volts=Span(low_V, value_V, high_V), because=because, is_slow=is_slow)


def crank_low(case: WiringCase) -> Iterator[Finding]:
    """The findings on the tapped wires' lowest volts in the crank, where no recording shows them."""
    yield from _supply(case)
    yield from _ignition(case)


def _supply(case: WiringCase) -> Iterator[Finding]:
    """The unit's supply at its lowest, behind joint, fuse, lead and ground at its peak current."""
    low, peak_A = case.supply_low, case.unit.supply.peak_A
    if low is None or case.supply_crank is not None or peak_A is None:
        return
    for lead, joint in case.joined(Purpose.SUPPLY):
        ohm = to_unit_ohm(case, lead, joint=joint, fuse=fuse_at(joint))
        if ohm is None:
            continue
        least_V, basis = least_needed(case)
        limit = Limit(VOLTS_ID, least_V, "V", Side.AT_LEAST, basis, Standing.PUBLISHED)
        lost_V = ohm.times(peak_A)
        ends = (low.volts.low - lost_V.high, low.volts.likely - lost_V.likely, low.volts.high - lost_V.low)
        worst_V, likely_V, best_V = (max(0.0, end) for end in ends)
        because = (
            f"{low.because}; at {said(peak_A)} A {said(1000.0 * lost_V.likely)} mV are lost in joint, fuse, lead and "
            f"ground ({said(1000.0 * ohm.likely)} mΩ)"
        )
        found = _against(limit, Span(worst_V, likely_V, best_V), what="The unit's supply in a crank", because=because)
        yield _by_hold(found, low=low, rides=bool(case.unit.supply.holdup_ms), then=RECORD_SUPPLY)


def _ignition(case: WiringCase) -> Iterator[Finding]:
    """The ignition wire at its lowest: from there up its input is sure to be on."""
    low, entry = case.ignition_low, case.unit.ignition
    if low is None or case.ignition_crank is not None or entry is None or not list(case.joined(Purpose.IGNITION)):
        return
    limit = Limit(IGNITION_LOW_ID, entry.high_least_V, "V", Side.AT_LEAST, SHEET, Standing.PUBLISHED)
    because = f"{low.because}; below {entry.high_least_V:g} V the input is not sure to be on"
    found = _against(limit, low.volts, what="The ignition wire's lowest volts in a crank", because=because)
    yield _by_hold(found, low=low, rides=True, then=RECORD_IGNITION)


def _by_hold(found: Finding, *, low: CrankLow, rides: bool, then: str) -> Finding:
    """The finding as a hold allows it: a slow one proves nothing; too low is open where a short dip may do no harm."""
    if found.verdict is Verdict.FAILS and rides:
        return replace(found, verdict=Verdict.OPEN, because=f"{found.because}; {HOW_LONG}", next=then)
    verdict = worst((found.verdict, Verdict.THIN)) if low.is_slow else found.verdict
    if verdict is Verdict.HOLDS:
        return found
    return replace(found, verdict=verdict, next=THICKER if verdict is Verdict.FAILS else then)


def _against(limit: Limit, seen: Span, *, what: str, because: str) -> Finding:
    low, value, high = (round(figure, VOLT_DIGITS) for figure in (seen.low, seen.likely, seen.high))
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=what,
        verdict=judge(limit, value, low=low, high=high),
        because=because,
        value=value,
        low=low,
        high=high,
        unit=limit.unit,
        digits=VOLT_DIGITS,
        limit=limit,
    )
