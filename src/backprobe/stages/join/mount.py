"""Where the unit sits."""

from __future__ import annotations

import re
from collections.abc import Iterator

from backprobe.evidence.join_sheet import Mount
from backprobe.findings import Finding, Stage, Standing, Verdict, judge
from backprobe.limits.windscreen import WINDSCREEN
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
}
CLEAR = {
    "clear_of_airbags": "inside a zone into which an airbag unfolds: it becomes a missile",
    "clear_of_column": "in the way of the steering column",
    "clear_of_pedals": "in the way of the pedals",
    "clear_of_ducts": "on a heater or air duct",
}
# common practice, no source: what a place's name gives away
NEVER = re.compile(
    r"\b(?:air.?bag\w*|steering column|pedal\w*|heater\w*|defrost\w*|duct\w*|exhaust\w*|engine bay|a.?pillar)\b"
)
BESIDE = re.compile(r"\b(?:away from|clear of|behind)\b")
WINDSCREEN_ID = "mount_windscreen"
OFF_IT = "move it to the windscreen's edge, or off the windscreen"
LOOK_UP = (
    "look up in 49 CFR 393.5 whether the device is vehicle safety technology, and write safety_technology = true; or "
    "take it off the windscreen"
)


def mount(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the unit's place, or what is missing for them."""
    seat = case.told.mount
    if seat is None:
        yield "where the unit sits"
        return
    untold = [name for name in ("place", *ASKED) if getattr(seat, name) is None]
    if seat.clear is None:
        untold += [name for name in CLEAR if getattr(seat, name) is None]
    if untold:
        yield ", ".join(untold)
    yield _place(seat)
    if seat.windscreen:
        yield from _windscreen(seat)


def _place(seat: Mount) -> Finding:
    return either(
        "mount_place",
        "Where the unit sits",
        faults=tuple(_faults(seat)),
        fine=f"{seat.place or 'its place'}: nothing speaks against it ({Standing.COMMON_PRACTICE})",
        then="move the unit, or put right what is named",
    )


def _faults(seat: Mount) -> Iterator[str]:
    yield from (words for name, words in (ASKED | CLEAR).items() if getattr(seat, name) is False)
    if seat.clear is False and not any(getattr(seat, name) is False for name in CLEAR):
        yield "in the way of an airbag, the steering column, pedals or ducts"
    place = (seat.place or "").lower()
    bad = NEVER.search(place)
    if bad and not BESIDE.search(place[: bad.start()]):
        yield f"'{seat.place}': no place for a unit ({bad[0]})"


def _windscreen(seat: Mount) -> Iterator[Finding | str]:
    """Inside the strip that the rule leaves at the top or the bottom of the swept area, and out of sight."""
    if seat.in_sight is None or (seat.top_mm is None and seat.bottom_mm is None):
        yield "of the windscreen top_mm or bottom_mm, and in_sight"
        return
    what = "The unit on the windscreen"
    if seat.in_sight:
        because = f"it is in the driver's line of sight: {WINDSCREEN['windscreen_below_top'].basis}"
        yield plain(WINDSCREEN_ID, what, verdict=Verdict.FAILS, because=because, then=OFF_IT)
        return
    measured = (("windscreen_below_top", seat.top_mm), ("windscreen_above_bottom", seat.bottom_mm))
    given = [(WINDSCREEN[name], mm) for name, mm in measured if mm is not None]
    rule, mm = max(given, key=lambda pair: pair[0].margin(pair[1]))  # either strip will do
    verdict = judge(rule, mm, low=mm, high=mm)
    if verdict is Verdict.HOLDS and not seat.safety_technology:
        verdict = Verdict.OPEN
    yield Finding(
        id=WINDSCREEN_ID,
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because=_because(seat),
        next={Verdict.FAILS: OFF_IT, Verdict.OPEN: LOOK_UP}.get(verdict),
        value=mm,
        low=mm,
        high=mm,
        unit="mm",
        digits=0,
        limit=rule,
    )


def _because(seat: Mount) -> str:
    """What the rule counts the unit as; what an antenna may is from memory and only shown."""
    if seat.safety_technology:
        return "out of the driver's sight; counted as vehicle safety technology, as somebody looked up"
    antenna = WINDSCREEN["windscreen_antenna"]
    return (
        "out of the driver's sight; that such a unit is vehicle safety technology is from memory and decides nothing "
        f"(an antenna alone: {antenna.side} {antenna.value:g} mm, {antenna.warrant})"
    )
