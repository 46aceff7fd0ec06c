"""Steep falls of the supply and the recoveries that end them: what may have been a crank.

Everything is relative: the level before the fall, the trough within a quarter of a second, the plateau that
follows, and half way between level and plateau as the mark that tells down from up. Figures are for a 12 V system
and double at 24 V (common practice put into numbers, no source). A fall begins where a tenth of it is done. It ends
at the foot of the recovery edge, the moment at which a starter is released.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from statistics import median

from backprobe.stages.probe.recording.trace import Line

LEAST_FALL_V = 0.4
MOST_FALLS = 200
THIN_S = 0.002
FALL_S = 0.06  # a starter's fall is over in this time
BEFORE_S = 0.4
CONFIRM_S = 0.08
TROUGH_S = 0.25
PLATEAU_FROM_S, PLATEAU_TO_S = 0.1, 0.3
HOLD_S = 0.3  # a recovery must last: longer than half a period of the slowest ripple (2 Hz)
PERIOD_S = 0.6  # longer than the slowest ripple's period: what falls below all of it is a new inrush
EDGE_S, SLOPE_S, SOON_S = 0.008, 0.04, 0.15
STEP_SHARE = 0.3  # a recovery of which less than this comes within `EDGE_S` has no edge
NOISE_TIMES = 6.0  # an edge is so many times as high as the changes beside it
EDGE_SHARE = 0.25  # a rise this much as high as the highest is an edge of its own
OVERRUN_S = 0.6  # the engine may run this long on its own before the starter is released
INRUSH_STEP_S = 0.01  # up to here an inrush is seen whole
SLOW_STEP_S = 0.02  # from here on there are no samples within an edge
SLOW_STAGE_S = 2.5  # on slow recordings a load must have been on for so long before a crank is told from it
COARSE_MOST_S, COARSE_SAMPLES = 0.15, 4  # in between, so many samples are needed to tell a fall from a ripple
DOWN_SHARE = 0.35  # of the way down: on slow recordings what lies below it is down
COARSE_STEP_S = 0.055  # from here on a generator that comes in looks like an edge


@dataclass(frozen=True, slots=True, kw_only=True)
class Fall:
    """A fall and what followed; times in s, levels in V.

    `fall_s` is the time from a tenth to eight tenths of the way down to the plateau; `recovered` is False where the
    line, or a deeper fall, ended before the recovery came; with a deeper fall it was `taken_over`.
    """

    start_s: float
    end_s: float
    before_V: float
    trough_V: float
    plateau_V: float
    fall_s: float
    step_s: float
    recovered: bool
    taken_over: bool = False

    @property
    def depth_V(self) -> float:
        """How far the plateau lies below the level before [V]."""
        return self.before_V - self.plateau_V

    @property
    def length_s(self) -> float:
        """How long the supply was down [s]."""
        return self.end_s - self.start_s


@dataclass(frozen=True, slots=True)
class _Search:
    """A thinned line with its step, so that times become counts of samples."""

    line: Line
    scale: float
    step_s: float = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "step_s", max(self.line.step_s, 1e-9))

    def count(self, length_s: float) -> int:
        """How many samples `length_s` holds, at least one."""
        return max(1, int(length_s / self.step_s + 0.5))

    @property
    def slow(self) -> bool:
        """Whether edges lie between samples."""
        return self.step_s > SLOW_STEP_S

    def before_V(self, at: int) -> float:
        """The level before a fall that is under way at sample `at`."""
        last = max(1, at - self.count(FALL_S) + 1)
        return median(self.line.values[max(0, last - max(3, self.count(BEFORE_S))) : last])

    def lasts_at(self, at: int, least_V: float) -> bool:
        """Whether the level after sample `at` lies at least `least_V` below the level before the fall."""
        return self.before_V(at) - median(self.line.values[at : at + self.count(CONFIRM_S)]) >= least_V


def falls(line: Line, *, scale: float) -> tuple[Fall, ...]:
    """The falls in a line of battery volts, lost contacts taken out; `scale` is system voltage / 12."""
    search = _Search(line.thinned(THIN_S), scale)
    times = search.line.time_s
    found: list[Fall] = []
    index = 1
    while len(found) < MOST_FALLS:
        begin = next(_under_way(search, range(index, len(times)), least_V=LEAST_FALL_V * scale), None)
        if begin is None:
            break
        fall = _measured(search, begin)
        deeper = _deeper(search, fall)
        index = max(begin + 1, bisect_right(times, fall.end_s))
        if deeper is not None:
            fall = replace(fall, end_s=times[deeper], recovered=False, taken_over=True)
            index = max(begin + 1, deeper)
        found.append(fall)
    return tuple(found)


def _under_way(search: _Search, samples: range, *, least_V: float) -> Iterator[int]:
    """Those of some samples at which a lasting fall is under way."""
    values = search.line.values
    back = search.count(FALL_S)
    steep = (at for at in samples if values[max(0, at - back)] - values[at] >= least_V)
    return (at for at in steep if search.lasts_at(at, least_V))


def _measured(search: _Search, begin: int) -> Fall:
    """The fall that is under way at sample `begin`, with its recovery."""
    times = search.line.time_s
    before_V = search.before_V(begin)
    trough_V = min(search.line.values[begin : begin + search.count(TROUGH_S)])
    plateau_V = _plateau(search, begin)
    start = _start(search, begin, before_V=before_V, trough_V=trough_V)
    share = DOWN_SHARE if search.step_s > COARSE_STEP_S else 0.5
    mark_V = before_V - share * (before_V - plateau_V)
    up = _recovery(search, begin, mark_V=mark_V)
    start_s = (times[max(0, start - 1)] + times[start]) / 2
    end_s = times[-1] if up is None else _foot(search, begin, up=up, plateau_V=plateau_V)
    return Fall(
        start_s=start_s,
        end_s=max(start_s, end_s),
        before_V=before_V,
        trough_V=trough_V,
        plateau_V=plateau_V,
        fall_s=_fall_s(search, start, before_V=before_V, plateau_V=plateau_V),
        step_s=search.step_s,
        recovered=up is not None,
    )


def _plateau(search: _Search, begin: int) -> float:
    """The level after the trough; on slow recordings that of the next samples, as far as they are down."""
    first, last = search.count(PLATEAU_FROM_S), search.count(PLATEAU_TO_S)
    values = search.line.values
    part = values[begin + first : begin + last]
    if len(part) >= 3:
        return median(part)
    down_V = search.before_V(begin) - LEAST_FALL_V * search.scale
    down = [volts for volts in values[begin + 1 : begin + 1 + last] if volts <= down_V]
    return median(down) if down else values[begin]


def _start(search: _Search, begin: int, *, before_V: float, trough_V: float) -> int:
    """The first sample at which a tenth of the fall to the trough is done."""
    values = search.line.values
    back = search.count(FALL_S)
    half_V, tenth_V = (before_V + trough_V) / 2, before_V - 0.1 * (before_V - trough_V)
    near = range(max(0, begin - back), min(len(values), begin + back + 1))
    at = next((i for i in near if values[i] <= half_V), begin)
    least = max(1, at - 4 * back)
    while at > least and values[at - 1] < tenth_V:
        at -= 1
    return at


def _fall_s(search: _Search, start: int, *, before_V: float, plateau_V: float) -> float:
    """The time from a tenth to eight tenths of the way to the plateau [s]."""
    line = search.line
    deep_V = before_V - 0.8 * (before_V - plateau_V)
    down = next((i for i in range(start, len(line)) if line.values[i] <= deep_V), len(line) - 1)
    return line.time_s[down] - line.time_s[start]


def _recovery(search: _Search, begin: int, *, mark_V: float) -> int | None:
    """The first sample from which the line stays above the mark."""
    values = search.line.values
    hold = search.count(HOLD_S)
    first = begin + (1 if search.slow else search.count(PLATEAU_FROM_S))
    for at in range(first, len(values)):
        if values[at] > mark_V and _stays(values[at : at + hold], mark_V):
            return at
    return None


def _stays(part: Sequence[float], mark_V: float) -> bool:
    """Whether at least 19 of 20 samples lie above the mark."""
    return sum(1 for volts in part if volts > mark_V) >= 0.95 * len(part)


def _foot(search: _Search, begin: int, *, up: int, plateau_V: float) -> float:
    """The moment at which the recovery that has passed its mark at sample `up` began.

    The engine may run on its own before the starter is let go: then there are two edges, and the last one counts.
    Where the level comes back slowly there is no edge; the steepest part counts.
    """
    times, values = search.line.time_s, search.line.values
    if search.step_s > COARSE_STEP_S:
        return (times[up - 1] + times[up]) / 2
    lowest = _last_low(search, begin, up=up, plateau_V=plateau_V)
    after = values[up : up + search.count(OVERRUN_S)]
    whole_V = median(after[: search.count(SOON_S)]) - values[lowest]
    edge = search.count(EDGE_S)
    rises = _rises(values, range(lowest, up + len(after)), width=edge)
    if not rises:
        return times[up]
    if max(rises) < STEP_SHARE * whole_V:
        slope = search.count(SLOPE_S)
        gentle = _rises(values, range(lowest, up + len(after)), width=slope)
        steep = (at for at, rise in enumerate(gentle) if rise >= 0.9 * max(gentle))
        return times[lowest + next(steep, up - lowest)]
    at = _last_edge(rises, width=edge)
    return (times[lowest + at] + times[lowest + at + edge]) / 2


def _last_low(search: _Search, begin: int, *, up: int, plateau_V: float) -> int:
    """The lowest sample of the last ripple before the recovery."""
    values = search.line.values
    down = (at for at in range(up, begin, -1) if values[at] <= plateau_V)
    last = next(down, up)
    return min(range(max(begin, last - search.count(FALL_S)), last + 1), key=lambda at: values[at])


def _rises(values: Sequence[float], samples: range, *, width: int) -> list[float]:
    """From each of some samples, how much higher the line is `width` samples later."""
    return [values[at + width] - values[at] for at in samples if at + width < len(values)]


def _last_edge(rises: Sequence[float], *, width: int) -> int:
    """Where the last rise began that is an edge of its own, and no noise."""
    least_V = min(max(rises), max(EDGE_SHARE * max(rises), NOISE_TIMES * median(map(abs, rises))))
    at = max(i for i, rise in enumerate(rises) if rise >= least_V)
    own_V = max(rises[max(0, at - width) : at + 1])
    while at > 0 and rises[at - 1] >= 0.3 * own_V:
        at -= 1
    return at


def _deeper(search: _Search, fall: Fall) -> int | None:
    """The sample at which a second fall begins inside the first, deeper or with an inrush of its own.

    That is a crank while a heater is on; heaters may be switched off in the crank, so that its plateau is no deeper.
    """
    times, values = search.line.time_s, search.line.values
    more_V = max(0.5 * search.scale, 0.5 * fall.depth_V)
    after_s = SLOW_STAGE_S if search.step_s > COARSE_MOST_S else 0.0 if search.slow else PLATEAU_TO_S
    first = bisect_right(times, fall.start_s + after_s)
    coarse = SLOW_STEP_S < search.step_s <= COARSE_MOST_S
    lasting = COARSE_SAMPLES if coarse else search.count(TROUGH_S)
    inside = range(first + 1, bisect_right(times, fall.end_s))
    for at in _under_way(search, inside, least_V=LEAST_FALL_V * search.scale):
        part = values[at : at + lasting]
        lower = median(part) < fall.plateau_V - more_V and min(part) < fall.trough_V - 0.1 * search.scale
        before = values[max(0, at - search.count(FALL_S) - search.count(PERIOD_S)) : max(1, at - search.count(FALL_S))]
        inrush = min(part) < min(before) - 0.5 * search.scale and median(part) < fall.plateau_V + 0.1 * search.scale
        if lower or (inrush and search.step_s <= INRUSH_STEP_S):
            return at
    return None
