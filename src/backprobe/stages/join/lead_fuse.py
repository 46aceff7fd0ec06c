"""The fuse at each tap on its wire and real loop, and the vehicle's own fuse above it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.fuse_lookup import ratings_of
from backprobe.limits.fuses import LOAD_PART, LOAD_PART_BASIS, RERATING_BASIS, WIRE_OVER_FUSE
from backprobe.stages.given import said
from backprobe.stages.join.ampacity import USUAL_INSULATION, insulation_of
from backprobe.stages.join.fuse_calc import FuseCase, fuse_findings
from backprobe.stages.join.fuse_findings import LOAD_ID, WIRE_OVER_FUSE_ID
from backprobe.stages.join.fuse_opening import Fuse, fuse_of, hot_rating_A
from backprobe.stages.join.measured import together
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase, conductor_for, tap_ohm

FED = (Purpose.SUPPLY, Purpose.IGNITION)
LEAST_LOOP_OHM = 0.001
CIRCUIT_ID, SELECTIVE_ID = "join_vehicle_fuse", "join_selectivity"
# common practice, no source: twice the rating is what keeps the upper fuse whole in nearly every short
SELECTIVE_TIMES = 2.0
MEASURE_LOOP = "tap_drop_mV and tap_load_A: how much the tapped wire drops under a load"


def fuse_at(joint: Joint) -> Fuse | None:
    """The fuse at a joint, as a blade fuse of the usual type; None where there is none that is made so."""
    ratings = ratings_of("C") + ratings_of("E")
    if joint.fuse_A is None or not min(ratings) <= joint.fuse_A <= max(ratings):
        return None
    return fuse_of(joint.fuse_A)


def lead_fuses(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the fuse of each fed lead, or what is missing for them."""
    for lead, joint in case.joined(*FED):
        if joint.fuse_A is None:
            continue  # said of the joint itself
        fuse = fuse_at(joint)
        if fuse is None:
            yield f"when the fuse of {joint.fuse_A:g} A at '{lead.name}' opens: no blade fuse is made so"
        else:
            yield from _of_lead(case, lead, joint=joint, fuse=fuse)
    if case.told.tap is None and any(joint.fuse_A for _, joint in case.joined(*FED)):
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
            ambient_C=case.ambient_C,
            load_A=case.unit.supply.peak_A if lead.purpose is Purpose.SUPPLY else None,
        )
        for ohm in (loop.likely, loop.low, loop.high)
    ]
    for likely, *others in zip(*(tuple(fuse_findings(end)) for end in ends), strict=True):
        found = _over_ends(likely, others)
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


def vehicle_fuse(case: WiringCase) -> Iterator[Finding | str]:
    """Whether the tapped circuit's own fuse carries its load with the unit, and opens later than the unit's."""
    supplies = list(case.joined(Purpose.SUPPLY))
    rating_A, load_A, peak_A = case.told.vehicle_fuse_A, case.told.vehicle_load_A, case.unit.supply.peak_A
    if not supplies:
        return
    if rating_A is None or load_A is None:
        lacking = [key for key, value in (("vehicle_fuse_A", rating_A), ("vehicle_load_A", load_A)) if value is None]
        yield f"{' and '.join(lacking)}: the tapped circuit's own fuse and load"
    if rating_A is not None and load_A is not None and peak_A is not None:
        basis = f"{LOAD_PART_BASIS.text}; {RERATING_BASIS.text}"
        most_A = round(LOAD_PART * hot_rating_A(_any(rating_A), ambient_C=case.ambient_C), 2)
        limit = Limit(CIRCUIT_ID, most_A, "A", Side.AT_MOST, basis, LOAD_PART_BASIS.standing)
        yield _amperes(
            limit,
            load_A + peak_A,
            what="The tapped circuit's own fuse",
            because=f"{said(load_A)} A and the unit's {said(peak_A)} A on {rating_A:g} A, at {case.ambient_C:g} °C",
            then="take a circuit with more to spare; never put a larger fuse into the vehicle's own holder",
        )
    for _, joint in supplies:
        if joint.fuse_A is not None and rating_A is not None:
            yield _selective(joint.fuse_A, rating_A)


def _any(rating_A: float) -> Fuse:
    """A fuse of any rating, for its part that is left when hot."""
    known = fuse_of(10.0)
    return replace(known, rating_A=rating_A)


def _selective(unit_A: float, vehicle_A: float) -> Finding:
    basis = f"the vehicle's fuse is {SELECTIVE_TIMES:g} times the unit's or more, so that the unit's opens first"
    standing = Standing.COMMON_PRACTICE
    limit = Limit(SELECTIVE_ID, round(vehicle_A / SELECTIVE_TIMES, 2), "A", Side.AT_MOST, basis, standing)
    because = f"{unit_A:g} A at the tap below the vehicle's {vehicle_A:g} A"
    return _amperes(
        limit,
        unit_A,
        what="Which of the two fuses opens first",
        because=because,
        then="fit a smaller fuse at the tap, else a short at the unit takes the vehicle's own circuit with it",
    )


def _amperes(limit: Limit, value: float, *, what: str, because: str, then: str) -> Finding:
    shown = round(value, 2)
    verdict = judge(limit, shown, low=shown, high=shown)
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=shown,
        low=shown,
        high=shown,
        unit="A",
        limit=limit,
    )
