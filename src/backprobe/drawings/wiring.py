"""The as-built wiring: which wire of the vehicle each lead of the unit was joined to, how, and behind which fuse.

The vehicle is the bar on the left, the unit the bar on the right; each lead is a line between them. Words stand on
the line, so that nothing has to be looked up elsewhere: what the vehicle calls the wire, its colour in the letters of
IEC 60757, its size, the joint, the fuse. The fuse is the rectangle with the line through it and the frame symbol the
three slanted strokes of IEC 60617 (from memory). A lead that is not used ends in a cap, one of which nobody has told
where it went in a question mark.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.drawings.lettering import cut, letters, text_width
from backprobe.drawings.marks import verdict_shape
from backprobe.drawings.palette import INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.svg import path, picture, tag
from backprobe.drawings.wiring_marks import cap, fuse, junction, to_frame, untold
from backprobe.findings import Verdict

WIDTH = 760.0
NARROWEST = 320.0

_BAR = 7.0
_HEAD = 26.0
_ROW = 66.0
_LINE_Y = 27.0  # of a row's line, below the row's top
_BOLD, _SMALL = 12.0, 10.5
_JOINT_AT, _FUSE_AT, _CAP_AT = 0.34, 0.62, 0.72  # along the way from the vehicle to the unit
_GAP = 12.0
_SHAPE = 10.0  # of a verdict's mark
_UNTOLD = "not told where it went"


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnLead:
    """One lead of the unit as it was wired.

    `lead` is its name with colour and size ('power, RD 0.75 mm²'). `wire` is the vehicle's wire, None for a lead that
    is not used; `feeds` says what that wire is. `joint` names how they were joined or where it was grounded, or what
    was done with an unused end (empty: nobody has told). `fuse` is the fuse's rating as text, None where there is none.
    `verdict` marks a lead on which something does not hold, and `remark` says what; None where all holds.
    """

    lead: str
    wire: str | None
    feeds: str = ""
    joint: str = ""
    fuse: str | None = None
    ground: bool = False
    verdict: Verdict | None = None
    remark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wiring:
    """What one wiring drawing shows: the vehicle's and the unit's names, and the leads from top to bottom."""

    vehicle: str
    unit: str
    leads: tuple[DrawnLead, ...]


def wiring(content: Wiring, *, width: float = WIDTH) -> str:
    """The drawing of `content` as one SVG string, `width` units wide (at least 320), as high as it needs."""
    width = max(width, NARROWEST)
    height = _HEAD + _ROW * max(1, len(content.leads)) + 4
    bars = [(0.0, "start", content.vehicle), (width - _BAR, "end", content.unit)]
    parts = [tag("rect", {"width": width, "height": height, "fill": PAPER})]
    for x, anchor, name in bars:
        parts.append(tag("rect", {"x": x, "y": _HEAD - 6, "width": _BAR, "height": height - _HEAD + 2, "fill": INK}))
        place = (0.0 if anchor == "start" else width, 13.0)
        text = cut(name, size=_BOLD, room=width / 2 - _GAP, bold=True)
        parts.append(letters(place, text, size=_BOLD, fill=INK, anchor=anchor, bold=True))
    if not content.leads:
        parts.append(letters((_BAR + 6, _HEAD + 20), "No lead was joined yet.", size=_BOLD, fill=SOFT_INK))
    for index, lead in enumerate(content.leads):
        top = _HEAD + index * _ROW
        parts.append(_row(lead, top, width=width) + _marked(lead, top, width=width))
    return picture((width, height), (f"Wiring of {content.unit}", described(content)), *parts)


def _row(lead: DrawnLead, top: float, *, width: float) -> str:
    left, right, y = _BAR, width - _BAR, top + _LINE_Y
    span = right - left
    words = _words(lead, top, width=width)
    if lead.wire is None and not lead.ground:
        end = left + span * _CAP_AT
        return words + _line(end, right, y=y) + (cap((end, y)) if lead.joint else untold((end, y)))
    joint, fused = left + span * _JOINT_AT, left + span * _FUSE_AT
    marks = (to_frame if lead.ground else junction)((joint, y)) + (fuse((fused, y)) if lead.fuse else "")
    if lead.ground:
        return words + _line(joint, right, y=y) + marks
    return words + _line(left, joint, y=y, stroke_width=3.0) + _line(joint, right, y=y) + marks


def _marked(lead: DrawnLead, top: float, *, width: float) -> str:
    """The verdict's shape, its word and what does not hold, at the foot of the row; nothing where all holds."""
    if lead.verdict is None:
        return ""
    y, right = top + _LINE_Y + 31, width - _BAR - 5
    feeds = text_width(lead.feeds, _SMALL) if lead.wire is not None else 0.0
    beneath = text_width(lead.joint, _SMALL) if lead.ground else feeds
    room = max(right - _BAR - 5 - min(beneath, (right - _BAR) * 0.4) - _SHAPE - 2 * _GAP, (right - _BAR) * 0.5)
    said = cut(f"{lead.verdict}: {lead.remark}", size=_SMALL, room=room, bold=True)
    x = right - text_width(said, _SMALL, bold=True)
    shape = verdict_shape(lead.verdict, (x - _SHAPE - 4, y - _SHAPE + 1.5), size=_SHAPE)
    return shape + letters((right, y), said, size=_SMALL, fill=INK, anchor="end", bold=True)


