"""Since when the unit has been powered in this job: what it reported before belongs to another place or time."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.evidence.report import Event
from backprobe.stages.prove.observed import Stamped

GAP_S = 6 * 3600.0
POWERED = frozenset({Event.BOOT, Event.POWER_RESTORED})


@dataclass(frozen=True, slots=True)
class PowerUp:
    """The number of the first report that counts, and when it was; `time_s` is None where no power-up shows.

    `by_event` says that the unit itself reported it; otherwise it is the end of the last long silence.
    """

    first: int
    time_s: float | None = None
    by_event: bool = False


def power_up_of(stamped: Sequence[Stamped], first_key_s: float) -> PowerUp:
    """The power-up before the first turn of the key; `stamped` is in the order of time.

    The last boot or power_restored before that turn; where there is none, the end of the last silence of over 6
    hours before it; where there is none either, nothing is left out.
    """
    before = bisect_left(stamped, first_key_s, key=lambda each: each[0])
    for index in range(before - 1, -1, -1):
        if stamped[index][1].event in POWERED:
            return PowerUp(index, stamped[index][0], by_event=True)
    upto = stamped[: before + 1]  # the silence may last until after that turn
    for index in range(len(upto) - 1, 0, -1):
        if upto[index][0] - upto[index - 1][0] > GAP_S:
            return PowerUp(index, upto[index][0])
    return PowerUp(0)
