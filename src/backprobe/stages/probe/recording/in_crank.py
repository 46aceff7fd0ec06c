"""What one channel did in one attempt to crank the engine."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from backprobe.evidence.recording import Channel
from backprobe.stages.probe.recording.cranks import Crank
from backprobe.stages.probe.recording.ripple import Ripple, ripple, ripple_span_s
from backprobe.stages.probe.recording.sampling import Sampling, sampling
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.recording.switching import DEAD_SHARE, LIVE_SHARE
from backprobe.stages.probe.recording.trace import Line

PAD_S = 0.02
REST_FROM_S, REST_TO_S = 0.6, 0.1
AROUND_S = 1.0
STEPS_AROUND = 6
RECOVERY_S = 5.0
RECOVERED_WITHIN_V = 0.1  # 12 V system
NEAR_LOWEST_S = 0.01
LIVE_PART = 0.6  # a wire that is live for this part of the crank is live in it
SLOW_S = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class InCrank:
    """A channel in a crank: level before it, lowest value in it and when, both in V and s; None where no row held one.

    `reading_V` is the lowest as a reading of the wire: for a wire that was dead before the crank, the lowest while it
    was live; None where slow sampling leaves open whether it was.
    `loss_V` is how much further than the battery the channel fell at its lowest. `recovery_s` is the time until the
    level was back at rest, `after_1s_V` the level one second after the starter was released.
    """

    crank: Crank
    rest_V: float | None
    lowest_V: float | None
    lowest_s: float | None
    reading_V: float | None
    dead_before: bool
    sampling: Sampling
    loss_V: float | None
    ripple: Ripple | None
    recovery_s: float | None
    after_1s_V: float | None
    line: Line

    def seconds_below(self, threshold_V: float) -> float:
        """How long the channel was below a threshold within the crank [s]."""
        pairs = zip(pairwise(self.line.time_s), self.line.values, strict=False)
        return math.fsum(later - earlier for (earlier, later), volts in pairs if volts < threshold_V)


def in_crank(scene: Scene, channel: Channel, *, crank: Crank) -> InCrank:
    """Everything about a channel in one crank."""
    step_s = scene.step_s(channel)
    look_s = max(AROUND_S, STEPS_AROUND * step_s)
    around = scene.sight.line(channel.name, from_s=crank.start_s - look_s, to_s=crank.end_s + look_s)
    pad_s = max(PAD_S, step_s)
    line = around.between(crank.start_s - pad_s, crank.end_s + pad_s)
    rest = _rest_V(around, crank=crank, step_s=step_s)
    lowest = min(zip(line.values, line.time_s, strict=True), default=(None, None))
    dead_before = rest is not None and rest <= DEAD_SHARE * scene.system_V
    after = _after(scene, channel, crank=crank)
    return InCrank(
        crank=crank,
        rest_V=rest,
        lowest_V=lowest[0],
        lowest_s=lowest[1],
        reading_V=_dead_reading_V(line, crank, system_V=scene.system_V) if dead_before else lowest[0],
        dead_before=dead_before,
        sampling=sampling(
            around, start_s=crank.start_s, system_V=scene.system_V, time_known=scene.recording.time_known
        ),
        loss_V=_loss_V(scene, channel, lowest_s=lowest[1], rest=rest, crank=crank),
        ripple=ripple(line.between(*ripple_span_s(crank.start_s, crank.end_s)), scale=scene.scale),
        recovery_s=None if dead_before else _recovery_s(after, rest, crank=crank, scale=scene.scale),
        after_1s_V=_near(after, crank.end_s + 1.0, within_s=max(0.1, step_s)),
        line=line,
    )


def windows(scene: Scene, cranks: Sequence[Crank]) -> list[tuple[float, float]]:
    """The stretches of rows that `in_crank` will ask for [s]."""
    look_s = max(AROUND_S, STEPS_AROUND * scene.recording.interval_s)
    return [(crank.start_s - look_s, crank.end_s + max(RECOVERY_S, look_s)) for crank in cranks]


def _rest_V(around: Line, *, crank: Crank, step_s: float) -> float | None:
    """The channel's level shortly before the crank."""
    if step_s <= SLOW_S:
        level = around.between(crank.start_s - REST_FROM_S, crank.start_s - REST_TO_S).median()
        if level is not None:
            return level
    before = around.between(around.time_s[0], crank.start_s).values[-3:] if len(around) else ()
    return median(before) if before else None


def _dead_reading_V(line: Line, crank: Crank, *, system_V: int) -> float | None:
    """The reading of a wire that was dead before: if it was live in the crank, the lowest while it was."""
    live_V = LIVE_SHARE * system_V
    inside = line.between(crank.start_s, crank.end_s)
    live = [time_s for time_s, volts in zip(inside.time_s, inside.values, strict=True) if volts >= live_V]
    if live and len(live) >= LIVE_PART * len(inside):
        settled = inside.between(live[0] + NEAR_LOWEST_S, live[-1] - NEAR_LOWEST_S)
        return min(settled.values or inside.between(live[0], live[-1]).values)
    unclear = line.step_s > SLOW_S and (not len(inside) or max(line.values) >= live_V)
    return None if unclear else min(line.values, default=None)


def _loss_V(
    scene: Scene, channel: Channel, *, lowest_s: float | None, rest: float | None, crank: Crank
) -> float | None:
    """How much more than at rest the channel stood below the battery at its lowest; None without a battery."""
    battery = scene.battery
    if battery is None or channel is battery or lowest_s is None or rest is None:
        return None
    near_s = max(NEAR_LOWEST_S, 0.5 * scene.step_s(channel))
    here = scene.sight.line(channel.name, from_s=lowest_s - near_s, to_s=lowest_s + near_s)
    there = scene.sight.line(battery.name, from_s=lowest_s - near_s, to_s=lowest_s + near_s)
    battery_V = dict(zip(there.time_s, there.values, strict=True))
    gaps = [battery_V[t] - volts for t, volts in zip(here.time_s, here.values, strict=True) if t in battery_V]
    step_s = scene.step_s(battery)
    from_s = crank.start_s - max(AROUND_S, STEPS_AROUND * step_s)
    around = scene.sight.line(battery.name, from_s=from_s, to_s=crank.start_s)
    battery_rest = _rest_V(around, crank=crank, step_s=step_s)
    if not gaps or battery_rest is None:
        return None
    return median(gaps) - max(0.0, battery_rest - rest)


def _after(scene: Scene, channel: Channel, *, crank: Crank) -> Line:
    return scene.sight.line(channel.name, from_s=crank.end_s, to_s=crank.end_s + RECOVERY_S)


def _recovery_s(after: Line, rest: float | None, *, crank: Crank, scale: float) -> float | None:
    """The time from release to the first level within 0.1 V of rest [s]; None where that took longer than 5 s."""
    if rest is None:
        return None
    thin = after.thinned(PAD_S)
    enough_V = rest - RECOVERED_WITHIN_V * scale
    back = (time_s for time_s, volts in zip(thin.time_s, thin.values, strict=True) if volts >= enough_V)
    found = next(back, None)
    return None if found is None else found - crank.end_s


def _near(line: Line, time_s: float, *, within_s: float) -> float | None:
    return line.between(time_s - within_s, time_s + within_s).median()
