"""What the unit's ignition input may really follow, and the level of it that each script then makes.

Every wiring is a hypothesis about one lead: the positions of the key in which it is live, what ends it after the key
(the key itself, or a door), and what wakes it before the key. Its `cost` [nats] says how much less usual it is than
a true ignition; where two wirings explain the reports alike, the more usual one is believed. The costs are our own
estimate, no source: one departure from a true ignition costs 3, that is 1 in 20.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from backprobe.evidence.key_turn import ScriptKey
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.script import Row, Script

DEPARTURE = 3.0
ODD = 0.5  # the less usual of two forms of one departure

OFF, ACCESSORY, ON, CRANK, RUNNING = (
    ScriptKey.OFF,
    ScriptKey.ACCESSORY,
    ScriptKey.ON,
    ScriptKey.CRANK,
    ScriptKey.RUNNING,
)


class Wake(StrEnum):
    """What makes the input live before the key does: nothing, or the body.

    The body stays awake until the key is turned on and off again (held), for a while of its own (pulse), or until the
    key is turned off for the last time (through).
    """

    NONE = "none"
    HELD = "held"
    PULSE = "pulse"
    THROUGH = "through"


@dataclass(frozen=True, slots=True)
class Wiring:
    """One hypothesis. `release` is the row that ends retained power, None where the key does."""

    name: str
    live: frozenset[ScriptKey]
    cost: float = 0.0
    patterns: frozenset[PatternId] = frozenset()
    release: ScriptKey | None = None
    wake: Wake = Wake.NONE
    woken_by: ScriptKey = ScriptKey.UNLOCK
    latched: bool = False
    noise: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """The input goes live (`on`) or dead between two moments [s], at row number `row` of the script.

    Both moments are the same but where only the reports can tell how long a pulse lasted.
    """

    on: bool
    lo_s: float
    hi_s: float
    row: int


def _wiring(name: str, live: set[ScriptKey], *, cost: float = 0.0, pattern: PatternId | None = None) -> Wiring:
    return Wiring(name, frozenset(live), cost, frozenset(() if pattern is None else (pattern,)))


IGNITION = _wiring("ignition", {ON, CRANK, RUNNING})
_KEYED = (
    IGNITION,
    _wiring("ignition_not_in_crank", {ON, RUNNING}, cost=DEPARTURE, pattern=PatternId.NOT_LIVE_IN_CRANK),
    _wiring("accessory", {ACCESSORY, ON, RUNNING}, cost=DEPARTURE, pattern=PatternId.ON_IN_ACCESSORY),
    _wiring(
        "accessory_in_crank", {ACCESSORY, ON, CRANK, RUNNING}, cost=DEPARTURE + ODD, pattern=PatternId.ON_IN_ACCESSORY
    ),
)
_OTHERS = (
    _wiring("running_only", {RUNNING}, cost=DEPARTURE, pattern=PatternId.SENSED_NOT_WIRED),
    _wiring("after_start", {CRANK, RUNNING}, cost=DEPARTURE, pattern=PatternId.SENSED_NOT_WIRED),
    _wiring("start", {CRANK}, cost=DEPARTURE + 3 * ODD),
    _wiring("constant", {OFF, ACCESSORY, ON, CRANK, RUNNING}, cost=DEPARTURE, pattern=PatternId.NEVER_OFF),
    _wiring("nothing", set(), cost=DEPARTURE + 2 * ODD),
    _wiring("inverted", {OFF, ACCESSORY}, cost=DEPARTURE + 2 * ODD, pattern=PatternId.INVERTED),
    _wiring("inverted_accessory", {OFF}, cost=DEPARTURE + 3 * ODD, pattern=PatternId.INVERTED),
    Wiring(
        "latched", frozenset({ON, CRANK, RUNNING}), DEPARTURE + 4 * ODD, frozenset({PatternId.NEVER_OFF}), latched=True
    ),
    Wiring("noise", frozenset(), DEPARTURE + 4 * ODD, frozenset({PatternId.FLOATING}), noise=True),
)


def wirings_for(script: Script) -> tuple[Wiring, ...]:
    """The wirings that this script can tell apart: accessory, doors and unlocking only where they stand in it."""
    keys = {row.turn.key for row in script.rows}
    releases = (None, *(key for key in (ScriptKey.DOORS_OPEN, ScriptKey.DOORS_SHUT) if key in keys))
    wakes = [(Wake.NONE, ScriptKey.UNLOCK)]
    wakes += [
        (wake, key)
        for key in (ScriptKey.UNLOCK, ScriptKey.DOORS_OPEN)
        if any(row.turn.key is key and row.position is OFF for row in script.rows)
        for wake in (Wake.HELD, Wake.PULSE, Wake.THROUGH)
    ]
    keyed = tuple(
        _with(wiring, release=release, wake=wake, woken_by=key)
        for wiring in _KEYED
        if ACCESSORY in keys or ACCESSORY not in wiring.live
        for release in releases
        for wake, key in wakes
        if wake is Wake.NONE or key is not release
    )
    others = (each for each in _OTHERS if ACCESSORY in keys or each.name != "inverted_accessory")
    return (*keyed, *others)


def _with(wiring: Wiring, *, release: ScriptKey | None, wake: Wake, woken_by: ScriptKey) -> Wiring:
    """A wiring with retained power and waking, each a departure of its own."""
    cost, patterns, name = wiring.cost, set(wiring.patterns), wiring.name
    if release is not None:
        cost += DEPARTURE
        patterns.add(PatternId.FOLLOWS_DOOR_OR_TIMER)
        name += f", until {release}"
    if wake is not Wake.NONE:
        cost += DEPARTURE + (0.0 if wake is Wake.HELD else ODD) + (ODD if woken_by is ScriptKey.DOORS_OPEN else 0.0)
        patterns.add(PatternId.BODY_WAKE)
        name += f", woken by {woken_by} ({wake})"
    return Wiring(name, wiring.live, cost, frozenset(patterns), release, wake, woken_by)


def changes_of(wiring: Wiring, script: Script) -> tuple[bool, tuple[Change, ...]]:
    """The level before the first row, and the changes that the script makes on this wiring."""
    first = OFF in wiring.live
    return first, tuple(_changes(wiring, script, level=first))


def _changes(wiring: Wiring, script: Script, *, level: bool) -> Iterator[Change]:
    held_since: int | None = None  # the row at which the key let go of retained power
    woken, before, latched = False, OFF, False
    last_off = max((i for i, row in enumerate(script.rows) if row.turn.key is OFF), default=0)
    for index, row in enumerate(script.rows):
        cause = index
        if row.turn.key is wiring.release and held_since is not None:
            cause, held_since, woken = held_since, None, False
        if wiring.wake is not Wake.NONE and row.turn.key is wiring.woken_by and row.position is OFF:
            if wiring.wake is Wake.PULSE and not level:
                yield Change(on=True, lo_s=row.time_s, hi_s=row.time_s, row=index)
                yield Change(on=False, lo_s=row.time_s, hi_s=_until_live_s(wiring, script.rows[index + 1 :]), row=index)
                continue
            woken = True
        if row.position is not before:
            if wiring.release is not None and before in wiring.live and row.position in (OFF, ACCESSORY):
                held_since = index
            woken = woken and (row.position not in wiring.live or wiring.wake is Wake.THROUGH)
            woken = woken and not (row.position is OFF and index >= last_off)
            held_since = None if row.position in wiring.live else held_since
            before = row.position
        latched = latched or (wiring.latched and row.position in wiring.live)
        now = row.position in wiring.live or held_since is not None or woken or latched
        if now is not level:
            yield Change(on=now, lo_s=row.time_s, hi_s=row.time_s, row=cause)
            level = now


def _until_live_s(wiring: Wiring, rows: tuple[Row, ...]) -> float:
    return next((row.time_s for row in rows if row.position in wiring.live), math.inf)
