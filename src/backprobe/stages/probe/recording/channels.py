"""What each channel of a recording did: lowest values, time spent low, drop, ripple, recovery, charging, dip."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.evidence.recording import Channel
from backprobe.findings import Finding, rounded
from backprobe.stages.probe.recording.cranks import LISTED, SURE, Crank
from backprobe.stages.probe.recording.dip import Hidden, dip
from backprobe.stages.probe.recording.in_crank import InCrank, in_crank
from backprobe.stages.probe.recording.key_events import Stretch
from backprobe.stages.probe.recording.ripple import cranking_speed_rpm
from backprobe.stages.probe.recording.sampling import Sampling, sampling
from backprobe.stages.probe.recording.scene import Scene
from backprobe.stages.probe.setup import Setup

LOW_V = (10.0, 9.0)  # 12 V system
LOSS_V = 0.5  # of a wire against the battery, either system: common practice, no source
LIMIT_IN_CRANK_V = 9.0  # 12 V system


@dataclass(frozen=True, slots=True)
class Below:
    """The time spent below a threshold: in the whole recording (None where the reader did not count it), in cranks."""

    threshold_V: float
    seconds: float | None
    seconds_in_crank: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ChannelView:
    """Everything a recording says of one channel; V, s, Hz and /min as the names say, None where not shown.

    `loss_V` and `cause` answer whether a fall in the crank was the battery's or the wire's own: 'battery', 'wire' or
    'both'; None for the battery itself, for wires that were dead before, and without a battery channel.
    """

    channel: str
    digits: int
    lowest_V: float
    lowest_s: float
    rest_V: float | None
    crank_lowest_V: float | None
    crank_reading_V: float | None
    below: tuple[Below, ...]
    loss_V: float | None
    cause: str | None
    ripple_Hz: float | None
    ripple_pp_V: float | None
    cranking_rpm: float | None
    recovery_s: float | None
    after_1s_V: float | None
    charging_V: float | None
    sampling: Sampling
    dip: Finding

    def as_json(self) -> dict[str, object]:
        """The view as plain JSON values, rounded: V to 2 digits (lowest as in the file), s to 3."""
        pace = self.sampling
        return {
            "channel": self.channel,
            "lowest_V": rounded(self.lowest_V, self.digits),
            "lowest_s": rounded(self.lowest_s, 3),
            "rest_V": rounded(self.rest_V, 2),
            "crank_lowest_V": rounded(self.crank_lowest_V, self.digits),
            "below": [
                {
                    "threshold_V": rounded(each.threshold_V, 2),
                    "seconds": rounded(each.seconds, 3),
                    "seconds_in_crank": rounded(each.seconds_in_crank, 3),
                }
                for each in self.below
            ],
            "loss_V": rounded(self.loss_V, 2),
            "cause": self.cause,
            "ripple_Hz": rounded(self.ripple_Hz, 1),
            "ripple_pp_V": rounded(self.ripple_pp_V, 2),
            "cranking_rpm": rounded(self.cranking_rpm, 0),
            "recovery_s": rounded(self.recovery_s, 2),
            "after_1s_V": rounded(self.after_1s_V, 2),
            "charging_V": rounded(self.charging_V, 2),
            "sampled_fast_enough": pace.fast_enough,
            "sampling": {
                "step_s": rounded(pace.step_s, 4),
                "limit_s": rounded(pace.limit_s, 4),
                "basis": pace.basis,
            },
            "dip": self.dip.as_json(),
        }


def thresholds_V(setup: Setup) -> tuple[float, ...]:
    """The thresholds below which a reader should count the time [V]: 10, 9 (twice at 24 V) and the unit's own."""
    own = () if setup.unit_least_V is None else (setup.unit_least_V,)
    return (*(low * setup.system_V / 12 for low in LOW_V), *own)


def counted(cranks: Sequence[Crank]) -> tuple[Crank, ...]:
    """The cranks by which channels are judged: all sure ones, or where there is none the most likely one."""
    sure = tuple(crank for crank in cranks if crank.sure >= SURE)
    if sure:
        return sure
    listed = [crank for crank in cranks if crank.sure >= LISTED]
    return (max(listed, key=lambda crank: crank.sure),) if listed else ()


def channel_view(
    scene: Scene, channel: Channel, *, setup: Setup, cranks: Sequence[Crank], running: Stretch | None, hidden_V: Hidden
) -> ChannelView:
    """What the recording says of one channel; `cranks` are the counted ones, `running` the time on the generator."""
    found = [in_crank(scene, channel, crank=crank) for crank in cranks]
    deepest = min((each for each in found if each.lowest_V is not None), key=_lowest_V, default=None)
    last = next((each for each in reversed(found) if each.crank.started), found[-1] if found else None)
    ripple = next((each.ripple for each in found if each.ripple is not None), None)
    loss_V = deepest.loss_V if deepest is not None and not deepest.dead_before else None
    shown = [each.reading_V for each in found if each.reading_V is not None]
    charging = scene.sight.level(channel.name, from_s=running.from_s, to_s=running.to_s) if running else None
    return ChannelView(
        channel=channel.name,
        digits=channel.digits,
        lowest_V=channel.lowest,
        lowest_s=channel.lowest_s,
        rest_V=deepest.rest_V if deepest else None,
        crank_lowest_V=deepest.lowest_V if deepest else None,
        crank_reading_V=min(shown, default=None),
        below=tuple(_below(channel, found, threshold_V=threshold_V) for threshold_V in thresholds_V(setup)),
        loss_V=loss_V,
        cause=_cause(loss_V, deepest, scale=scene.scale),
        ripple_Hz=ripple.frequency_Hz if ripple else None,
        ripple_pp_V=ripple.pp_V if ripple else None,
        cranking_rpm=cranking_speed_rpm(ripple.frequency_Hz, setup.cylinders) if ripple and setup.cylinders else None,
        recovery_s=last.recovery_s if last else None,
        after_1s_V=last.after_1s_V if last else None,
        charging_V=charging,
        sampling=deepest.sampling if deepest else _sampling(scene, channel),
        dip=dip(channel, found, setup=setup, hidden_V=hidden_V),
    )


def _lowest_V(found: InCrank) -> float:
    return found.lowest_V if found.lowest_V is not None else float("inf")


def _below(channel: Channel, found: Sequence[InCrank], *, threshold_V: float) -> Below:
    counted_s = (s for asked_V, s in channel.seconds_below.items() if abs(asked_V - threshold_V) < 1e-6)
    return Below(threshold_V, next(counted_s, None), math.fsum(each.seconds_below(threshold_V) for each in found))


def _cause(loss_V: float | None, deepest: InCrank | None, *, scale: float) -> str | None:
    """Whose fall it was at the channel's lowest moment; 'both' where the battery itself was below the limit too."""
    if loss_V is None or deepest is None or deepest.lowest_V is None:
        return None
    if loss_V <= LOSS_V:
        return "battery"
    return "both" if deepest.lowest_V + loss_V < LIMIT_IN_CRANK_V * scale else "wire"


def _sampling(scene: Scene, channel: Channel) -> Sampling:
    """How fast the channel was sampled where there is no crank to look at: at the recording's beginning."""
    start_s = scene.recording.start_s
    line = scene.sight.line(channel.name, from_s=start_s, to_s=start_s + max(2.0, 20 * scene.step_s(channel)))
    return sampling(line, start_s=start_s, system_V=scene.system_V, time_known=scene.recording.time_known)
