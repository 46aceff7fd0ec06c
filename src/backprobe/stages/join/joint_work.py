"""How a joint was made: strip, overlap, strain relief, water, crimp, and where its method will not do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.crimps import PULL_BASIS, PULL_N
from backprobe.limits.joints import JOINTS
from backprobe.physics.wire import awg_area_mm2
from backprobe.stages.given import said
from backprobe.stages.join.fuse_tap import fuse_tap
from backprobe.stages.join.heat import heat
from backprobe.stages.join.matter import either
from backprobe.stages.join.measured import read_mV
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase

EVERY = (Purpose.SUPPLY, Purpose.IGNITION, Purpose.GROUND, Purpose.INPUT, Purpose.OUTPUT)
CRIMPED = (Method.CRIMPED_BUTT, Method.RING_TERMINAL)
INSULATED_OVER = (Method.WRAPPED_SPLICE, Method.SOLDERED_SLEEVE)
# common practice, no source: what a barrel or a splice takes
STRIP_MM = {
    Method.WRAPPED_SPLICE: (15.0, 30.0),
    Method.CRIMPED_BUTT: (5.0, 9.0),
    Method.SOLDERED_SLEEVE: (6.0, 12.0),
    Method.RING_TERMINAL: (4.0, 9.0),
    Method.TWISTED_LEADS: (12.0, 30.0),
}
AGAIN = "make the joint again"


def joint_work(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on every joint that was made, or what is missing for them."""
    for lead, joint in case.joined(*EVERY):
        if joint.method is None:
            yield f"method of '{lead.name}'"
            continue
        yield _made(lead, joint, method=joint.method)
        yield from _untold(lead, joint, method=joint.method)
        yield from fuse_tap(case, lead, joint=joint)
        if joint.overlap_mm is not None and joint.method in INSULATED_OVER:
            yield _overlap(lead, joint.overlap_mm, method=joint.method)
        if joint.pull_N is not None and joint.method in CRIMPED:
            yield from _pull(lead, joint.pull_N)
        if joint.hottest_C is not None:
            yield heat(case, lead, joint=joint, hottest_C=joint.hottest_C)
        if joint.drop_mV is not None and joint.drop_A is not None:
            yield _drop(case, lead, drop_mV=joint.drop_mV, at_A=joint.drop_A)


def _untold(lead: Lead, joint: Joint, *, method: Method) -> Iterator[str]:
    asked: list[tuple[str, object]] = [("strain_relief", joint.strain_relief), ("damp", joint.damp)]
    if method in STRIP_MM:
        asked.append(("strip_mm", joint.strip_mm))
    if method in INSULATED_OVER:
        asked.append(("overlap_mm", joint.overlap_mm))
    if method in CRIMPED:
        asked += [("pull_N of a sample crimp", joint.pull_N), ("tugged", joint.tugged)]
    lacking = [name for name, value in asked if value is None]
    if lacking:
        yield f"of '{lead.name}' {', '.join(lacking)}"


def _made(lead: Lead, joint: Joint, *, method: Method) -> Finding:
    return either(
        f"join_{lead.name}_made",
        f"The joint of '{lead.name}': {method.words}",
        faults=tuple(_faults(lead, joint, method=method)),
        fine="nothing that was written of it speaks against it (common practice, no source)",
        then=f"{AGAIN}: another method, or what is named put right",
    )


def _faults(lead: Lead, joint: Joint, *, method: Method) -> Iterator[str]:
    least_mm, most_mm = STRIP_MM.get(method, (0.0, 200.0))
    if joint.strip_mm is not None and not least_mm <= joint.strip_mm <= most_mm:
        yield f"{joint.strip_mm:g} mm stripped, {least_mm:g} to {most_mm:g} mm are usual"
    if joint.strain_relief is False:
        yield "no strain relief: the joint itself takes every pull"
    if joint.tugged is False and method in CRIMPED:
        yield "nobody tugged at it"
    if joint.damp:
        yield from _in_the_wet(joint, method=method)
    if method is Method.TAP_CONNECTOR and lead.purpose in (Purpose.SUPPLY, Purpose.GROUND):
        yield "a tap connector cuts strands and loosens with heat: not for a supply or a ground"
    if method is Method.TWISTED_LEADS and joint.wire and lead.purpose is not Purpose.GROUND:
        yield "a pair of leads is twisted together only where two leads of the unit share one joint"
    if method is Method.FUSE_TAP and lead.purpose is Purpose.GROUND:
        yield "a fuse tap in a ground"
    if method is Method.RING_TERMINAL and lead.purpose is not Purpose.GROUND and joint.fuse_A is None:
        yield "a ring terminal on a stud without a fuse at it"


