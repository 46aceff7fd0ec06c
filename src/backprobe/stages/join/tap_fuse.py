"""Is each tap fused, and no ground."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose, UnitSheet
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict

ASKED_ID = "fuse_asked"
# common practice, no source: the wire from the tap on is protected only by a fuse at the tap
UNFUSED = "no fuse is named at the joint with {wire}: from there on nothing protects the wire"
# common practice, no source
GROUND_FUSED = "a fuse of {fuse_A:g} A in '{lead}': when it opens, the unit's current seeks another way to ground"


def tap_fuse(lead: Lead, joint: Joint) -> Finding:
    """Whether a supply or ignition lead is fused where it was tapped, and by no more than the unit's sheet asks for."""
    what = f"The fuse of the {lead.purpose} lead '{lead.name}'"
    if joint.fuse_A is None:
        asked = f"of {lead.fuse_A:g} A " if lead.fuse_A else ""
        return _finding(
            f"join_{lead.purpose}_fuse",
            what,
            verdict=Verdict.FAILS,
            because=UNFUSED.format(wire=joint.wire),
            then=f"put a fuse {asked}into '{lead.name}', close to the joint, and write it down as fuse_A",
        )
    if lead.fuse_A is None:
        because = f"{joint.fuse_A:g} A at the joint with {joint.wire}; the unit's sheet asks for no certain one"
        return _finding(f"join_{lead.purpose}_fuse", what, verdict=Verdict.HOLDS, because=because)
    return _against_sheet(lead, joint, what=what, fuse_A=joint.fuse_A, most_A=lead.fuse_A)


def _against_sheet(lead: Lead, joint: Joint, *, what: str, fuse_A: float, most_A: float) -> Finding:
    limit = Limit(ASKED_ID, most_A, "A", Side.AT_MOST, "the unit's sheet", Standing.PUBLISHED)
    verdict = Verdict.HOLDS if limit.allows(fuse_A) else Verdict.FAILS  # a rating is printed, not measured: no range
    return Finding(
        id=f"join_{lead.purpose}_fuse",
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=f"at the joint with {joint.wire}",
        next=None if verdict is Verdict.HOLDS else f"put in the fuse that the unit's sheet asks for: {most_A:g} A",
        value=fuse_A,
        unit="A",
        digits=1,
        limit=limit,
    )


def fused_grounds(said: Mapping[str, Joint], unit: UnitSheet) -> Iterator[Finding]:
    """A failing finding for each ground lead with a fuse in it; `said` are the joints by lead."""
    for lead in unit.leads_for(Purpose.GROUND):
        joint = said.get(lead.name)
        if joint is not None and joint.fuse_A is not None:
            yield _finding(
                "join_ground_fuse",
                f"The ground lead '{lead.name}'",
                verdict=Verdict.FAILS,
                because=GROUND_FUSED.format(fuse_A=joint.fuse_A, lead=lead.name),
                then="take the fuse out of the ground; the fuse belongs into the supply, at its tap",
            )


def _finding(name: str, what: str, *, verdict: Verdict, because: str, then: str | None = None) -> Finding:
    return Finding(id=name, stage=Stage.JOIN, what=what, verdict=verdict, because=because, next=then)
