"""How hot it gets at a joint: what its insulation stands, and which methods do not."""

from __future__ import annotations

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.stages.join.ampacity import USUAL_INSULATION, insulation_of
from backprobe.stages.join.wiring_case import WiringCase

# common practice, no source: a clip loosens and tape lets go long before the wire's own insulation
LOOSE_FROM_C = 80.0
LOOSENED = (Method.TAP_CONNECTOR, Method.WRAPPED_SPLICE, Method.TWISTED_LEADS)
COOLER = "move the joint to where it is cooler, or take wire and sleeve for that heat"


def heat(case: WiringCase, lead: Lead, *, joint: Joint, hottest_C: float) -> Finding:
    """The hottest at a joint against what its insulation, and a joint that heat loosens, may have for good [°C]."""
    limit = _limit(case, lead, joint=joint)
    verdict = judge(limit, hottest_C, low=hottest_C, high=hottest_C)
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=f"The heat at the joint of '{lead.name}'",
        verdict=verdict,
        because=f"it gets {hottest_C:g} °C hot there",
        next=None if verdict is Verdict.HOLDS else COOLER,
        value=hottest_C,
        low=hottest_C,
        high=hottest_C,
        unit="°C",
        digits=0,
        limit=limit,
    )


def _limit(case: WiringCase, lead: Lead, *, joint: Joint) -> Limit:
    name = f"join_{lead.name}_heat"
    insulation = insulation_of(case.told.insulation or USUAL_INSULATION)
    if joint.method in LOOSENED and insulation.conductor_C > LOOSE_FROM_C:
        basis = f"a {joint.method.words} loosens in heat" if joint.method else ""
        return Limit(name, LOOSE_FROM_C, "°C", Side.AT_MOST, basis, Standing.COMMON_PRACTICE)
    basis = f"{insulation.what}: what its conductor may have for good"
    return Limit(name, insulation.conductor_C, "°C", Side.AT_MOST, basis, Standing.PUBLISHED)
