"""How a joint was made: strip, overlap, strain relief, water, crimp, and where its method will not do."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding
from backprobe.stages.join.fuse_tap import fuse_tap
from backprobe.stages.join.heat import heat
from backprobe.stages.join.joint_figures import AGAIN, bare, joint_drop, overlap, pull, sleeve_words, turned
from backprobe.stages.join.matter import either
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
PRACTICE = "common practice, no source"


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
            yield from overlap(lead, joint.overlap_mm, method=joint.method)
        if joint.bare_mm is not None and joint.method in CRIMPED:
            yield from bare(lead, joint.bare_mm)
        if joint.turns is not None and joint.method is Method.WRAPPED_SPLICE:
            yield turned(lead, joint.turns)
        if joint.pull_N is not None and joint.method in CRIMPED:
            yield from pull(lead, joint.pull_N)
        if joint.hottest_C is not None:
            yield heat(case, lead, joint=joint, hottest_C=joint.hottest_C)
        if joint.drop_mV is not None and joint.drop_A is not None:
            yield joint_drop(case, lead, drop_mV=joint.drop_mV, at_A=joint.drop_A)


def _untold(lead: Lead, joint: Joint, *, method: Method) -> Iterator[str]:
    asked: list[tuple[str, object]] = [("strain_relief", joint.strain_relief), ("damp", joint.damp)]
    if joint.damp:
        asked.append(("drip_loop", joint.drip_loop))
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
        fine=f"{sleeve_words(joint, method)}nothing that was written of it speaks against it ({PRACTICE})",
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
