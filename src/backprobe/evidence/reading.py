"""One value off a meter, and the table of them that a technician writes."""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.errors import Skipped
from backprobe.evidence.keys import Capture, Key


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A voltage on one wire at one key position.

    `volts` is in volts; `typed` is the figure as it was written ('12.30'); `count_V` is one count of its last
    digit in volts (0.01 for '12.30'). `after_min` is minutes since key-off, `load_A` the load on the wire.
    Of a figure that no meter showed `source` names who did, and `spread_V` how far it may be off either way.
    """

    wire: str
    key: Key
    volts: float
    typed: str
    count_V: float
    capture: Capture = Capture.DISPLAY
    after_min: float | None = None
    load_A: float | None = None
    line: int | None = None
    source: str | None = None
    spread_V: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WireFacts:
    """What was declared of a wire: circuits it was identified as, and marks seen on it."""

    circuits: tuple[str, ...] = ()
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsTable:
    """A readings table as read.

    `wires` holds every wire named, in order of first appearance, measured or only declared. `absent_keys` are
    the positions that the table says do not exist on this vehicle (volts 'na'). `unread` are the places that
    stand in the table with a wire and key whose value could not be read: they are to be measured again.
    """

    readings: tuple[Reading, ...] = ()
    wires: tuple[str, ...] = ()
    facts: dict[str, WireFacts] = field(default_factory=dict)
    absent_keys: frozenset[Key] = frozenset()
    unread: tuple[tuple[str, Key], ...] = ()
    skipped: tuple[Skipped, ...] = ()
