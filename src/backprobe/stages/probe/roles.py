"""What a wire can be, and what each kind of wire shows at each position of the key.

This table is the whole of what the tool believes about wires; the rest is arithmetic. Its figures are the
trade's common knowledge put into numbers (common practice, no source), and they are meant to be read and argued
with. A role has one or more *ways* of behaving; a way has a weight among its role's ways, and for every key
position the levels that a meter may find there, in percent:

    B  battery level at that moment (whole in the crank: whatever the battery does)
    Z  zero (up to a ghost voltage)
    M  a signal's level, about 0.3-5.5 V
    P  the mean of a pulsed or dimmed feed, anywhere between
    R  a line that rests a little below battery level (pulled up, or a bus)
    H  half the battery, in a 24 V system
    A  anything

'crank' is what a display or a fast recorder sees while the engine turns. A MIN hold armed before the crank
keeps what stood there before, so a wire that is live only in the crank shows zero; a MAX hold keeps the level
before the crank.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from backprobe.evidence.keys import Capture, Key


class Role(StrEnum):
    """What a vehicle wire is for, as far as volts can tell."""

    CONSTANT = "constant"
    IGNITION = "ignition"
    IGNITION_NOT_IN_CRANK = "ignition_not_in_crank"
    ACCESSORY = "accessory"
    START = "start"
    RETAINED = "retained"
    RUNNING_ONLY = "running_only"
    LIGHTING = "lighting"
    SIGNAL = "signal"
    NO_SUPPLY = "no_supply"
    UNKNOWN = "unknown"


class Level(StrEnum):
    """A kind of voltage level; see the module's text."""

    BATTERY = "B"
    ZERO = "Z"
    SIGNAL = "M"
    PULSED = "P"
    RESTING = "R"
    HALF = "H"
    ANYTHING = "A"


