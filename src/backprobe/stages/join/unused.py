"""The leads that were not used: each named, cut to a length of its own, insulated and tied back."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.joint import Joint
from backprobe.findings import Finding
from backprobe.stages.join.matter import either
from backprobe.stages.join.wiring_case import WiringCase

# common practice, no source: ends so far apart do not meet when the loom is squeezed
APART_MM = 10.0
FINE = "{left}: insulated, held, and no other end beside it (common practice, no source)"
THEN = "cut it to a length of its own, insulate its end and tie it back; then write down what was done"


def unused(case: WiringCase) -> Iterator[Finding | str]:
    """The finding on each lead that was not used, or what is missing for it."""
    leads = {lead.name for lead in case.unit.leads}
    ends = [joint for joint in case.sheet.joints if joint.left and joint.lead in leads]
    for joint in ends:
        others = [other for other in ends if other is not joint]
        lacking = [name for name in _asked(others) if getattr(joint, name) is None]
        if lacking:
            yield f"of the unused '{joint.lead}' {', '.join(lacking)}"
        faults = tuple(_faults(joint, others))
        if faults or not lacking:
            what = f"The unused lead '{joint.lead}'"
            yield either(f"join_{joint.lead}_unused", what, faults=faults, fine=FINE.format(left=joint.left), then=THEN)


def _asked(others: Sequence[Joint]) -> tuple[str, ...]:
    """What must be said of an unused lead: its length only where there is another that it could meet."""
    return ("capped", "tied_back", "cut_mm") if others else ("capped", "tied_back")


def _faults(joint: Joint, others: Sequence[Joint]) -> Iterator[str]:
    if joint.capped is False:
        yield "its end is bare"
    if joint.tied_back is False:
        yield "it hangs loose"
    for other in others:
        if joint.cut_mm is not None and other.cut_mm is not None and abs(joint.cut_mm - other.cut_mm) < APART_MM:
            yield f"cut to {joint.cut_mm:g} mm as '{other.lead}' to {other.cut_mm:g}: their ends can meet"