def _in_the_wet(joint: Joint, *, method: Method) -> Iterator[str]:
    if method in (Method.TAP_CONNECTOR, Method.WRAPPED_SPLICE, Method.TWISTED_LEADS, Method.FUSE_TAP):
        yield f"water reaches it, and a {method.words} is not tight"
    if joint.drip_loop is False:
        yield "water runs along the lead into it: no drip loop"


def _overlap(lead: Lead, overlap_mm: float, *, method: Method) -> Finding:
    """Tape by a published figure; a sleeve's is from memory and only shown, so that falling short of it is open."""
    limit = JOINTS["tape_past_least" if method is Method.WRAPPED_SPLICE else "sleeve_past_least"]
    then = f"cover the joint anew: at least {limit.value:g} mm past the insulation on each side"
    found = _figure(
        f"join_{lead.name}_overlap", limit, figures=(overlap_mm, overlap_mm, overlap_mm), lead=lead, then=then
    )
    if limit.standing is Standing.FROM_MEMORY and found.verdict is Verdict.FAILS:
        return _as_open(found)
    return found


def _as_open(found: Finding) -> Finding:
    because = f"{found.because}; the figure is from memory and decides nothing alone"
    then = "look up in the sleeve's data sheet how far it must go over the insulation"
    return replace(found, verdict=Verdict.OPEN, because=because, next=then)


def _pull(lead: Lead, pull_N: float) -> Iterator[Finding | str]:
    area_mm2 = lead.mm2 if lead.mm2 is not None else None if lead.awg is None else awg_area_mm2(lead.awg)
    if area_mm2 is None:
        yield f"the size of '{lead.name}', in the unit's sheet"
        return
    gauge = gauge_at_least(area_mm2)
    basis = f"{PULL_BASIS.text}, {gauge} AWG"
    limit = Limit(f"join_{lead.name}_pull", PULL_N[gauge][0], "N", Side.AT_LEAST, basis, PULL_BASIS.standing)
    then = "crimp another sample with the right die, and pull again; then make the joint again"
    yield _figure(limit.id, limit, figures=(pull_N, pull_N, pull_N), lead=lead, then=then)


def gauge_at_least(area_mm2: float) -> int:
    """The thinnest gauge of the table with at least as much copper: its pull is no less than what is due.

    >>> gauge_at_least(0.75), gauge_at_least(0.35)
    (18, 22)
    """
    fits = [gauge for gauge in PULL_N if awg_area_mm2(gauge) >= area_mm2 * 0.93]
    return max(fits) if fits else min(PULL_N)


def _drop(case: WiringCase, lead: Lead, *, drop_mV: float, at_A: float) -> Finding:
    seen, peak_A = read_mV(drop_mV, case.meter), case.unit.supply.peak_A or at_A
    scale = max(1.0, peak_A / at_A)
    figures = (seen.low * scale, seen.likely * scale, seen.high * scale)
    then = f"{AGAIN}: it takes more than a joint should"
    found = _figure(f"join_{lead.name}_joint_drop", JOINTS["joint_drop"], figures=figures, lead=lead, then=then)
    return tightened(found, None if case.policy is None else case.policy.joint_drop_mV, policy=case.policy)


def _figure(name: str, limit: Limit, *, figures: tuple[float, float, float], lead: Lead, then: str) -> Finding:
    low, value, high = (round(figure, 1) for figure in figures)
    verdict = judge(limit, value, low=low, high=high)
    return Finding(
        id=name,
        stage=Stage.JOIN,
        what=f"The joint of '{lead.name}': {name.rpartition('_')[2]}",
        verdict=verdict,
        because=f"{said(value)} {limit.unit}",
        next=None if verdict is Verdict.HOLDS else then,
        value=value,
        low=low,
        high=high,
        unit=limit.unit,
        digits=1,
        limit=limit,
    )
