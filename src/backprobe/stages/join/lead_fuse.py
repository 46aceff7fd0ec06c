"""The fuse at each tap on its wire and real loop, and the vehicle's own fuse above it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Verdict
from backprobe.limits.fuse_lookup import ratings_of, usual_type
from backprobe.limits.fuses import LOAD_PART, WIRE_OVER_FUSE
from backprobe.stages.join.ampacity import USUAL_INSULATION, insulation_of
from backprobe.stages.join.fuse_calc import FuseCase, fuse_findings
from backprobe.stages.join.fuse_findings import LOAD_ID, WIRE_OVER_FUSE_ID
from backprobe.stages.join.fuse_opening import Fuse, fuse_of, hot_rating_A
from backprobe.stages.join.measured import together
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.tap_bound import MEASURE_TAP, TapBound
from backprobe.stages.join.wiring_case import WiringCase, around_C, conductor_for, tap_limit, tap_ohm

FED = (Purpose.SUPPLY, Purpose.IGNITION)
LEAST_LOOP_OHM = 0.001
MEASURE_LOOP = "tap_drop_mV and tap_load_A: how much the tapped wire drops under a load"


def fuse_at(joint: Joint) -> Fuse | None:
    """The fuse at a joint, a blade fuse of its type, else of the usual one; None where none is made so."""
    return None if joint.fuse_A is None else blade(joint.fuse_A, joint.fuse_type)


def blade(rating_A: float, fuse_type: str | None) -> Fuse | None:
    """The blade fuse of a rating; None where no such fuse is made."""
    ratings = ratings_of(fuse_type or usual_type(rating_A))
    return fuse_of(rating_A, fuse_type) if min(ratings) <= rating_A <= max(ratings) else None


def lead_fuses(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the fuse of each fed lead, or what is missing for them."""
    for lead, joint in case.joined(*FED):
        if joint.fuse_A is None:
            continue  # said of the joint itself
        fuse = fuse_at(joint)
        if fuse is None:
            kind = "" if joint.fuse_type is None else f" of type {joint.fuse_type}"
            yield f"when the fuse of {joint.fuse_A:g} A at '{lead.name}' opens: no blade fuse{kind} is made so"
        else:
            yield from _of_lead(case, lead, joint=joint, fuse=fuse)
    if case.told.tap is None and case.tap_read is None and any(joint.fuse_A for _, joint in case.joined(*FED)):
        yield MEASURE_LOOP


def _of_lead(case: WiringCase, lead: Lead, *, joint: Joint, fuse: Fuse) -> Iterator[Finding | str]:
    wire, through = conductor_for(lead), to_unit_ohm(case, lead, joint=joint, fuse=fuse)
    if wire is None or through is None:
        yield f"length_m of '{lead.name}', and its size in the unit's sheet"
        return
    loop = together(tap_ohm(case), through)
    ends = [
        FuseCase(
            fuse=fuse,
            conductor=wire,
            insulation=insulation_of(case.told.insulation or USUAL_INSULATION),
            loop_ohm=max(LEAST_LOOP_OHM, ohm),
            system_V=case.sheet.vehicle.system_V,
            ambient_C=around_C(joint, ambient_C=case.ambient_C),
            load_A=case.unit.supply.peak_A if lead.purpose is Purpose.SUPPLY else None,
        )
        for ohm in (loop.likely, loop.low, loop.high)
    ]
    for likely, *others in zip(*(tuple(fuse_findings(end)) for end in ends), strict=True):
        bound = tap_limit(case)
        found = _over_ends(likely, others) if bound is None else _by_bound(likely, others, bound=bound)
        yield replace(_by_policy(case, found, fuse=fuse), id=f"join_{lead.purpose}_{found.id}", what=_what(lead, found))


def _what(lead: Lead, found: Finding) -> str:
    return f"'{lead.name}': {found.what}"


def _over_ends(likely: Finding, others: list[Finding]) -> Finding:
    """The finding at the likely loop; not `holds` where it does not at an end of what the loop may be."""
    if likely.verdict is not Verdict.HOLDS:
        return likely
    off = next((end for end in others if end.verdict is not Verdict.HOLDS), None)
    if off is None:
        return likely
    because = f"{likely.because}; at an end of what the loop may be: {off.because}"
    return replace(likely, verdict=Verdict.THIN, because=because, next=off.next)


def _by_bound(likely: Finding, others: list[Finding], *, bound: TapBound) -> Finding:
    """The finding where the way up to the tap is known by a bound alone: decided only where it is the same at each end.

    The real loop may resist less than the bound, so that what fails by it may hold.
    """
    if all(end == likely for end in others):
        return likely  # the loop does not matter
    found = replace(likely, because=f"{likely.because}; {bound.because}")
    if all(end.verdict is likely.verdict for end in others):
        return found
    return replace(found, verdict=Verdict.OPEN, next=MEASURE_TAP)


def _by_policy(case: WiringCase, found: Finding, *, fuse: Fuse) -> Finding:
    policy = case.policy
    if policy is None:
        return found
    if found.id == WIRE_OVER_FUSE_ID:
        return tightened(found, (policy.wire_over_fuse or WIRE_OVER_FUSE) * fuse.rating_A, policy=policy)
    if found.id == LOAD_ID:
        most_A = (policy.fuse_load_part or LOAD_PART) * hot_rating_A(fuse, ambient_C=case.ambient_C)
        return tightened(found, most_A, policy=policy)
    return found
