"""Where the unit sits and how its cable runs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from backprobe.evidence.join_sheet import Mount
from backprobe.findings import Finding, Standing, Verdict
from backprobe.stages.join.matter import either, plain
from backprobe.stages.join.wiring_case import WiringCase

# common practice, no source
ASKED = {
    "solid": "not fixed to something solid",
    "reachable": "cannot be reached for service",
    "dry": "gets wet",
    "cool": "gets hot",
    "quiet": "rattles",
    "tied": "excess cable is not tied",
    "clear": "in the way of an airbag, the steering column, pedals or ducts",
}
# common practice, no source: what a place's name gives away
NEVER = re.compile(
    r"\b(?:air.?bag\w*|steering column|pedal\w*|heater\w*|defrost\w*|duct\w*|exhaust\w*|engine bay|a.?pillar)\b"
)
# 49 CFR 393.60(e)(1)(ii), 87 FR 12596 of 7 March 2022
TOP_MOST_MM, BOTTOM_MOST_MM = 216.0, 175.0
RULE = "49 CFR 393.60(e)(1)(ii), 87 FR 12596"
BRACKET = re.compile(r"\b(?:away from|clear of|behind)\b")


def mount(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the unit's place, or what is missing for them."""
    seat = case.told.mount
    if seat is None:
        yield "where the unit sits"
        return
    untold = [name for name in ("place", *ASKED) if getattr(seat, name) is None]
    if untold:
        yield ", ".join(untold)
    yield _place(seat)
    if seat.windscreen:
        yield from _windscreen(seat)


def _place(seat: Mount) -> Finding:
    faults = [words for name, words in ASKED.items() if getattr(seat, name) is False]
    place = (seat.place or "").lower()
    bad = NEVER.search(place)
    if bad and not BRACKET.search(place[: bad.start()]):
        faults.append(f"'{seat.place}': no place for a unit ({bad[0]})")
    return either(
        "mount_place",
        "Where the unit sits",
        faults=tuple(faults),
        fine=f"{seat.place or 'its place'}: nothing speaks against it ({Standing.COMMON_PRACTICE})",
        then="move the unit, or put right what is named",
    )


def _windscreen(seat: Mount) -> Iterator[Finding | str]:
    """Inside the strip that the rule leaves at the top or the bottom of the swept area, and out of sight."""
    if seat.in_sight is None or (seat.top_mm is None and seat.bottom_mm is None):
        yield "of the windscreen top_mm or bottom_mm, and in_sight"
        return
    at_top = seat.top_mm is not None and seat.top_mm <= TOP_MOST_MM
    at_bottom = seat.bottom_mm is not None and seat.bottom_mm <= BOTTOM_MOST_MM
    within = f"at most {TOP_MOST_MM:g} mm below the swept area's upper edge or {BOTTOM_MOST_MM:g} mm above its lower"
    yield plain(
        "mount_windscreen",
        "The unit on the windscreen",
        verdict=Verdict.HOLDS if (at_top or at_bottom) and not seat.in_sight else Verdict.FAILS,
        because=f"{within}, outside the driver's sight lines: {RULE}",
        then=None if (at_top or at_bottom) and not seat.in_sight else "move it to the windscreen's edge, or off it",
    )
