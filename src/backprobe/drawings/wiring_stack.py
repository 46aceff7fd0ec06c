"""The as-built wiring for a narrow page: one block a lead, read from above downwards as the current goes.

On the left of a block its line: the vehicle's wire, thick, to the dot of the joint, the fuse, then the unit's lead,
thin. On the right of it the words, in letters of at least 13 units, broken and never cut. A lead in the frame begins
at the frame symbol, an unused one at its cap, one of which nobody has told at a question mark.
"""

from __future__ import annotations

from backprobe.drawings.marks import verdict_shape
from backprobe.drawings.palette import INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.roomy import NAME_SIZE, TEXT_SIZE, line_of, paragraph
from backprobe.drawings.svg import path, picture, tag
from backprobe.drawings.wiring import NARROWEST, DrawnLead, Wiring, described
from backprobe.drawings.wiring_marks import cap_upright, frame_upright, fuse_upright, junction, untold

_EDGE, _LINE_X, _WORDS_X = 6.0, 22.0, 44.0
_STEP, _BLOCK = 10.0, 12.0  # between the parts of a block, and below it
_RISE = 4.5  # the middle of a line of letters above its baseline
_SHAPE = 12.0
_FUSE = 15.0  # half of it
_THICK, _THIN = 4.0, 1.8


def stacked_wiring(content: Wiring, *, width: float) -> str:
    """The drawing of `content` as one SVG string, `width` units wide (at least 320), as high as its words need."""
    width = max(width, NARROWEST)
    drawn, y = _head(content, width=width)
    parts = [drawn]
    if not content.leads:
        drawn, y = paragraph((_EDGE, y + NAME_SIZE), "No lead was joined yet.", room=width - 12, fill=SOFT_INK)
        parts.append(drawn)
    for lead in content.leads:
        rule = tag("path", {"d": path([(_EDGE, y), (width - _EDGE, y)]), "stroke": RULE, "stroke-width": 0.8})
        drawn, y = _block(lead, y, room=width - _EDGE - _WORDS_X)
        parts.append(rule + drawn)
    ground = tag("rect", {"width": width, "height": y, "fill": PAPER})
    return picture((width, y), (f"Wiring of {content.unit}", described(content)), ground, *parts)


def _head(content: Wiring, *, width: float) -> tuple[str, float]:
    """The vehicle beside a thick line and the unit beside a thin one, and where the blocks begin."""
    y, parts = 20.0, []
    for name, thickness in ((content.vehicle, _THICK), (content.unit, _THIN)):
        ends = [(_EDGE, y - _RISE), (_WORDS_X - 8, y - _RISE)]
        parts.append(tag("path", {"d": path(ends), "stroke": INK, "stroke-width": thickness}))
        drawn, y = paragraph((_WORDS_X, y), name, room=width - _EDGE - _WORDS_X, fill=INK, bold=True, size=NAME_SIZE)
        parts.append(drawn)
        y += 5
    return "".join(parts), y - 5


def _block(lead: DrawnLead, top: float, *, room: float) -> tuple[str, float]:
    """One lead from above downwards, and where its block ends."""
    start, y = _start(lead, top + 24, room=room)
    parts = [start]
    if lead.fuse and (lead.wire is not None or lead.ground):
        middle = y + _FUSE - 6
        words = line_of((_WORDS_X, middle + _RISE), f"fuse {lead.fuse}", room=room, fill=INK)
        parts.append(fuse_upright((_LINE_X, middle)) + words)
        y = middle + _FUSE + TEXT_SIZE + 4
    name, below = paragraph((_WORDS_X, y), lead.lead, room=room, fill=INK, bold=True, size=NAME_SIZE)
    parts.append(name)
    marked, end = _marked(lead, below + 4, room=room)
    # the line lies beneath its marks
    line = _lines(lead, top + 24 - _RISE, joint=_joint_y(lead, top + 24, room=room), end=y)
    return line + "".join(parts) + marked, end - NAME_SIZE + _BLOCK


def _joint_y(lead: DrawnLead, y: float, *, room: float) -> float:
    """The middle of the dot of the joint."""
    return _wire_words(lead, y, room=room)[1] + _STEP - _RISE


def _lines(lead: DrawnLead, top: float, *, joint: float, end: float) -> str:
    """The vehicle's wire down to the joint, and from there the unit's lead."""
    if lead.wire is None or lead.ground:
        return _piece(top, end, stroke_width=_THIN)
    return _piece(top - 10, joint, stroke_width=_THICK) + _piece(joint, end, stroke_width=_THIN)


def _piece(start: float, end: float, *, stroke_width: float) -> str:
    ends = [(_LINE_X, start), (_LINE_X, end)]
    return tag("path", {"d": path(ends), "stroke": INK, "stroke-width": stroke_width})


def _wire_words(lead: DrawnLead, y: float, *, room: float) -> tuple[str, float]:
    """What the vehicle calls the wire and what it feeds, and the baseline that comes next."""
    name, y = paragraph((_WORDS_X, y), lead.wire or "", room=room, fill=INK, bold=True, size=NAME_SIZE)
    feeds, y = paragraph((_WORDS_X, y), lead.feeds, room=room, fill=SOFT_INK)
    return name + feeds, y


def _start(lead: DrawnLead, y: float, *, room: float) -> tuple[str, float]:
    """Where the lead begins: the vehicle's wire with the joint, the frame, a cap, or a question mark."""
    if lead.ground:
        name, after = paragraph((_WORDS_X, y), "frame", room=room, fill=INK, bold=True, size=NAME_SIZE)
        mark, words = frame_upright((_LINE_X, y - _RISE)), lead.joint
    elif lead.wire is None:
        name, after = "", y
        mark = cap_upright((_LINE_X, y - _RISE)) if lead.joint else untold((_LINE_X + 8, y - 12))
        words = lead.joint or "not told where it went"
    else:
        name, after = _wire_words(lead, y, room=room)
        after += _STEP
        mark, words = junction((_LINE_X, after - _RISE)), lead.joint
    said, after = paragraph((_WORDS_X, after), words, room=room, fill=SOFT_INK)
    return name + mark + said, after + _STEP


def _marked(lead: DrawnLead, y: float, *, room: float) -> tuple[str, float]:
    """The verdict's shape, its word and what does not hold; nothing where all holds."""
    if lead.verdict is None:
        return "", y
    shape = verdict_shape(lead.verdict, (_LINE_X - _SHAPE / 2, y - _SHAPE + 2), size=_SHAPE)
    said, y = paragraph((_WORDS_X, y), f"{lead.verdict}: {lead.remark}", room=room, fill=INK, bold=True)
    return shape + said, y + 4
