"""A fuse tap in the vehicle's fuse box: the right way round, and not more in all than it and its slot may carry."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.stages.given import said
from backprobe.stages.join.matter import either
from backprobe.stages.join.wiring_case import WiringCase

TURN = "pull the tap, turn it round so that the live terminal feeds both fuses, and measure that each is live by itself"
PRACTICE = "common practice, no source"


def fuse_tap(case: WiringCase, lead: Lead, *, joint: Joint) -> Iterator[Finding | str]:
    """The findings on a lead that hangs on a fuse tap, or what is missing for them; nothing for other joints."""
    if joint.method is not Method.FUSE_TAP or lead.purpose is Purpose.GROUND:
        return
    if joint.right_way is None:
        yield f"of '{lead.name}' right_way: whether the slot's live terminal feeds both fuses of the tap"
    else:
        yield _right_way(lead, right_way=joint.right_way)
    load_A = case.told.vehicle_load_A
    if joint.tap_most_A is None:
        yield f"of '{lead.name}' tap_most_A: what tap and slot may carry in all, as printed on them"
    elif load_A is None:
        yield "vehicle_load_A: what the tapped circuit carries without the unit"
    elif case.unit.supply.peak_A is not None:
        yield _total(lead, load_A=load_A, unit_A=case.unit.supply.peak_A, most_A=joint.tap_most_A)


def _right_way(lead: Lead, *, right_way: bool) -> Finding:
    wrong = "the tap is the wrong way round: the unit's current goes through the vehicle's own fuse too"
    return either(
        f"join_{lead.name}_tap_way",
        f"Which way round the fuse tap of '{lead.name}' sits",
        faults=() if right_way else (f"{wrong} ({PRACTICE})",),
        fine=f"the slot's live terminal feeds both fuses ({PRACTICE})",
        then=TURN,
    )


def _total(lead: Lead, *, load_A: float, unit_A: float, most_A: float) -> Finding:
    """Both loads together through the tap's terminal [A]."""
    limit = Limit(f"join_{lead.name}_tap_load", most_A, "A", Side.AT_MOST, "printed on the tap", Standing.PUBLISHED)
    total_A = round(load_A + unit_A, 2)
    verdict = judge(limit, total_A, low=total_A, high=total_A)
    return Finding(
        id=limit.id,
        stage=Stage.JOIN,
        what=f"What the fuse tap of '{lead.name}' carries in all",
        verdict=verdict,
        because=f"{said(load_A)} A of the vehicle and {said(unit_A)} A of the unit go through one terminal",
        next=None if verdict is Verdict.HOLDS else "take a slot with less on it, or the body-builder connector",
        value=total_A,
        low=total_A,
        high=total_A,
        unit="A",
        limit=limit,
    )
