"""Was the sampling fast enough to have seen the whole dip?

The inrush trough of the ISO 16750-2 starting profile lasts 15 ms (12 V) or 50 ms (24 V). Three samples inside the
shortest trough are asked for, so that at least one lies on its floor whatever the phase. A logger that repeats an
old value is as slow as its values change: what counts is the channel's own step, not the file's.
"""

from __future__ import annotations

from dataclasses import dataclass
from operator import eq
from statistics import median

from backprobe.findings import Standing
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.stages.probe.recording.trace import Line, widest_step_s

SAMPLES_IN_TROUGH = 3
SLOW_STEP_S = 0.1  # steps above this may miss the whole crank, not its trough alone
NEAR_S = 0.25  # the trough lies within this time of the crank's beginning
OFTEN_SAMPLES = 2  # a value that changes at every second sample, or more often, is not held
LEAST_JUMPS = 4  # a wire that is switched jumps twice
TOLERANCE = 1.001  # 5.000 ms written as 5.0001 is not too slow


@dataclass(frozen=True, slots=True)
class Sampling:
    """How fast a channel was sampled near a crank: its `step_s`, the `widest_s` near the trough, and the limit [s]."""

    step_s: float
    widest_s: float
    limit_s: float
    trough_s: float
    basis: str
    time_known: bool = True

    @property
    def fast_enough(self) -> bool:
        """Whether the shortest trough cannot have been missed."""
        steady = self.step_s <= self.limit_s * TOLERANCE
        return self.time_known and steady and self.widest_s <= self.trough_s * TOLERANCE

    @property
    def slow(self) -> bool:
        """Whether even the plateau can have been missed."""
        return not self.time_known or self.step_s > SLOW_STEP_S * TOLERANCE or self.widest_s > 2 * SLOW_STEP_S


def shortest_trough_s(system_V: int) -> float:
    """The shortest inrush trough of the starting profiles for a system voltage [s]."""
    return min(row.figures["trough_s"] for row in STARTING_PROFILES[system_V].values())


def limit_s(system_V: int) -> float:
    """The longest step between samples that still puts three into the shortest trough [s].

    >>> limit_s(12), round(limit_s(24), 4)
    (0.005, 0.0167)
    """
    return round(shortest_trough_s(system_V) / SAMPLES_IN_TROUGH, 6)


def basis(system_V: int) -> str:
    """What the limit rests on, in words."""
    rows = STARTING_PROFILES[system_V].values()
    trough_s = shortest_trough_s(system_V)
    read = any(row.standing is Standing.PUBLISHED and row.figures["trough_s"] == trough_s for row in rows)
    standing = "read in a secondary document" if read else str(Standing.FROM_MEMORY)
    return (
        f"{SAMPLES_IN_TROUGH} samples inside the shortest inrush trough of the ISO 16750-2 starting profile, "
        f"{trough_s * 1000:.0f} ms at {system_V} V ({standing})"
    )


def sampling(line: Line, *, start_s: float, system_V: int, time_known: bool = True) -> Sampling:
    """How fast the channel of `line` was sampled near a crank that began at `start_s`."""
    near = line.between(start_s - NEAR_S / 5, start_s + NEAR_S)
    step_s = max(line.step_s, held_s(line))
    widest_s = widest_step_s(near) if len(near) > 1 else max(line.step_s, NEAR_S)
    return Sampling(
        step_s, max(widest_s, step_s), limit_s(system_V), shortest_trough_s(system_V), basis(system_V), time_known
    )


def held_s(line: Line) -> float:
    """How long the channel typically stood still before it jumped [s]; 0 where it hardly ever jumped.

    A jump is a change by more than two counts, a count being the smallest change that occurs: a value that is
    merely coarse moves by single counts, one that is repeated from an older sample jumps.

    >>> from array import array
    >>> held_s(Line(array("d", range(12)), array("d", [12, 12, 9, 9, 9.5, 9.5, 11.6, 11.6, 11.7, 11.7, 14, 14])))
    2.0
    """
    times, values = line.time_s, line.values
    if sum(1 for same in map(eq, values, values[1:]) if not same) * OFTEN_SAMPLES > len(values):
        return 0.0
    changes = [i for i in range(1, len(values)) if values[i] != values[i - 1]]
    sizes = [abs(values[i] - values[i - 1]) for i in changes]
    count = min(sizes, default=0.0)
    froms = [0, *changes]
    held = [
        times[at] - times[since] for at, since, size in zip(changes, froms, sizes, strict=False) if size > 2 * count
    ]
    return median(held) if len(held) >= LEAST_JUMPS else 0.0
