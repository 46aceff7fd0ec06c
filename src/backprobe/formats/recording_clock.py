"""Time that only goes forward: rows that fall back are left out, a clock set back once is joined."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import chain, pairwise
from operator import sub

LEAP = 20.0  # a step of so many times the usual one is a leap; common practice, no source
SET_BACK_S = 1800.0  # a clock set back by at least this, half the hour of a summer-time change, is taken up again
STRAY_ROWS = 8  # so many rows running may have leapt ahead; more are taken for the truth
SETTLED_ROWS = 3  # so many rows must go on from there
DAY_S = 86_400.0
NEVER = -math.inf  # the time of the row before the first


@dataclass(frozen=True, slots=True)
class Clock:
    """Where the clock stands between two blocks of rows.

    `last_s` is the time of the last row, `usual_s` the usual step, `offset_s` is added to the times as written since
    the clock was set back; `set_back_s` is by how much it was, `set_back_line` where (0 as long as it was not).
    """

    last_s: float = NEVER
    usual_s: float = 0.0
    offset_s: float = 0.0
    set_back_s: float = 0.0
    set_back_line: int = 0


@dataclass(frozen=True, slots=True)
class Ordered:
    """Times that never fall, the step before each, the rows they belong to (None: all), and the clock after them.

    The step before the very first row of a recording is 0.
    """

    times: list[float]
    steps: list[float]
    kept: list[int] | None
    clock: Clock


def in_order(times: list[float], clock: Clock, *, lines: Sequence[int], midnight: bool, more: bool) -> Ordered:
    """The rows of a block whose time goes on from `clock`; `lines` are their line numbers, `more` blocks follow.

    A row that falls back is left out until time has caught up; where instead the few rows before it had leapt ahead,
    those are left out. A clock that is set back by half an hour or more and goes on from there is joined, once;
    one that starts again at `midnight` is joined each day. A row that leaps ahead at the very end of a block is left
    out, as what follows it cannot be seen.
    """
    if clock.offset_s:
        times = [time + clock.offset_s for time in times]
    steps = _steps(times, clock)
    step_s = _steady_step(steps, clock, more=more)
    if step_s is not None:
        return Ordered(times, steps, None, replace(clock, last_s=times[-1], usual_s=step_s or clock.usual_s))
    clock = replace(clock, usual_s=_usual(times) or clock.usual_s)
    joined, after = _joined(times, clock, lines=lines, midnight=midnight)
    leap_s = LEAP * clock.usual_s or math.inf
    kept = _rising(joined, clock, leap_s=leap_s)
    if more and len(kept) > SETTLED_ROWS and joined[kept[-1]] - joined[kept[-2]] > leap_s:
        kept.pop()
    times = [joined[i] for i in kept]
    return Ordered(times, _steps(times, clock), kept, replace(after, last_s=times[-1] if times else clock.last_s))


def _steps(times: list[float], clock: Clock) -> list[float]:
    """The step before each row; 0 before the very first of a recording."""
    first = times[:1] if clock.last_s == NEVER else [clock.last_s]
    return list(map(sub, times, chain(first, times)))


def _steady_step(steps: list[float], clock: Clock, *, more: bool) -> float | None:
    """The mean step, where no row falls back and the last one does not leap; None otherwise."""
    if not steps or not min(steps) >= 0:
        return None
    mean_s = math.fsum(steps[:-1]) / max(1, len(steps) - 1)
    if not math.isfinite(mean_s + steps[-1]):
        return None
    leaps = more and len(steps) > SETTLED_ROWS and steps[-1] > LEAP * max(mean_s, clock.usual_s)
    return None if leaps else mean_s


def _usual(times: list[float]) -> float:
    """The median of the steps forward; 0 where there are too few."""
    steps = sorted(step for a, b in pairwise(times) if (step := b - a) > 0)
    return steps[len(steps) // 2] if len(steps) >= SETTLED_ROWS else 0.0


def _joined(times: list[float], clock: Clock, *, lines: Sequence[int], midnight: bool) -> tuple[list[float], Clock]:
    """The times with an offset added behind each place at which the clock was set back for good."""
    offset_s, before_s = 0.0, clock.last_s
    joined: list[float] = []
    for i, time in enumerate(times):
        back_s = before_s - (time + offset_s)
        if back_s >= SET_BACK_S and _goes_on(times, i, clock=clock) and not _leapt(times, i, clock=clock):
            new_day = midnight and back_s > DAY_S / 2
            if new_day:
                offset_s += DAY_S
            elif not clock.set_back_line:
                offset_s += back_s + clock.usual_s
                clock = replace(clock, set_back_s=back_s, set_back_line=lines[i])
        before_s = time + offset_s
        joined.append(before_s)
    return joined, replace(clock, offset_s=clock.offset_s + offset_s)


def _goes_on(times: list[float], i: int, *, clock: Clock) -> bool:
    """Whether the rows after this one go on from it in the usual steps."""
    steps = [b - a for a, b in pairwise(times[i : i + SETTLED_ROWS + 1])]
    return len(steps) == SETTLED_ROWS and all(0 <= step <= LEAP * clock.usual_s for step in steps)


def _leapt(times: list[float], i: int, *, clock: Clock) -> bool:
    """Whether the row before this one had leapt ahead, alone."""
    return i > 1 and times[i - 1] - times[i - 2] > LEAP * clock.usual_s and times[i] >= times[i - 2]


def _rising(times: list[float], clock: Clock, *, leap_s: float) -> list[int]:
    """The indices of the rows that are kept."""
    kept: list[int] = []
    for i, time in enumerate(times):
        if not math.isfinite(time):
            continue
        if time < (times[kept[-1]] if kept else clock.last_s):
            ahead = _ahead(times, kept, than_s=time + leap_s)
            earlier = times[kept[-1 - ahead]] if ahead < len(kept) else clock.last_s
            if not ahead or time < earlier or (ahead > 1 and not _goes_on(times, i, clock=clock)):
                continue
            del kept[-ahead:]
        kept.append(i)
    return kept


def _ahead(times: list[float], kept: list[int], *, than_s: float) -> int:
    """How many of the last rows lie ahead, where they are few; 0 where they are many."""
    count = 0
    while count < len(kept) and times[kept[-1 - count]] > than_s:
        count += 1
        if count > STRAY_ROWS:
            return 0
    return count
