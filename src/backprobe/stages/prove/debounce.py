"""What a unit with a debounce reports of a changing level.

A level counts once it has stood for the debounce, so a shorter one leaves no event at all: a restart of the engine
within the off debounce shows as one long on. A column of the bare input may show it all the same.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.stages.prove.wirings import Change

UNSURE_S = 2.0  # a level that stood this near to its debounce may or may not be reported
UNSURE_PART = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class Delays:
    """How late on and off are stamped after the turn of the key [s].

    `clock_s` of it is taken to be the clock, and at most `clock_most_s` can be.
    """

    on_s: float
    off_s: float
    clock_s: float = 0.0
    clock_most_s: float = 0.0

    def of(self, on: bool) -> float:
        """The delay of an on, or of an off."""
        return self.on_s if on else self.off_s


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """The unit must stamp an on, or an off, between two moments [s]; from `bare_s` on the bare input shows it.

    `optional` where the level stood too briefly to be sure; `row` is the script's row that causes it.
    """

    on: bool
    lo_s: float
    hi_s: float
    bare_s: float
    row: int
    optional: bool = False


def due_from(changes: Sequence[Change], delays: Delays, *, level: bool) -> Iterator[Due]:
    """What must be reported of `changes`, beginning at `level`, in the order of time."""
    reported, unsure = level, False
    for index, change in enumerate(changes):
        delay_s = delays.of(change.on)
        ends_s = changes[index + 1].hi_s if index + 1 < len(changes) else math.inf
        spare_s = ends_s - change.lo_s - max(0.0, delay_s - delays.clock_s)
        slack_s = UNSURE_S + UNSURE_PART * abs(delay_s)
        again = change.on is reported  # the level before it was too short to be reported
        optional = again or unsure or spare_s < slack_s
        if not again and spare_s >= -slack_s:
            reported = change.on
            unsure = spare_s < slack_s
        elif not again:
            unsure = False
        yield Due(
            on=change.on,
            lo_s=change.lo_s + delay_s,
            hi_s=change.hi_s + delay_s,
            bare_s=change.lo_s,
            row=change.row,
            optional=optional,
        )
