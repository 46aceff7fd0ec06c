"""The wiring of a job as it was built: its joints, its unit's sheet and its named wires as one drawing."""

from __future__ import annotations

import re
from dataclasses import replace

from backprobe.drawings.roomy import BELOW
from backprobe.drawings.wiring import WIDTH, DrawnLead, Wiring, described, wiring
from backprobe.drawings.wiring_stack import stacked_wiring
from backprobe.evidence.job_sheet import NamedWire, Vehicle
from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.job.judge import JobJudgement
from backprobe.job.lead_verdicts import verdict_of_lead
from backprobe.limits.colours import COLOURS

CAPTION = "The wiring as it was built. Colours in the letters of IEC 60757: {letters}."

_LETTERS = {name: code for code, name in COLOURS.items()} | {"gray": "GY", "purple": "VT"}


def wiring_picture(judged: JobJudgement, *, width: float = WIDTH) -> tuple[str, str, str] | None:
    """The wiring as (SVG, caption, the picture in words); None while no joint was written down.

    `width` is that of the page; on a narrow one each lead is a block of its own.
    """
    content = as_drawn(judged)
    if content is None:
        return None
    draw = stacked_wiring if width < BELOW else wiring
    return draw(content, width=width), caption_of(content), described(content)


def as_drawn(judged: JobJudgement) -> Wiring | None:
    """What the wiring drawing shows: every lead of the unit, then those that only the joints name."""
    sheet, unit = judged.evidence.sheet, judged.evidence.unit
    if not sheet.joints:
        return None
    said = {joint.lead: joint for joint in sheet.joints}
    wires = {wire.name: wire for wire in sheet.wires}
    names = {lead.name for lead in unit.leads}
    leads = [_judged(judged, lead, shown=drawn(lead, said.get(lead.name), wires=wires)) for lead in unit.leads]
    leads += [drawn(None, joint, wires=wires) for joint in sheet.joints if joint.lead not in names]
    return Wiring(
        vehicle=_vehicle(sheet.vehicle),
        unit=" ".join(part for part in (unit.name, sheet.unit_serial) if part),
        leads=tuple(leads),
    )


def _judged(judged: JobJudgement, lead: Lead, *, shown: DrawnLead) -> DrawnLead:
    """A row with what does not hold on its lead."""
    verdict, remark = verdict_of_lead(judged.findings, lead) or (None, "")
    return replace(shown, verdict=verdict, remark=remark)


def _vehicle(vehicle: Vehicle) -> str:
    """The vehicle in a few words: make and model, and what is painted on it."""
    named = " ".join(part for part in (vehicle.maker, vehicle.model) if part)
    number = vehicle.plate or vehicle.fleet_number or vehicle.vin
    return ", ".join(part for part in (named, number) if part) or "vehicle"


def drawn(lead: Lead | None, joint: Joint | None, *, wires: dict[str, NamedWire]) -> DrawnLead:
    """One row of the drawing; `lead` is None where the unit's sheet has none of the joint's name."""
    if joint is None:
        return DrawnLead(lead=_named(lead, None), wire=None)
    wire = wires.get(joint.wire or "")
    grounded = joint.wire is None and lead is not None and lead.purpose is Purpose.GROUND
    method = None if joint.method is None else joint.method.words
    made = ", ".join(part for part in (method, joint.place) if part)
    return DrawnLead(
        lead=_named(lead, joint),
        wire=None if joint.wire is None else _wire(joint.wire, wire),
        feeds="" if wire is None else _feeds(wire),
        joint=made if joint.wire or grounded else joint.left or "",
        fuse=None if joint.fuse_A is None else f"{joint.fuse_A:g} A",
        ground=grounded,
    )


def _named(lead: Lead | None, joint: Joint | None) -> str:
    """A lead with its colour, size and length: 'power, RD 0.75 mm², 1.8 m'."""
    if lead is None:
        return f"{'' if joint is None else joint.lead} (not on the unit's sheet)"
    size = f"{lead.mm2:g} mm²" if lead.mm2 is not None else "" if lead.awg is None else f"{lead.awg} AWG"
    length = "" if joint is None or joint.length_m is None else f"{joint.length_m:g} m"
    look = " ".join(part for part in (lead.colour, size) if part)
    return ", ".join(part for part in (lead.name, look, length) if part)


def _wire(name: str, known: NamedWire | None) -> str:
    """A vehicle's wire with its colour in letters, unless its name has them already, and its size."""
    if known is None:
        return name
    colour = colour_letters(known.colour or "")
    shown = "" if colour in re.split(r"[^A-Za-z]+", name) else colour
    size = (known.size or "").replace("mm2", "mm²")
    look = " ".join(part for part in (shown, size) if part)
    return ", ".join(part for part in (name, look) if part)


def _feeds(wire: NamedWire) -> str:
    """Where a wire is found and what it is: 'X12 cavity 4: permanent supply, fuse F12'."""
    place = " ".join(part for part in (wire.connector, wire.cavity and f"cavity {wire.cavity}") if part)
    return ": ".join(part for part in (place, ", ".join(wire.circuits)) if part)


def colour_letters(colour: str) -> str:
    """A colour in the letters of IEC 60757 where each of its words is known, else as it was written.

    >>> colour_letters("red/blue"), colour_letters("Dark green"), colour_letters("RDBU")
    ('RDBU', 'Dark green', 'RDBU')
    """
    words = re.findall(r"[a-z]+", colour.lower())
    letters = [_LETTERS.get(word, "") for word in words]
    return "".join(letters) if letters and all(letters) else colour


def caption_of(content: Wiring) -> str:
    """The caption, which says in words the letters that the drawing uses."""
    shown = " ".join(f"{lead.lead} {lead.wire or ''}" for lead in content.leads)
    groups = re.findall(rf"\b(?:{'|'.join(COLOURS)}){{1,2}}\b", shown)
    used = {code for group in groups for code in re.findall("..", group)}
    told = ", ".join(f"{code} {name}" for code, name in COLOURS.items() if code in used)
    return CAPTION.format(letters=told) if told else "The wiring as it was built."