def _line(start: float, end: float, *, y: float, stroke_width: float = 1.6) -> str:
    """A piece of wire; the vehicle's own is drawn thicker than the unit's lead."""
    return tag("path", {"d": path([(start, y), (end, y)]), "stroke": INK, "stroke-width": stroke_width})


def _words(lead: DrawnLead, top: float, *, width: float) -> str:
    """The words of a row: the wire and the lead above the line; what it feeds, the joint and the fuse beneath."""
    left, right = _BAR + 5, width - _BAR - 5
    span = width - 2 * _BAR
    above, first, second = top + _LINE_Y - 8, top + _LINE_Y + 18, top + _LINE_Y + 31
    name = cut(lead.lead, size=_BOLD, room=span * 0.42, bold=True)
    room = right - left - text_width(name, _BOLD, bold=True) - _GAP
    wire = cut(lead.wire or ("" if not lead.ground else "frame"), size=_BOLD, room=room, bold=True)
    parts = [letters((right, above), name, size=_BOLD, fill=INK, anchor="end", bold=True)]
    if wire:
        parts.append(letters((left, above), wire, size=_BOLD, fill=INK, bold=True))
    if lead.fuse and (lead.wire is not None or lead.ground):
        x = _BAR + span * _FUSE_AT
        said = cut(f"fuse {lead.fuse}", size=_SMALL, room=span * 0.3)
        parts.append(letters((x, first), said, size=_SMALL, fill=INK, anchor="middle"))
    if lead.wire is None and not lead.ground:
        said = cut(lead.joint or _UNTOLD, size=_SMALL, room=span - 10)
        parts.append(letters((right, first), said, size=_SMALL, fill=SOFT_INK, anchor="end"))
    else:
        parts += _beneath(lead, (first, second), span=span)
    rule = top + _ROW - 4
    parts.append(tag("path", {"d": path([(_BAR, rule), (width - _BAR, rule)]), "stroke": RULE, "stroke-width": 0.4}))
    return "".join(parts)


def _beneath(lead: DrawnLead, lines: tuple[float, float], *, span: float) -> list[str]:
    """The joint and what the wire feeds, below the line; under the frame symbol only the second of `lines` is free."""
    first, second = lines
    room = span * (_FUSE_AT - 0.16) if lead.fuse and not lead.ground else span - 10
    texts = [(second if lead.ground else first, lead.joint, room)]
    texts += [] if lead.ground else [(second, lead.feeds, span - 10)]
    if lead.verdict is not None:  # the right of the second line is the verdict's
        texts = [(y, text, min(share, span * 0.4) if y == second else share) for y, text, share in texts]
    return [
        letters((_BAR + 5, y), cut(text, size=_SMALL, room=share), size=_SMALL, fill=SOFT_INK)
        for y, text, share in texts
        if text
    ]


def described(content: Wiring) -> str:
    """The drawing in words, one sentence a lead."""
    return " ".join([_sentence(lead) + _verdict(lead) for lead in content.leads] or ["No lead was joined yet."])


def _verdict(lead: DrawnLead) -> str:
    return "" if lead.verdict is None else f" {str(lead.verdict).capitalize()}: {lead.remark}."


def _sentence(lead: DrawnLead) -> str:
    if lead.ground:
        fused = f", behind a fuse of {lead.fuse}" if lead.fuse else ""
        return f"{lead.lead} is grounded: {lead.joint or 'place not stated'}{fused}."
    if lead.wire is None:
        return f"{lead.lead} is not used: {lead.joint}." if lead.joint else f"{lead.lead}: {_UNTOLD}."
    fused = f" behind a fuse of {lead.fuse}" if lead.fuse else " without a fuse"
    joint = f" by {lead.joint}" if lead.joint else ""
    return f"{lead.lead} is joined to {lead.wire}{joint}{fused}."
