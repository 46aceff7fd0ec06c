"""The battery switch: in which side it sits, when it may be opened, and a ground that would bypass it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from backprobe.evidence.joint import Joint
from backprobe.evidence.walkround import Hazards, SwitchSide
from backprobe.findings import Finding
from backprobe.stages.walkround.cautions import NEGATIVE_SWITCH, before_isolating
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong

SWITCH = Matter("hazard_battery_switch", "Battery switch")
GROUND = Matter("hazard_negative_switch", "Battery switch in the negative side")
LOOK_UP = "look up in the maker's instructions how long after key-off the switch must stay closed (after_run_min)"
MOVE_IT = "move the ground from the battery to the frame, so that the switch cuts it off"
_AT_THE_POST = re.compile(r"\bbatter(?:y|ies)\b[^,;.]*\b(?:posts?|terminals?|clamps?|poles?|negative|minus)\b", re.I)


def has_switch(hazards: Hazards, sheet_says: bool | None) -> bool | None:
    """Whether the vehicle has a battery switch: as seen on it, else as the job sheet says; None where neither does."""
    return sheet_says if hazards.battery_switch is None else hazards.battery_switch


def battery_switch(hazards: Hazards, sheet_says: bool | None, *, grounds: Sequence[Joint] = ()) -> tuple[Finding, ...]:
    """The findings on the battery switch; none where there is none or nobody has said.

    `grounds` are the joints of the unit's ground leads. With a switch in the negative side, one that was made at the
    battery's post fails.
    """
    if sheet_says is not None and hazards.battery_switch is not None and hazards.battery_switch is not sheet_says:
        there = {True: "a battery switch", False: "no battery switch"}
        said = f"{there[sheet_says]} on the sheet, {there[hazards.battery_switch]} on the vehicle"
        return (SWITCH.finding([wrong(said, "look again, and put sheet or walkround right")], well=""),)
    if not has_switch(hazards, sheet_says):
        return ()
    well = f"in the {hazards.battery_switch_side} side; {before_isolating(hazards.after_run_min)}"
    found = SWITCH.finding(list(_unknown(hazards)), well=well)
    if hazards.battery_switch_side is not SwitchSide.NEGATIVE:
        return (found,)
    return (found, GROUND.finding(list(_bypassing(grounds)), well=NEGATIVE_SWITCH))


def _unknown(hazards: Hazards) -> Iterator[Doubt]:
    if hazards.battery_switch_side is None:
        yield not_said(
            "in which side of the battery it sits is not said",
            'follow the cable from the switch: battery_switch_side = "positive" or "negative"',
        )
    if hazards.after_run_min is None:
        yield not_said(before_isolating(None), LOOK_UP)


def _bypassing(grounds: Sequence[Joint]) -> Iterator[Doubt]:
    for joint in grounds:
        if joint.place and _AT_THE_POST.search(joint.place):
            yield wrong(f"lead '{joint.lead}' is grounded at '{joint.place}': that bypasses the switch", MOVE_IT)
