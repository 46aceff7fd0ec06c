"""The volts that the unit may lose between tap and battery, and which part of the way takes how much of them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Verdict, judge
from backprobe.limits.joints import JOINTS
from backprobe.stages.given import said
from backprobe.stages.join.fuse_resistance import fuse_words
from backprobe.stages.join.lead_fuse import fuse_at
from backprobe.stages.join.measured import together
from backprobe.stages.join.path import Part, path_parts
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.tap_bound import OWN_SAG
from backprobe.stages.join.wiring_case import WiringCase, tap_limit, tap_ohm

SMALL = 0.05  # parts below this share of the whole are added up
BUDGET_ID = "join_path_budget"
WIRE, GROUND = JOINTS["wire_drop"], JOINTS["ground_drop"]
BUDGET = Limit(
    BUDGET_ID,
    WIRE.value + GROUND.value,
    "mV",
    Side.AT_MOST,
    "voltage-drop test under load: wire at most 0.2 V and ground at most 0.1 V, together",
    WIRE.standing,
)


def path_budget(case: WiringCase) -> Iterator[Finding]:
    """The finding on each supply lead whose length, size and peak current are known; what is missing is said before."""
    peak_A = case.unit.supply.peak_A
    for lead, joint in case.joined(Purpose.SUPPLY):
        parts = path_parts(case, lead, joint=joint, fuse=fuse_at(joint))
        if parts is not None and peak_A is not None:
            found = budget_of(parts, case=case, joint=joint, peak_A=peak_A)
            yield _by_policy(case, replace(found, what=_what(lead)))


def _what(lead: Lead) -> str:
    return f"What '{lead.name}' may lose on its whole way"


def budget_of(parts: Sequence[Part], *, case: WiringCase, joint: Joint, peak_A: float) -> Finding:
    """All parts added up at the unit's peak [mV], the largest first, and the one to look at."""
    seen = together(*(part.ohm for part in parts)).times(1000.0 * peak_A)
    low, value, high = (round(figure, 1) for figure in (seen.low, seen.likely, seen.high))
    verdict = judge(BUDGET, value, low=low, high=high)
    ordered = sorted(parts, key=lambda part: -part.ohm.likely)
    eaten = ", ".join(_shares(ordered, peak_A=peak_A, whole_mV=seen.likely))
    tap = _tap(case, peak_A=peak_A)
    return Finding(
        id=BUDGET_ID,
        stage=Stage.JOIN,
        what="What the unit may lose on its whole way",
        verdict=verdict,
        because="; ".join(part for part in (f"at {said(peak_A)} A {eaten}", _unread(parts), tap, _fuse(joint)) if part),
        next=_next(verdict, ordered, peak_A=peak_A),
        value=value,
        low=low,
        high=high,
        unit="mV",
        digits=1,
        limit=BUDGET,
    )


def _tap(case: WiringCase, *, peak_A: float) -> str:
    """What is lost before the tap, in words: that is not in the budget."""
    ohm = tap_ohm(case)
    if tap_limit(case) is None:
        return f"up to the tap the vehicle's own wiring takes {said(1000.0 * peak_A * ohm.likely)} mV more"
    return f"up to the tap the vehicle's own wiring takes at most {said(1000.0 * peak_A * ohm.high)} mV more; {OWN_SAG}"


def _shares(ordered: Sequence[Part], *, peak_A: float, whole_mV: float) -> Iterator[str]:
    """What each part takes, in millivolts and as a part of the whole; small parts together."""
    small_mV = []
    for part in ordered:
        mV = 1000.0 * peak_A * part.ohm.likely
        if mV < SMALL * whole_mV:
            small_mV.append(mV)
        else:
            yield f"{part.name} {said(mV)} mV ({mV / whole_mV if whole_mV else 0.0:.0%})"
    if small_mV:
        yield f"all else {said(math.fsum(small_mV))} mV"


def _unread(parts: Sequence[Part]) -> str:
    names = [part.name for part in parts if part.unread]
    return f"nobody read {', '.join(names)}: taken as usual" if names else ""


def _fuse(joint: Joint) -> str:
    fuse = fuse_at(joint)
    return "" if fuse is None else fuse_words(fuse)


def _next(verdict: Verdict, ordered: Sequence[Part], *, peak_A: float) -> str | None:
    """Where to look: what takes most where it is too much; what is most unsure where that alone spoils it."""
    if verdict is Verdict.HOLDS:
        return None
    unread = [part for part in ordered if part.unread]
    if verdict is Verdict.THIN and unread:
        widest = max(unread, key=lambda part: part.ohm.high - part.ohm.likely)
        return f"read the drop across {widest.name} under a known load, and write it down: {widest.unread}"
    first = ordered[0]
    takes = f"it takes {said(1000.0 * peak_A * first.ohm.likely)} mV"
    mend = "shorten it or take thicker wire" if first.name.startswith("lead") else "clean, tighten or make it again"
    return f"look at {first.name} first, {takes}: {mend}"


def _by_policy(case: WiringCase, found: Finding) -> Finding:
    return tightened(found, None if case.policy is None else case.policy.path_drop_mV, policy=case.policy)
