"""Where in a long recording it is worth reading the rows again: told from the envelope alone."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from statistics import median

from backprobe.evidence.recording import Channel
from backprobe.stages.probe.recording.engine_speed import speed_starts
from backprobe.stages.probe.recording.trace import Line, Sight, buckets, merged

LEAST_FALL_V = 0.4  # 12 V system
RECOVERED_V = 0.5  # below the level before: higher than any plateau of a crank
BUCKETS_BEFORE = 8
MOST_REGIONS = 16
MOST_ROWS = 400_000  # of all regions together
BEFORE_S, AFTER_S, LONGEST_S = 2.0, 2.0, 35.0
RESTING_V, CHARGING_V = 12.95, 13.2  # 12 V system

Row = tuple[float, float, float, float]  # a bucket: beginning, end [s], lowest, highest [V]


def regions(sight: Sight, supply: Channel | None, *, speed: Line | None, scale: float) -> list[tuple[float, float]]:
    """The stretches [s] in which the supply fell, rose to charging, or the engine came to run, in order of time.

    Of a recording that is at hand whole, the whole. Otherwise at most `MOST_REGIONS`, those with the deepest falls,
    and no more than so many that `MOST_ROWS` rows are read again. `scale` is system voltage / 12.
    """
    recording = sight.recording
    if sight.whole:
        return [(recording.start_s, recording.end_s)]
    rows = buckets(recording, supply) if supply is not None else []
    deepest = sorted(_falls(rows, scale=scale), key=lambda found: -found[0])[:MOST_REGIONS]
    ends_s = accumulate(to_s - from_s for _, (from_s, to_s) in deepest)
    within = sum(1 for end_s in ends_s if end_s <= sight.seconds_of(MOST_ROWS))
    spans = [span for _, span in deepest[: max(1, within)]]
    spans += _rises(rows, scale=scale)[:MOST_REGIONS]
    starts = speed_starts(speed)[:MOST_REGIONS] if speed is not None else ()
    spans += [(start.stood_s - AFTER_S, start.ran_s + AFTER_S) for start in starts]
    return merged(spans, most_s=sight.longest_s)


def _falls(rows: Sequence[Row], *, scale: float) -> list[tuple[float, tuple[float, float]]]:
    """Each fall's depth [V] and the stretch from a little before it to a little after the recovery."""
    lows = [row[2] for row in rows]
    found = []
    at = 1
    while at < len(rows):
        before = lows[max(0, at - BUCKETS_BEFORE) : at]
        least_V = LEAST_FALL_V * scale
        if max(before) - lows[at] < least_V or median(before) - lows[at] < least_V:
            at += 1
            continue
        before_V = median(before)
        up = _recovered(rows, at, mark_V=before_V - RECOVERED_V * scale)
        found.append((before_V - min(lows[at : up + 1]), (rows[at][0] - BEFORE_S, rows[up][1] + AFTER_S)))
        at = up + 1
    return found


def _recovered(rows: Sequence[Row], at: int, *, mark_V: float) -> int:
    """The first bucket after `at` that lies wholly above the mark again, `LONGEST_S` later at most."""
    latest_s = rows[at][0] + LONGEST_S
    after = (i for i in range(at + 1, len(rows)) if rows[i][2] > mark_V or rows[i][1] > latest_s)
    return next(after, len(rows) - 1)


def _rises(rows: Sequence[Row], *, scale: float) -> list[tuple[float, float]]:
    """The stretches in which the level went from resting to charging."""
    found = []
    for before, here, after in zip(rows, rows[1:], rows[2:], strict=False):
        if before[2] <= RESTING_V * scale and here[3] >= CHARGING_V * scale and after[2] >= CHARGING_V * scale:
            found.append((before[0] - BEFORE_S, after[1]))
    return found
