"""The joints as they were written down, held against the unit's sheet and against the wires that the probe chose.

What a joint carries and drops is judged elsewhere: here only that no lead is forgotten, that supply and ignition went
to the wires that were proven for them, and that they are fused where they were tapped.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose, UnitSheet
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.join.tap_fuse import fused_grounds, tap_fuse

TAPPED = (Purpose.SUPPLY, Purpose.IGNITION)
JOIN_IT = "join it to {wire} and write that into [[joint]] of the job sheet"


def as_built(joints: Sequence[Joint], unit: UnitSheet, *, chosen: Mapping[Purpose, str | None]) -> tuple[Finding, ...]:
    """The findings on `joints`, none while there is no joint; `chosen` are the wires for supply and ignition, by name.

    A lead that the unit's sheet does not have, and leads of which nothing is said, are `open`. Supply and ignition on
    another wire than the chosen one fail, as do taps without a fuse and a fuse in a ground.
    """
    if not joints:
        return ()
    said = {joint.lead: joint for joint in joints}
    taps = [
        (lead, said[lead.name])
        for purpose in TAPPED
        for lead in unit.leads_for(purpose)
        if lead.name in said and (said[lead.name].wire or said[lead.name].left)
    ]
    return (
        *_unknown(joints, unit),
        _leads(
            said, unit, twice=[name for name, count in Counter(joint.lead for joint in joints).items() if count > 1]
        ),
        *(found for lead, joint in taps for found in _tap(lead, joint, wanted=chosen.get(lead.purpose))),
        *fused_grounds(said, unit),
    )


def _unknown(joints: Sequence[Joint], unit: UnitSheet) -> Iterator[Finding]:
    """The joints of leads that the unit's sheet does not name."""
    names = [lead.name for lead in unit.leads]
    strange = [joint.lead for joint in joints if joint.lead not in names]
    if strange:
        yield Finding(
            id="join_unknown_lead",
            stage=Stage.JOIN,
            what="Joints of leads that the unit does not have",
            verdict=Verdict.OPEN,
            because=f"{', '.join(strange)}: no lead of {unit.name}, which has: {', '.join(names)}",
            next="put the lead's name right in [[joint]] of the job sheet, or complete the unit's sheet",
        )


def _leads(said: Mapping[str, Joint], unit: UnitSheet, *, twice: Sequence[str]) -> Finding:
    """Whether it is said of every lead, once, where it went."""
    untold = [f"{lead.name} ({why})" for lead in unit.leads if (why := untold_of(lead, said.get(lead.name)))]
    untold += [f"{name} (which of the two joints it has)" for name in twice]
    joined = sum(1 for lead in unit.leads if lead.name in said and said[lead.name].wire)
    grounded = sum(1 for lead in unit.leads if lead.name in said and is_grounded(lead, said[lead.name]))
    unused = len(unit.leads) - joined - grounded
    told = f"of {len(unit.leads)} leads {joined} are joined, {grounded} grounded at the frame, {unused} not used"
    return Finding(
        id="join_leads",
        stage=Stage.JOIN,
        what="Where each lead of the unit went",
        verdict=Verdict.OPEN if untold else Verdict.HOLDS,
        because=f"not told of {', '.join(untold)}" if untold else told,
        next="complete [[joint]] of the job sheet: wire, place or end for each of them" if untold else None,
    )


def is_grounded(lead: Lead, joint: Joint) -> bool:
    """Whether a lead is grounded at the frame."""
    return lead.purpose is Purpose.GROUND and joint.wire is None and joint.place is not None


def untold_of(lead: Lead, joint: Joint | None) -> str | None:
    """What is not said of where a lead went; None where all is said."""
    if joint is None:
        return "nothing is said"
    if joint.wire or is_grounded(lead, joint):
        return None
    if lead.purpose is Purpose.GROUND:
        return "where it is grounded"
    return None if joint.left else "neither a wire nor what was done with its end"


def _tap(lead: Lead, joint: Joint, *, wanted: str | None) -> Iterator[Finding]:
    """The findings on a supply or ignition lead: is it on the wire that was chosen, is it fused there."""
    yield _tapped_wire(lead, joint, wanted=wanted)
    if joint.wire:
        yield tap_fuse(lead, joint)


def _tapped_wire(lead: Lead, joint: Joint, *, wanted: str | None) -> Finding:
    verdict, because, then = _standing(lead, joint, wanted=wanted)
    return Finding(
        id=f"join_{lead.purpose}_wire",
        stage=Stage.JOIN,
        what=f"The wire on the {lead.purpose} lead '{lead.name}'",
        verdict=verdict,
        because=because,
        next=then,
    )


def _standing(lead: Lead, joint: Joint, *, wanted: str | None) -> tuple[Verdict, str, str | None]:
    """The verdict on a tapped wire, why, and what to do."""
    if joint.wire is None:
        then = JOIN_IT.format(wire=wanted or f"a wire that was proven for the {lead.purpose}")
        return Verdict.OPEN, f"not used: {joint.left}", then
    if wanted is None:
        because = f"joined to {joint.wire}, but no wire stands proven for the {lead.purpose}"
        return Verdict.OPEN, because, f"settle first which wire is the {lead.purpose}"
    if joint.wire != wanted:
        because = f"joined to {joint.wire}; the wire that was proven for the {lead.purpose} is {wanted}"
        return Verdict.FAILS, because, f"move the joint from {joint.wire} to {wanted}, or prove {joint.wire} first"
    return Verdict.HOLDS, f"joined to {joint.wire}, the wire that was proven for it", None
