"""What the hand did with the key and the doors, and when: the script that a unit's reports are held against."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from backprobe.errors import Skipped


class ScriptKey(StrEnum):
    """A row of a key script: a position the key was turned to, or something done to the vehicle's body."""

    OFF = "off"
    ACCESSORY = "accessory"
    ON = "on"  # also after a start that failed
    CRANK = "crank"
    RUNNING = "running"
    UNLOCK = "unlock"
    DOORS_OPEN = "doors_open"
    DOORS_SHUT = "doors_shut"


IGNITION_KEYS = frozenset({ScriptKey.ON, ScriptKey.CRANK, ScriptKey.RUNNING})  # a true ignition wire is live here
BODY_KEYS = frozenset({ScriptKey.UNLOCK, ScriptKey.DOORS_OPEN, ScriptKey.DOORS_SHUT})  # the key stays where it is


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyTurn:
    """One row: `time_s` in seconds since 1970, UTC; `written` is the moment as it stands in the file."""

    time_s: float
    key: ScriptKey
    written: str
    line: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyScript:
    """A script in the order of time.

    `zoneless` says that times stood there without a zone (they were taken as UTC), `reordered` that the rows did
    not stand in the order of time.
    """

    turns: tuple[KeyTurn, ...]
    zoneless: bool = False
    reordered: bool = False
    skipped: tuple[Skipped, ...] = ()
