"""The order in which a connection is looked for: body-builder connector, fuse tap, splice; and what is never done."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from backprobe.evidence.job_sheet import NamedWire
from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Verdict
from backprobe.stages.join.input_sources import bridged
from backprobe.stages.join.matter import either, plain
from backprobe.stages.join.wiring_case import WiringCase

FED = (Purpose.SUPPLY, Purpose.IGNITION)
CUT = (Method.CRIMPED_BUTT, Method.SOLDERED_SLEEVE, Method.TAP_CONNECTOR, Method.WRAPPED_SPLICE)
_BODY = re.compile(r"\b(?:body.?build\w*|accessory connector|upfitter)\b", re.IGNORECASE)
PRACTICE = "common practice, no source"
ORDER = f"({PRACTICE}: body-builder connector, then fuse tap, then splice near the module)"


def order(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on where and how the vehicle was tapped."""
    fed = list(case.joined(*FED))
    if not fed:
        return
    wires = {wire.name: wire for wire in case.sheet.wires}
    for lead, joint in fed:
        yield from _place(case, lead, joint=joint, wires=wires)
    yield from _bridged(case)
    yield from _probed(case)


def at_body_builder(wire: NamedWire | None) -> bool:
    """Whether a wire is one of a body-builder connector, by what it feeds or where it is.

    >>> at_body_builder(NamedWire(name="X12/4", connector="body-builder connector X12"))
    True
    """
    return wire is not None and bool(_BODY.search(" ".join((*wire.circuits, wire.connector or ""))))


def _probed(case: WiringCase) -> Iterator[Finding]:
    """What probing did to the vehicle's wires: pierced insulation, a spread cavity."""
    hurt = []
    if case.told.pierced:
        hurt.append("a wire's insulation was pierced: water gets in and the strands rot")
    if case.told.spread:
        hurt.append("a connector's cavity was spread: its contact no longer holds its pin")
    if hurt:
        because = f"{'; '.join(hurt)} ({PRACTICE})"
        then = "mend the place, with a new piece of wire or a new contact; back-probe at the connector from now on"
        yield plain("join_pierced", "How the wires were probed", verdict=Verdict.FAILS, because=because, then=then)


def _place(case: WiringCase, lead: Lead, *, joint: Joint, wires: Mapping[str, NamedWire]) -> Iterator[Finding | str]:
    at_body = at_body_builder(wires.get(joint.wire or ""))
    method, told = joint.method, case.told
    what = f"Where '{lead.name}' was connected"
    if told.reversible and method in CUT and not at_body:
        words = method.words if method is not None else ""
        because = f"a {words} in the vehicle's own wire, which must be given back as it was"
        then = "take the joint out, mend the wire, and use the body-builder connector or a fuse tap"
        yield plain(f"join_{lead.purpose}_order", what, verdict=Verdict.FAILS, because=because, then=then)
    elif told.reversible and joint.undo is None:
        yield f"undo of '{lead.name}': how the joint is taken out again"
    elif at_body or method is Method.FUSE_TAP:
        where = "the body-builder connector" if at_body else "a fuse tap"
        yield plain(f"join_{lead.purpose}_order", what, verdict=Verdict.HOLDS, because=f"{where} {ORDER}")
    else:
        yield from _spliced(case, lead, joint=joint)


def _spliced(case: WiringCase, lead: Lead, *, joint: Joint) -> Iterator[Finding | str]:
    """A splice comes last: with a reason, and near the module that the wire feeds, where it is easy to find again."""
    why = case.told.why_spliced
    if not why:
        yield f"why_spliced: why '{lead.name}' is neither at the body-builder connector nor on a fuse tap"
        return
    if joint.near_module is None:
        yield f"near_module of '{lead.name}': whether the splice is near the module that the wire feeds"
        return
    where = "a splice near the module" if joint.near_module else "a splice far from the module that the wire feeds"
    yield plain(
        f"join_{lead.purpose}_order",
        f"Where '{lead.name}' was connected",
        verdict=Verdict.HOLDS if joint.near_module else Verdict.THIN,
        because=f"{where}: {why} {ORDER}",
        then=None if joint.near_module else "write down exactly where it is, so that the next one finds it",
    )


def _bridged(case: WiringCase) -> Iterator[Finding]:
    """Whether one lead of the unit joins two circuits of the vehicle, by what was said of its sources or its name."""
    joined = case.joined(*FED, Purpose.INPUT, Purpose.OUTPUT)
    names = [wire.name for wire in case.sheet.wires]
    faults = [found for level in case.told.levels if (found := bridged(level))]
    sourced = {level.lead for level in case.told.levels if level.sources}
    for lead, joint in joined:
        if joint.wire in names or lead.name in sourced:
            continue
        parts = [part.strip() for part in re.split(r"\s+(?:and|with)\s+|\s*[+&]\s*", joint.wire or "")]
        if len([part for part in parts if part in names]) > 1:
            faults.append(f"'{lead.name}' joins {joint.wire}: two circuits are bridged")
    yield either(
        "join_bridged",
        "Whether two circuits were bridged",
        faults=tuple(faults),
        fine="each lead is at one wire, or what it follows is kept apart",
        then="take the lead off one of them; where one input must follow both, a diode or a relay keeps them apart",
    )