Mix = tuple[tuple[Level, float], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Way:
    """One way in which a wire of `role` behaves; `share` is its part of the role, `levels` its level mix by key."""

    role: Role
    share: float
    levels: dict[Key, Mix]
    crank_min: Mix | None = None

    @property
    def half_voltage(self) -> bool:
        """Whether this is the way of a converter or a centre tap in a 24 V vehicle."""
        return any(level is Level.HALF for level, _ in self.levels[Key.ON])

    def mix(self, key: Key, capture: Capture) -> Mix:
        """The levels that a meter may find at `key` with `capture`, with their probabilities."""
        if key is not Key.CRANK or capture in (Capture.DISPLAY, Capture.LOGGED):
            return self.levels[key]
        if capture is Capture.MIN:
            return self.crank_min or self.levels[key]
        return _with_level_before(self.levels[Key.CRANK], self.levels[Key.ON])


def _with_level_before(crank: Mix, before: Mix) -> Mix:
    """A MAX hold: half of the time it was armed before the crank and keeps the level that stood there."""
    return tuple((level, share / 2) for level, share in crank + before)


_KEYS = (Key.OFF, Key.ACCESSORY, Key.ON, Key.CRANK, Key.RUNNING, Key.AFTER, Key.ISOLATED, Key.CHARGING)

# How common each role is among the wires that a technician puts the probe on.
PRIOR: dict[Role, float] = {
    Role.CONSTANT: 0.22,
    Role.IGNITION: 0.16,
    Role.IGNITION_NOT_IN_CRANK: 0.10,
    Role.ACCESSORY: 0.11,
    Role.START: 0.04,
    Role.RETAINED: 0.08,
    Role.RUNNING_ONLY: 0.04,
    Role.LIGHTING: 0.08,
    Role.SIGNAL: 0.10,
    Role.NO_SUPPLY: 0.05,
    Role.UNKNOWN: 0.02,
}

# One line a way: role, share of the role in percent, a mix for each key, and, where it differs, what a MIN hold
# keeps in the crank. 'B60Z40' reads: battery level in 60 % of such wires, zero in 40 %; a letter alone is certain.
TABLE = """
role                  share off       accessory on        crank     running   after     isolated  charging  min
constant                100 B         B         B         B         B         B         B40Z60    B
ignition                100 Z         Z         B         B         B         Z         Z         Z
ignition_not_in_crank   100 Z         Z         B         Z         B         Z         Z         Z
accessory                90 Z         B         B         Z         B         Z         Z         Z
accessory                10 Z         B         B         B         B         Z         Z         Z
start                   100 Z         Z         Z85M15    B         Z85M15    Z         Z         Z         Z80M10B10
retained                 40 B         B         B         B         B         Z         Z         B50Z50
retained                 45 B         B         B         Z         B         Z         Z         B50Z50
retained                 15 B         Z         B         B         B         Z         Z         B50Z50
running_only            100 Z         Z         Z75M25    Z60M20B20 B         Z95B5     Z         Z95B5
lighting                 10 Z         Z         Z         Z         Z         Z         Z         Z
lighting                 30 P50Z50    P75Z25    P85Z15    P50Z50    P85Z15    P30Z70    Z         P30Z70
lighting                 10 B         B         B         B50Z50    B         B30Z70    Z         B50Z50
lighting                 20 Z         Z80B20    B60P20Z20 B8Z92     B70P30    Z         Z         Z
lighting                 30 Z50B45P5  Z50B45P5  Z50B45P5  Z60B35P5  Z50B45P5  Z70B25P5  Z         Z50B50
signal                   45 M80Z20    M85Z15    M95Z5     M90Z10    M95Z5     M40Z60    M20Z80    M50Z50
signal                   20 R95Z5     R95Z5     R90P10    R80P10Z10 R90P10    R50Z40P10 Z         R50Z50
signal                   15 R60Z40    R60Z40    R60Z40    R60Z40    R60Z40    R40Z60    Z         R50Z50
signal                   10 B60Z40    B60Z40    B60Z40    B50Z50    B60Z40    B60Z40    Z         B50Z50
signal                   10 M40Z20R40 M40Z20R40 M40Z20R40 M40Z20R40 M40Z20R40 M40Z20R40 Z         M40Z20R40
no_supply               100 Z         Z         Z         Z         Z         Z         Z         Z
unknown                 100 A50B25Z25 A50B25Z25 A50B25Z25 A50B25Z25 A50B25Z25 A50B25Z25 A50B25Z25 A50B25Z25
"""

# In a 24 V vehicle a wire near 12 V hangs on a converter or on the centre tap between two batteries.
HALF_TABLE = """
role                  share off       accessory on        crank     running   after     isolated  charging  min
unknown                 100 H80Z20    H80Z20    H         H80Z20    H         H60Z40    H40Z60    H80Z20
"""
HALF_SHARE = 0.05


def read_mix(text: str) -> Mix:
    """Levels with shares out of a table's cell.

    >>> read_mix("B60Z40")
    ((<Level.BATTERY: 'B'>, 0.6), (<Level.ZERO: 'Z'>, 0.4))
    """
    return tuple((Level(letter), float(share or 100) / 100.0) for letter, share in re.findall(r"([A-Z])(\d*)", text))


def read_table(text: str) -> tuple[Way, ...]:
    """The ways in a table laid out as `TABLE`."""
    rows = [line.split() for line in text.strip().splitlines()[1:]]
    return tuple(_way(row) for row in rows)


def _way(cells: list[str]) -> Way:
    mixes = [read_mix(cell) for cell in cells[2:]]
    levels = dict(zip(_KEYS, mixes, strict=False))
    return Way(Role(cells[0]), float(cells[1]) / 100.0, levels, mixes[len(_KEYS)] if len(mixes) > len(_KEYS) else None)


# Roles that differ from others at one position alone: a vehicle that lacks it has no such wires.
OF_THE_CRANK = (Role.IGNITION_NOT_IN_CRANK, Role.START)
OF_ACCESSORY = (Role.ACCESSORY,)


@cache
def priors(system_V: int, *, has_crank: bool, has_accessory: bool) -> tuple[float, ...]:
    """The prior probability of each of `ways(system_V)` in a vehicle with or without those positions; they sum to 1."""
    none = (() if has_crank else OF_THE_CRANK) + (() if has_accessory else OF_ACCESSORY)
    shares = [0.0 if way.role in none else prior for way, prior in ways(system_V)]
    total = math.fsum(shares)
    return tuple(share / total for share in shares)


@cache
def ways(system_V: int) -> tuple[tuple[Way, float], ...]:
    """Every way a wire may behave in a 12 or 24 V vehicle, with its prior probability; they sum to 1."""
    plain = tuple((way, PRIOR[way.role] * way.share) for way in read_table(TABLE))
    if system_V != 24:
        return plain
    half = tuple((way, HALF_SHARE * way.share) for way in read_table(HALF_TABLE))
    return tuple((way, prior * (1.0 - HALF_SHARE)) for way, prior in plain) + half
