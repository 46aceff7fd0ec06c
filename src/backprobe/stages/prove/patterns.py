"""The patterns that a fault leaves in the reports: their fixed names, what each means, and where to look."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class PatternId(StrEnum):
    """The names; scripts rely on them. The order is that in which patterns of equal strength are shown."""

    SWAPPED_SERIAL = "swapped_serial"
    RESETS_IN_CRANK = "resets_in_crank"
    NOT_LIVE_IN_CRANK = "not_live_in_crank"
    ON_IN_ACCESSORY = "on_in_accessory"
    NEVER_OFF = "never_off"
    FOLLOWS_DOOR_OR_TIMER = "follows_door_or_timer"
    SENSED_NOT_WIRED = "sensed_not_wired"
    BODY_WAKE = "body_wake"
    INVERTED = "inverted"
    FLOATING = "floating"
    DATE_ROLLOVER = "date_rollover"
    TIME_ZONE = "time_zone"
    GPS_TIME = "gps_time"
    STALE_POSITION = "stale_position"
    BACKLOG = "backlog"
    LATE_ATTACH = "late_attach"
    INTERVAL_REPORTING = "interval_reporting"
    SCRIPT_TOO_SHORT = "script_too_short"


# what only keeps the evidence from being complete; every other pattern is a fault
INCOMPLETE = frozenset(
    {
        PatternId.BACKLOG,
        PatternId.LATE_ATTACH,
        PatternId.INTERVAL_REPORTING,
        PatternId.SCRIPT_TOO_SHORT,
    }
)
LEAST_STRENGTH = 0.65  # below this a pattern is not named
STRENGTH_DIGITS = 2


@dataclass(frozen=True, slots=True)
class Words:
    """What a pattern means, and where to look."""

    means: str
    look_at: str


WORDS: dict[PatternId, Words] = {
    PatternId.SWAPPED_SERIAL: Words(
        "Another unit of the same yard reported these turns of the key: two units, or two labels, were swapped.",
        "The serial on the unit in this vehicle, and the vehicle in which this job's unit really is.",
    ),
    PatternId.RESETS_IN_CRANK: Words(
        "The unit restarts while the engine is cranked: its supply dips below what it needs.",
        "The supply's tap, fuse and ground under load, with the meter's MIN hold in a crank; a tap nearer the battery.",
    ),
    PatternId.NOT_LIVE_IN_CRANK: Words(
        "The ignition lead sits on a wire that goes dead while the starter turns.",
        "The ignition tap: take a wire that stays live in crank; read it there with the meter's MIN hold.",
    ),
    PatternId.ON_IN_ACCESSORY: Words(
        "The ignition lead sits on an accessory wire: the unit goes on before the ignition does.",
        "The ignition tap: take a wire that is dead in accessory and live in crank.",
    ),
    PatternId.NEVER_OFF: Words(
        "The ignition lead sits on a constant supply: the unit never sees the key turned off.",
        "The ignition tap and its splice to the supply lead; read the wire 10 minutes after key-off, doors shut.",
    ),
    PatternId.FOLLOWS_DOOR_OR_TIMER: Words(
        "The ignition lead sits on retained power: it goes off with a door or a timer, not with the key.",
        "The ignition tap: take a wire that falls at key-off; read it with the key off and the doors still shut.",
    ),
    PatternId.SENSED_NOT_WIRED: Words(
        "The unit goes on only once the engine has started: it senses voltage or motion, or sits on a wire that is "
        "live only while the engine runs.",
        "Whether the ignition lead is connected at all, the wire it sits on, and the unit's ignition setting.",
    ),
    PatternId.BODY_WAKE: Words(
        "The unit goes on when the vehicle is unlocked or a door is opened, before the key: the lead sits on a wire "
        "that the body controller wakes.",
        "The ignition tap: take a wire that stays dead until the key is turned.",
    ),
    PatternId.INVERTED: Words(
        "The unit reports on when the key is off, and off when it is on.",
        "The input's polarity in the unit's settings, and whether the lead sits on a switched ground.",
    ),
    PatternId.FLOATING: Words(
        "The unit's ignition flips while the key stands still: the lead makes no firm contact.",
        "The ignition splice and crimp (pull test), the connector's pin, and a lead that was never connected.",
    ),
    PatternId.DATE_ROLLOVER: Words(
        "The unit's date is wrong by 1,024 weeks, or stands in 1980: its GNSS clock rolled over or was never set.",
        "The unit's firmware, and its antenna's view of the sky at power-up.",
    ),
    PatternId.TIME_ZONE: Words(
        "The times are off by whole quarter hours: one clock, or one export, is in a local time zone.",
        "The unit's zone setting, the server's export, and the zone in which the script was written; all in UTC.",
    ),
    PatternId.GPS_TIME: Words(
        "The unit's stamps run 18 s ahead: it reports GPS time without taking off the leap seconds.",
        "The unit's firmware and time setting.",
    ),
    PatternId.STALE_POSITION: Words(
        "The unit reports the right turns of the key at a place where the vehicle is not: an old position is kept.",
        "The antenna, its cable and its view of the sky; the age of the fix in the unit's own status.",
    ),
    PatternId.BACKLOG: Words(
        "Many reports came in at once, or bear the server's time: the unit was out of reach, or does not stamp them "
        "itself, so lateness cannot be judged.",
        "Coverage and the cellular antenna; then turn the key through the script again with the data light on.",
    ),
    PatternId.LATE_ATTACH: Words(
        "The first key-on is not in the reports because the modem was still attaching to the network.",
        "Nothing on the wires: wait for the data light, then turn the key through the script again.",
    ),
    PatternId.INTERVAL_REPORTING: Words(
        "The unit shows its ignition only at its report interval, and a state of the script was shorter than debounce "
        "and two intervals, so that turns or their timing could not be seen.",
        "Nothing on the wires: hold each state longer (backprobe prove --plan), or set the unit to report ignition.",
    ),
    PatternId.SCRIPT_TOO_SHORT: Words(
        "The last report came before the final off could have come.",
        "Nothing on the wires: wait until the off has been reported, then fetch the reports again.",
    ),
}


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern that was found, 0 to 1 strong; `other_unit` is the unit that fits better (swapped_serial alone)."""

    id: PatternId
    strength: float
    other_unit: str | None = None

    def as_json(self) -> dict[str, object]:
        """The pattern with its words."""
        answer: dict[str, object] = {
            "pattern": str(self.id),
            "strength": round(self.strength, STRENGTH_DIGITS),
            "means": WORDS[self.id].means,
            "look_at": WORDS[self.id].look_at,
        }
        return answer if self.other_unit is None else {**answer, "other_unit": self.other_unit}


def ranked(patterns: list[Pattern]) -> tuple[Pattern, ...]:
    """The patterns strong enough to be named, the strongest first."""
    order = list(PatternId)
    named = [pattern for pattern in patterns if round(pattern.strength, STRENGTH_DIGITS) >= LEAST_STRENGTH]
    return tuple(sorted(named, key=lambda p: (-round(p.strength, STRENGTH_DIGITS), order.index(p.id))))


def look_at(words: str) -> str:
    """Where to look, as a thing to do.

    >>> look_at("The ignition tap."), look_at("Whether it is connected."), look_at("Nothing on the wires: wait.")
    ('look at the ignition tap', 'see whether it is connected', 'nothing on the wires: wait')
    """
    then = lowered(words)
    if then.startswith("nothing"):
        return then
    return f"{'see' if then.startswith('whether') else 'look at'} {then}"


def lowered(sentence: str) -> str:
    """A sentence as it stands behind 'next:', without capital and full stop.

    >>> lowered("Look at the antenna.")
    'look at the antenna'
    """
    return sentence[:1].lower() + sentence[1:].removesuffix(".")
