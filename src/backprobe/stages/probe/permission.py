"""What must not be tapped, whatever its volts say.

A meter cannot see what a wire feeds. A circuit that was named (fuse label, maker's diagram, body-builder
connector) and marks seen on the wire are matched with the words below; a match is final. Basis: common practice
(no source) and what makers print of their restraint and high-voltage wiring, see docs/sources.md; the maker of the
vehicle at hand goes first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from backprobe.evidence.reading import WireFacts


@dataclass(frozen=True, slots=True)
class Ban:
    """A kind of circuit that is never tapped: its name, and the words by which a label gives it away."""

    kind: str
    words: str


# Whole words, lower case; a star lets a word go on ('airbag*' also finds 'airbags').
CIRCUITS: tuple[Ban, ...] = (
    Ban("restraint (airbag) circuit", "airbag* air-bag* srs restraint* pretensioner* belt seatbelt* occupant squib*"),
    Ban("brake circuit", "brake* braking abs ebs esp esc ebd park-brake* retarder* ecas stability antilock anti-lock"),
    Ban("steering circuit", "steering eps power-steering steer"),
    Ban("engine or drive control", "engine-control ecu ecm pcm ems dme edc injector* injection fuel-pump coil* glow* "
        "ignition-coil* throttle accelerator* transmission gearbox tcm tcu scr adblue aftertreatment immobiliser "
        "immobilizer"),
    Ban("start circuit", "start starter* starting crank* solenoid* 50"),
    Ban("data bus", "can canh canl can-h can-l lin bus databus j1939 j1708 j1587 k-line kline flexray ethernet"),
    Ban("sensor or signal line", "sensor* signal* reference 5v sender* transducer*"),
    Ban("high voltage", "hv high-voltage highvoltage traction inverter* 400v 600v 800v dc-link"),
)  # fmt: skip
MARKS: tuple[Ban, ...] = (
    Ban("twisted pair: a bus or sensor line", "twisted twist pair shielded screened"),
    Ban("yellow covering: restraint wiring", "yellow"),
    Ban("orange covering: high voltage, on older vehicles restraint wiring", "orange"),
    *CIRCUITS,
)
_JOINED = (("engine control", "engine-control"), ("air bag", "airbag"), ("fuel pump", "fuel-pump"),
           ("high voltage", "high-voltage"), ("park brake", "park-brake"), ("ignition coil", "ignition-coil"),
           ("power steering", "power-steering"), ("engine management", "engine-control"),
           ("body bus", "bus"), ("k line", "k-line"), ("can h", "can-h"), ("can l", "can-l"))  # fmt: skip


_DOTTED = re.compile(r"(?<=\b\w)\.(?=\w\b)")  # the dots of S.R.S.


def bans(facts: WireFacts | None) -> tuple[str, ...]:
    """Why a wire must not be tapped, in words; empty when nothing that was declared forbids it.

    >>> bans(WireFacts(circuits=("SRS control unit",)))
    ("circuit 'SRS control unit': restraint (airbag) circuit",)
    >>> bans(WireFacts(circuits=("body-builder connector, ignition feed",)))
    ()
    """
    if facts is None:
        return ()
    found = [f"circuit '{text}': {ban.kind}" for text in facts.circuits if (ban := _match(text, CIRCUITS))]
    found += [f"mark '{text}': {ban.kind}" for text in facts.marks if (ban := _match(text, MARKS))]
    return tuple(found)


def identified(facts: WireFacts | None) -> bool:
    """Whether what the wire feeds was named at all."""
    return facts is not None and any(text.strip() for text in facts.circuits)


def _match(text: str, table: tuple[Ban, ...]) -> Ban | None:
    plain = " ".join(text.casefold().replace("_", " ").split())
    plain = _DOTTED.sub("", plain)
    for apart, joined in _JOINED:
        plain = plain.replace(apart, joined)
    return next((ban for ban in table if _pattern(ban).search(plain)), None)


@cache
def _pattern(ban: Ban) -> re.Pattern[str]:
    """The ban's words, whole: a hyphen parts words as a space does, so that 'airbag-unit' is found."""
    words = (re.escape(word.rstrip("*")) + (r"\w*" if word.endswith("*") else "") for word in ban.words.split())
    return re.compile(r"(?<!\w)(?:" + "|".join(words) + r")(?!\w)")
