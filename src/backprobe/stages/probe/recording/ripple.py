"""The ripple that an engine's compressions put on the supply while the starter turns it.

Each compression brakes the starter, which then draws more current. The strongest frequency between 2 and 30 Hz is
looked for (60 /min of a four-cylinder to 450 /min of an eight-cylinder); fans and pumps ripple faster.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.stages.probe.recording.trace import Line

AFTER_S = 0.15  # the inrush has died away
LAST_PART, LONG_S = 0.2, 1.0  # of a long plateau this part is left out: the engine may run on its own there
RELEASE_S = 0.02
LOWEST_HZ, HIGHEST_HZ = 1.8, 30.0
THIN_S = 0.004
MOST_S = 2.0  # so much of a long crank is enough
LEAST_PERIODS = 1.75
SAMPLES_A_PERIOD = 2.2
LEAST_SHARE = 0.35  # of the line's variance
LEAST_PP_V = 0.06  # 12 V system
SLOWEST_STEP_S = (
    0.0205  # at 50 rows a second nearly the whole band is seen; slower, a fast ripple looks like a slow one
)


@dataclass(frozen=True, slots=True)
class Ripple:
    """A ripple: its frequency [Hz], height peak to peak [V], and its share of the line's variance (0 to 1)."""

    frequency_Hz: float
    pp_V: float
    share: float


def ripple(line: Line, *, scale: float) -> Ripple | None:
    """The compression ripple of a line taken from the plateau; None where there is none to be seen.

    `scale` is system voltage / 12. Nearly two periods must lie in the line, at 50 samples a second or more.
    """
    thin = line.thinned(THIN_S)
    step_s = thin.step_s
    values = thin.values[: int(MOST_S / step_s)] if step_s > 0 else thin.values
    length_s = len(values) * step_s
    if len(values) < 8 or not 0.0 < step_s <= SLOWEST_STEP_S:
        return None
    from_Hz = max(LOWEST_HZ, LEAST_PERIODS / length_s)
    to_Hz = min(HIGHEST_HZ, 1.0 / (SAMPLES_A_PERIOD * step_s))
    flat = levelled(values)
    variance = math.fsum(v * v for v in flat) / len(flat)
    if to_Hz <= from_Hz or variance <= 0.0:
        return None
    frequency_Hz, power = _strongest(flat, from_Hz * step_s, to_turns=to_Hz * step_s)
    found = Ripple(frequency_Hz / step_s, 2.0 * math.sqrt(2.0 * power), min(1.0, power / variance))
    return found if found.share >= LEAST_SHARE and found.pp_V >= LEAST_PP_V * scale else None


def ripple_span_s(start_s: float, end_s: float) -> tuple[float, float]:
    """The part of a crank [s] in which the ripple is looked for: after the inrush, and before the engine runs.

    A short crank is used to its end: a ripple needs some periods.

    >>> ripple_span_s(5.0, 7.15), ripple_span_s(5.0, 5.9)
    ((5.15, 6.75), (5.15, 5.88))
    """
    from_s = start_s + AFTER_S
    length_s = end_s - from_s
    last_s = LAST_PART * length_s if length_s >= LONG_S else RELEASE_S
    return from_s, round(end_s - last_s, 6)


def cranking_speed_rpm(frequency_Hz: float, cylinders: int) -> float:
    """The engine's speed [1/min] at which a four-stroke engine makes so many compressions a second.

    Each cylinder compresses once in two turns: frequency = speed / 60 × cylinders / 2.

    >>> cranking_speed_rpm(8.0, 4)
    240.0
    """
    return frequency_Hz * 60.0 * 2.0 / cylinders


def levelled(values: Sequence[float]) -> list[float]:
    """The values without their mean, slope and bend (least squares of a parabola over evenly spaced samples)."""
    count = len(values)
    places = [2.0 * i / (count - 1) - 1.0 for i in range(count)]
    second = [x * x for x in places]
    mean_2 = math.fsum(second) / count
    bends = [x2 - mean_2 for x2 in second]
    mean = math.fsum(values) / count
    slope = math.fsum(x * v for x, v in zip(places, values, strict=True)) / math.fsum(second)
    norm = math.fsum(b * b for b in bends)
    bend = math.fsum(b * v for b, v in zip(bends, values, strict=True)) / norm if norm > 0 else 0.0
    return [v - mean - slope * x - bend * b for v, x, b in zip(values, places, bends, strict=True)]


def _strongest(values: Sequence[float], from_turns: float, *, to_turns: float) -> tuple[float, float]:
    """The strongest frequency, in turns a sample, and its mean square; a fine grid, then the top of a parabola."""
    step = 0.25 / len(values)
    grid = [from_turns + i * step for i in range(-4, int((to_turns - from_turns) / step) + 2)]
    powers = [_power(values, turns) for turns in grid]
    top = max(range(len(grid)), key=powers.__getitem__)
    if top == len(grid) - 1 or grid[top] < from_turns:
        return grid[top], 0.0  # the top lies outside the band
    left, middle, right = powers[top - 1 : top + 2]
    bend = left - 2.0 * middle + right
    shift = 0.5 * (left - right) / bend if bend < 0.0 else 0.0
    return grid[top] + shift * step, middle - 0.25 * (left - right) * shift


def _power(values: Sequence[float], turns: float) -> float:
    """The mean square of the sine of `turns` a sample that fits the values best (Goertzel's recurrence)."""
    weight = 2.0 * math.cos(2.0 * math.pi * turns)
    last = before = 0.0
    for value in values:
        last, before = value + weight * last - before, last
    square = last * last + before * before - weight * last * before
    return 2.0 * square / (len(values) * len(values))
