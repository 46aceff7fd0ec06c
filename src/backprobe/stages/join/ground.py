"""The unit's ground: its resistance under a known load, what that does to the unit, and where it was fixed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from backprobe.evidence.join_sheet import Drop
from backprobe.evidence.joint import Joint
from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding, Stage, Standing, Verdict, judge
from backprobe.limits.joints import JOINTS
from backprobe.stages.given import said
from backprobe.stages.join.matter import either, plain
from backprobe.stages.join.measured import LOAD_SURE_TO, read_ohm
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase

DROP_ID, PLACE_ID, SCREW_ID = "join_ground_drop", "join_ground_place", "join_ground_screw"
MOVE = (
    "clean the ground to bare metal, tighten it and seal it, or move it to a factory ground; then read the drop again"
)
READ = "drop_mV and load_A: millivolts from the unit's ground to the battery's negative post, under a known load"


@dataclass(frozen=True, slots=True)
class NoGround:
    """Where no unit is grounded: the words that give such a place away, and why not."""

    words: str
    why: str


# Common practice, no source; the vehicle maker's own ground points go first. A star lets a word go on.
NO_GROUND = (
    NoGround("belt* seatbelt* seat-belt* airbag* srs restraint* pretensioner*", "restraint hardware: it must not be "
             "loosened, and its torque keeps people in their seats"),
    NoGround("ecu ecm pcm tcm bcm abs module* control-unit* sensor*", "a module's own ground: what the unit draws "
             "shifts what the module reads"),
    NoGround("high-voltage hv bonding inverter* traction", "high-voltage bonding: it is for safety alone"),
    NoGround("fuel tank* adblue lpg cng", "fuel hardware: a spark there starts a fire"),
    NoGround("brake* caliper* brake-pipe* air-tank*", "brake hardware"),
    NoGround("painted paint* powder-coated plastic", "paint and plastic do not conduct"),
    NoGround("door hinge* hood bonnet seat-rail* pedal* column steering moving", "a moving part: its ground comes and "
             "goes with it"),
)  # fmt: skip
_JOINED = (("seat belt", "seatbelt"), ("air bag", "airbag"), ("control unit", "control-unit"), ("brake pipe", "brake"),
           ("high voltage", "high-voltage"), ("air tank", "air-tank"), ("seat rail", "seat-rail"))  # fmt: skip
_BARED = re.compile(r"\b(?:bare|bared|paint (?:was )?(?:scraped|ground|taken) off|no paint|unpainted)\b")
_BRACKET = re.compile(r"\b(?:bracket|frame|cross.?member)\b")


def ground(case: WiringCase) -> Iterator[Finding | str]:
    """The findings on the unit's ground, or what is missing for them."""
    grounded = list(case.joined(Purpose.GROUND))
    if not grounded:
        return
    yield READ if case.told.ground is None else _drop(case, case.told.ground)
    for _, joint in grounded:
        if joint.place is not None:
            yield _place(joint, switched=bool(case.told.switched_negative or _post_behind_switch(case)))
    if case.told.switched_negative is None and case.sheet.vehicle.battery_switch:
        yield "switched_negative: which side the battery switch is in"
    yield from _screw(case)


def _post_behind_switch(case: WiringCase) -> bool:
    """Whether a switch may be in the negative side: there is one, and nobody said where."""
    return case.told.switched_negative is None and bool(case.sheet.vehicle.battery_switch)


