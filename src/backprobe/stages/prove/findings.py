"""The findings of the prove stage: what script and reports of one unit came to, each with what to do about it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.prove.patterns import lowered
from backprobe.stages.prove.prove import Answer
from backprobe.stages.prove.turn_findings import through_crank, turned, unturned
from backprobe.stages.prove.unit_findings import (
    first_fix,
    lights,
    parked_night,
    patterns,
    position,
    supply_change,
)

PATTERN = "Pattern: "
URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN)
PLAN = "turn the key through a script (backprobe prove --plan) and fetch the unit's reports"


def prove_findings(answer: Answer, *, has_crank: bool) -> tuple[Finding, ...]:
    """Everything that the proof came to; the first that does not hold asks for what the proof as a whole asks for."""
    proof = answer.proof
    found = (
        *patterns(proof),
        turned(proof, on=True),
        turned(proof, on=False),
        *([through_crank(proof)] if has_crank else []),
        *unturned(proof),
        position(proof),
        *first_fix(proof),
        *lights(proof.lights),
        *supply_change(proof),
        parked_night(proof),
    )
    return _asking(found, answer.next)


def _asking(found: Sequence[Finding], then: str | None) -> tuple[Finding, ...]:
    """The findings, the most urgent one with the proof's own next step where it has none that is more to the point."""
    urgent = next((each for verdict in URGENCY for each in found if each.verdict is verdict), None)
    if urgent is None or then is None or urgent.id == "prove_crank" or urgent.what.startswith(PATTERN):
        return tuple(found)
    return tuple(replace(each, next=lowered(then)) if each is urgent else each for each in found)


def unproven(because: str, then: str = PLAN, *, heard: bool = True) -> Finding:
    """The finding on a unit of which nothing is proven yet; one that was not `heard` has no reports of its own."""
    return Finding(
        id="prove_missing" if heard else "prove_reports",
        stage=Stage.PROVE,
        what="Whether the unit works in the vehicle",
        verdict=Verdict.OPEN,
        because=because,
        next=then,
    )
