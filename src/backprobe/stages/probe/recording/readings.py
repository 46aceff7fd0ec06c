"""A recording turned into readings, so that tables and recordings are judged by one and the same inference."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from statistics import median

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.stages.probe.recording.channels import ChannelView
from backprobe.stages.probe.recording.cranks import SURE, Crank
from backprobe.stages.probe.recording.key_events import Stretch
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.trace import Line

LOOK_S = 1.0  # rows are taken this far to both sides of a stretch's middle
LONG_S = 8.0
PULSED_SHARE = 0.2  # of the system voltage: what swings by more is shown by a meter as its mean


def readings(
    scene: Scene, views: Sequence[ChannelView], *, stretches: Sequence[Stretch], cranks: Sequence[Crank]
) -> tuple[Reading, ...]:
    """One reading per candidate wire and key position that the recording shows with certainty.

    In the crank the lowest value of all sure attempts, `logged` where the sampling was fast enough, `min` at steps up
    to 100 ms, otherwise `display`; elsewhere what a meter's display would have shown.
    """
    names = {channel.name for channel in scene.candidates}
    longest = {
        key: max((stretch for stretch in stretches if stretch.key is key), key=lambda each: each.length_s)
        for key in dict.fromkeys(stretch.key for stretch in stretches)
    }
    sure = any(crank.sure >= SURE for crank in cranks)
    found: list[Reading] = []
    for view in views:
        if view.channel in names:
            found += _standing(scene, view, stretches=list(longest.values()))
            found += _cranking(view) if sure else ()
    return tuple(found)


def look_spans(scene: Scene, stretches: Sequence[Stretch]) -> list[tuple[float, float]]:
    """The stretches of rows that `readings` will ask for [s]."""
    return [_span(scene, stretch) for stretch in stretches]


def display_V(line: Line, *, system_V: int) -> float | None:
    """What a meter's display shows of a line: its median, or its mean where it is pulsed; None of nothing."""
    if not line.values:
        return None
    ordered = sorted(line.values)
    swing = ordered[(9 * len(ordered)) // 10] - ordered[len(ordered) // 10]
    return math.fsum(ordered) / len(ordered) if swing > PULSED_SHARE * system_V else median(ordered)


def reading(view: ChannelView, key: Key, *, volts: float, capture: Capture, after_min: float | None = None) -> Reading:
    """A reading with as many digits as the file has."""
    typed = f"{round(volts, view.digits) + 0.0:.{view.digits}f}"
    return Reading(
        wire=view.channel,
        key=key,
        volts=float(typed),
        typed=typed,
        count_V=10.0**-view.digits,
        capture=capture,
        after_min=after_min,
    )


def _standing(scene: Scene, view: ChannelView, *, stretches: Sequence[Stretch]) -> Iterator[Reading]:
    for stretch in stretches:
        from_s, to_s = _span(scene, stretch)
        shown_V = display_V(scene.sight.line(view.channel, from_s=from_s, to_s=to_s), system_V=scene.system_V)
        if shown_V is not None:
            yield reading(view, stretch.key, volts=shown_V, capture=Capture.DISPLAY, after_min=stretch.after_min)


def _cranking(view: ChannelView) -> Iterator[Reading]:
    if view.crank_reading_V is None:
        return
    slow = Capture.DISPLAY if view.sampling.slow else Capture.MIN
    yield reading(
        view, Key.CRANK, volts=view.crank_reading_V, capture=Capture.LOGGED if view.sampling.fast_enough else slow
    )


def _span(scene: Scene, stretch: Stretch) -> tuple[float, float]:
    """The inner half of a stretch, at most `LOOK_S` to both sides of its middle; on slow recordings a few rows.

    Of a long stretch before a turn of the key, the last seconds; of other long ones the first.
    """
    from_s, to_s = stretch.from_s, stretch.to_s
    if stretch.key in (Key.OFF, Key.ON):
        from_s = max(from_s, to_s - LONG_S)
    elif stretch.key is Key.RUNNING:
        to_s = min(to_s, from_s + LONG_S)
    middle_s, length_s = (from_s + to_s) / 2, to_s - from_s
    look_s = max(LOOK_S, 3 * scene.supply_step_s)
    half_s = min(look_s, max(length_s / 4, min(length_s / 2, scene.supply_step_s)))
    return middle_s - half_s, middle_s + half_s