def _drop(case: WiringCase, drop: Drop) -> Finding:
    """The drop at the load of the test, or at the unit's peak where that is more."""
    ohm = read_ohm(drop, case.meter)
    at_A = max(drop.load_A, case.unit.supply.peak_A or 0.0)
    seen = ohm.times(1000.0 * at_A)
    value, low, high = (round(figure, 1) for figure in (seen.likely, seen.low, seen.high))
    limit = JOINTS["ground_drop"]
    verdict = judge(limit, value, low=low, high=high)
    peak_A = case.unit.supply.peak_A
    shift = "" if peak_A is None else (
        f"; at the unit's peak of {said(peak_A)} A its supply reads {said(1000.0 * ohm.likely * peak_A)} mV low, and "
        "every input as much"
    )  # fmt: skip
    found = Finding(
        id=DROP_ID,
        stage=Stage.JOIN,
        what="The ground under load",
        verdict=verdict,
        because=f"{drop.drop_mV:g} mV at {drop.load_A:g} A (±{LOAD_SURE_TO:.0%}) are {said(1000.0 * ohm.likely)} mΩ "
        f"({said(1000.0 * ohm.low)} to {said(1000.0 * ohm.high)}){shift}",
        next=None if verdict is Verdict.HOLDS else MOVE,
        value=value,
        low=low,
        high=high,
        unit="mV",
        digits=1,
        limit=limit,
    )
    own_mV = None if case.policy is None else case.policy.ground_drop_mV
    then = tightened(found, own_mV, policy=case.policy)
    return then if then.verdict is Verdict.HOLDS else replace(then, next=MOVE)


def forbidden_grounds(place: str) -> tuple[str, ...]:
    """Why a unit must not be grounded at a place, in words; empty where nothing in its name speaks against it.

    >>> forbidden_grounds("seat belt anchor, left")
    ('restraint hardware: it must not be loosened, and its torque keeps people in their seats',)
    >>> forbidden_grounds("factory ground stud G104, left kick panel")
    ()
    """
    words = " ".join(place.lower().replace("_", " ").split())
    for apart, joined in _JOINED:
        words = words.replace(apart, joined)
    bared = bool(_BARED.search(words))
    kept = [no for no in NO_GROUND if not (bared and no.words.startswith("painted"))]
    return tuple(no.why for no in kept if _pattern(no).search(words) and not _only_bracket(no, words))


def _only_bracket(no: NoGround, words: str) -> bool:
    """Whether a moving part is named only for its bracket, which does not move with it."""
    return no.words.startswith("door") and bool(_BRACKET.search(words)) and "moving" not in words


def _pattern(no: NoGround) -> re.Pattern[str]:
    words = (re.escape(word.rstrip("*")) + (r"\w*" if word.endswith("*") else "") for word in no.words.split())
    return re.compile(r"(?<![\w-])(?:" + "|".join(words) + r")(?![\w-])")


def _place(joint: Joint, *, switched: bool) -> Finding:
    place = joint.place or ""
    faults = [f"'{place}': {why}" for why in forbidden_grounds(place)]
    if switched and re.search(r"\b(?:battery|post|terminal)\b", place.lower()):
        faults.append(f"'{place}': with the switch in the negative side the battery's post is not the frame's ground")
    return either(
        PLACE_ID,
        "Where the unit is grounded",
        faults=tuple(faults),
        fine=f"'{place}': nothing speaks against it ({Standing.COMMON_PRACTICE}; the maker's own points go first)",
        then="move the ground to the vehicle's own ground point or bare metal of the frame, and read its drop again",
    )


def _screw(case: WiringCase) -> Iterator[Finding | str]:
    told = case.told
    if not told.self_tapping:
        return
    if told.behind is None:
        yield "behind: what is behind the panel where the self-tapping screw went"
        return
    words = told.behind.lower()
    bad = re.search(r"\b(?:wir\w*|loom\w*|harness\w*|airbag\w*|hose\w*|pipe\w*|tank\w*|fuel|module\w*)\b", words)
    if bad and not re.search(r"\bno (?:\w+ ){0,2}" + bad[0], words):
        because = f"behind the panel: {told.behind}"
        then = "take the screw out, look at what it met, and ground at a stud or bolt instead"
        yield plain(SCREW_ID, "The self-tapping screw", verdict=Verdict.FAILS, because=because, then=then)
    else:
        yield plain(SCREW_ID, "The self-tapping screw", verdict=Verdict.HOLDS, because=f"behind it: {told.behind}")
