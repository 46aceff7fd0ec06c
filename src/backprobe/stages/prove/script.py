"""What a healthy unit must report of a script, row by row."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from backprobe.evidence.key_turn import BODY_KEYS, IGNITION_KEYS, KeyScript, KeyTurn, ScriptKey


class Expected(StrEnum):
    """What a true ignition does at a row of the script."""

    ON = "on"
    OFF = "off"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Row:
    """A row of the script with the key's position after it and what is expected of the unit."""

    turn: KeyTurn
    position: ScriptKey
    expected: Expected

    @property
    def time_s(self) -> float:
        """When, in seconds since 1970."""
        return self.turn.time_s

    @property
    def on(self) -> bool | None:
        """Whether the unit must go on (True) or off (False) here; None where nothing is expected."""
        return None if self.expected is Expected.NONE else self.expected is Expected.ON


@dataclass(frozen=True, slots=True)
class Script:
    """The rows in the order of time. The vehicle is taken to stand with the key off before the first."""

    rows: tuple[Row, ...]

    @property
    def start_s(self) -> float:
        """The moment of the first row."""
        return self.rows[0].time_s

    @property
    def last_s(self) -> float:
        """The moment of the last row; the state that it begins lasts until the last report received."""
        return self.rows[-1].time_s

    @property
    def first_key_s(self) -> float:
        """The moment when the key was first turned out of off."""
        return next(row.time_s for row in self.rows if row.position is not ScriptKey.OFF)

    @property
    def turns(self) -> tuple[int, ...]:
        """The numbers of the rows at which the unit must go on or off."""
        return tuple(i for i, row in enumerate(self.rows) if row.on is not None)

    def next_turn_s(self, index: int) -> float:
        """When the row after `index` comes at which the unit must go on or off; infinity where there is none."""
        later = (self.rows[i].time_s for i in self.turns if i > index)
        return next(later, math.inf)

    def cranks(self) -> Iterator[tuple[float, float]]:
        """When the starter began to turn and when the key left that position."""
        keys = [row for row in self.rows if row.turn.key not in BODY_KEYS]
        for row, after in pairwise(keys):
            if row.turn.key is ScriptKey.CRANK:
                yield row.time_s, after.time_s


def script_of(script: KeyScript) -> Script:
    """The rows with what is expected at each.

    A turn into on, crank or running is an `on`, unless the key comes from one of them; a turn out of them is an
    `off`. A first row that says off begins nothing: that is how the vehicle stood.
    """
    rows: list[Row] = []
    position = ScriptKey.OFF
    for turn in script.turns:
        before = position
        position = before if turn.key in BODY_KEYS else turn.key
        was, now = before in IGNITION_KEYS, position in IGNITION_KEYS
        expected = Expected.NONE if was == now else Expected.ON if now else Expected.OFF
        rows.append(Row(turn, position, expected))
    return Script(tuple(rows))
