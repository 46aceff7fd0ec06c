"""Whether a unit rides through a dip: the time below its least voltage, sample by sample."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.physics.span import Span


@dataclass(frozen=True, slots=True)
class Dip:
    """One time below the least voltage: where it was first seen [s], how long it lasted [s], its lowest sample [V].

    `length_s` runs from what the samples below surely show to what the samples above still allow; its high end is
    infinite where the recording begins or ends within the dip. `likely` is read on straight lines between samples.
    """

    start_s: float
    length_s: Span
    lowest_V: float


def dips_below(time_s: Sequence[float], volts: Sequence[float], *, least_V: float) -> tuple[Dip, ...]:
    """The dips of a waveform below `least_V`, in order; samples that are not a number are passed over.

    >>> [dip.length_s for dip in dips_below([0, 1, 2, 3], [12, 8, 8, 12], least_V=10)]
    [Span(low=1, likely=2.0, high=3)]
    """
    samples = [(t, v) for t, v in zip(time_s, volts, strict=True) if not math.isnan(v)]
    return tuple(_dip(samples, run, least_V=least_V) for run in _runs(samples, least_V))


def longest_s(dips: Iterable[Dip]) -> Span:
    """The longest time below, each end for itself [s]; nothing where there is no dip."""
    lengths = [dip.length_s for dip in dips]
    return Span(
        max((length.low for length in lengths), default=0.0),
        max((length.likely for length in lengths), default=0.0),
        max((length.high for length in lengths), default=0.0),
    )


_Samples = Sequence[tuple[float, float]]


def _runs(samples: _Samples, least_V: float) -> list[tuple[int, int]]:
    """First and last index of each run of samples below."""
    runs: list[tuple[int, int]] = []
    for index, (_, volts) in enumerate(samples):
        if volts >= least_V:
            continue
        if runs and runs[-1][1] == index - 1:
            runs[-1] = (runs[-1][0], index)
        else:
            runs.append((index, index))
    return runs


def _dip(samples: _Samples, run: tuple[int, int], *, least_V: float) -> Dip:
    first, last = run
    start_s, end_s = samples[first][0], samples[last][0]
    lowest_V = min(volts for _, volts in samples[first : last + 1])
    if first == 0 or last + 1 == len(samples):
        return Dip(start_s, Span(end_s - start_s, end_s - start_s, math.inf), lowest_V)
    before, after = samples[first - 1], samples[last + 1]
    falls_s = _crossing_s(before, samples[first], least_V=least_V)
    rises_s = _crossing_s(samples[last], after, least_V=least_V)
    return Dip(start_s, Span(end_s - start_s, rises_s - falls_s, after[0] - before[0]), lowest_V)


def _crossing_s(left: tuple[float, float], right: tuple[float, float], *, least_V: float) -> float:
    """When the straight line between two samples passes `least_V` [s]."""
    return left[0] + (right[0] - left[0]) * (least_V - left[1]) / (right[1] - left[1])
