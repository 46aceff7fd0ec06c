"""What was measured of a joint against its limits: overlap, bare wire, turns, the pull of a sample, the drop."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.crimps import PULL_BASIS, PULL_N
from backprobe.limits.joints import JOINTS
from backprobe.physics.wire import awg_area_mm2
from backprobe.stages.given import said
from backprobe.stages.join.measured import read_mV
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase

AGAIN = "make the joint again"
THIN_FROM_GAUGE = 20  # and thinner: the narrower of the two limits of bare wire


def overlap(lead: Lead, overlap_mm: float, *, method: Method) -> Iterator[Finding]:
    """Tape by a published figure; a sleeve's is from memory and decides nothing: short of it is open."""
    figures = (overlap_mm, overlap_mm, overlap_mm)
    limit = JOINTS["tape_past_least" if method is Method.WRAPPED_SPLICE else "sleeve_past_least"]
    then = f"cover the joint anew: at least {limit.value:g} mm past the insulation on each side"
    found = _figure(f"join_{lead.name}_overlap", limit, figures=figures, lead=lead, then=then)
    if limit.standing is not Standing.FROM_MEMORY:
        yield found
    elif found.verdict is Verdict.FAILS:
        yield _as_open(found)


def sleeve_words(joint: Joint, method: Method) -> str:
    """What stands beside a sleeve that is long enough by a figure from memory; empty for others."""
    limit = JOINTS["sleeve_past_least"]
    if method is not Method.SOLDERED_SLEEVE or joint.overlap_mm is None or not limit.allows(joint.overlap_mm):
        return ""
    return f"{joint.overlap_mm:g} mm of sleeve on each side ({limit.value:g} mm are {limit.standing}); "


def _as_open(found: Finding) -> Finding:
    because = f"{found.because}; the figure is from memory and decides nothing alone"
    then = "look up in the sleeve's data sheet how far it must go over the insulation"
    return replace(found, verdict=Verdict.OPEN, because=because, next=then)


def bare(lead: Lead, bare_mm: float) -> Iterator[Finding]:
    """The bare wire between insulation and barrel: a little, so that no insulation is crimped, and no more."""
    area_mm2 = _area_mm2(lead)
    thin = area_mm2 is not None and area_mm2 < awg_area_mm2(THIN_FROM_GAUGE) * 1.1
    most = JOINTS["bare_at_crimp_most_thin" if thin else "bare_at_crimp_most_thick"]
    least = JOINTS["bare_at_crimp_least"]
    limit = least if not least.allows(bare_mm) else most
    then = f"crimp a new one: {least.value:g} to {most.value:g} mm of bare wire before the barrel"
    name = f"join_{lead.name}_bare"
    yield replace(
        _figure(name, limit, figures=(bare_mm, bare_mm, bare_mm), lead=lead, then=then, digits=2),
        what=f"The joint of '{lead.name}': bare wire before the barrel",
    )


def turned(lead: Lead, turns: float) -> Finding:
    """The turns of a wrapped splice."""
    limit = JOINTS["wrap_least"]
    then = f"{AGAIN}: at least {limit.value:g} turns of the lead around the parted strands"
    return _figure(f"join_{lead.name}_turns", limit, figures=(turns, turns, turns), lead=lead, then=then)


def _area_mm2(lead: Lead) -> float | None:
    return lead.mm2 if lead.mm2 is not None else None if lead.awg is None else awg_area_mm2(lead.awg)


def pull(lead: Lead, pull_N: float) -> Iterator[Finding | str]:
    """What a sample crimp stood against the least pull by gauge [N], or what is missing for it."""
    area_mm2 = _area_mm2(lead)
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


def joint_drop(case: WiringCase, lead: Lead, *, drop_mV: float, at_A: float) -> Finding:
    """The drop across a joint at the load of the test, or at the unit's peak where that is more [mV]."""
    seen, peak_A = read_mV(drop_mV, case.meter), case.unit.supply.peak_A or at_A
    scale = max(1.0, peak_A / at_A)
    figures = (seen.low * scale, seen.likely * scale, seen.high * scale)
    then = f"{AGAIN}: it takes more than a joint should"
    found = _figure(f"join_{lead.name}_joint_drop", JOINTS["joint_drop"], figures=figures, lead=lead, then=then)
    return tightened(found, None if case.policy is None else case.policy.joint_drop_mV, policy=case.policy)


def _figure(
    name: str, limit: Limit, *, figures: tuple[float, float, float], lead: Lead, then: str, digits: int = 1
) -> Finding:
    low, value, high = (round(figure, digits) for figure in figures)
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
        digits=digits,
        limit=limit,
    )
