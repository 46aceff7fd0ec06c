"""For how long a constant supply and an ignition that stays off are proven: fully after one parked night.

A parked night is taken as 8 hours (common practice, no source): body controllers and timers have gone to sleep, and
whatever drains or wakes has done so.
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.stages.prove.alignment import Aligned
from backprobe.stages.prove.delays import reported_turns
from backprobe.stages.prove.observed import RESTARTS, observe
from backprobe.stages.prove.script import Script

NIGHT_H = 8.0
HOUR_S = 3600.0
DIGITS = 2


@dataclass(frozen=True, slots=True)
class Parked:
    """Hours without a restart since power-up, and hours off since the final off was reported.

    `lost` says that a restart, not a turn of the key, ended the latter: the supply is no constant.
    """

    constant_h: float
    ignition_off_h: float
    lost: bool = False

    @property
    def night(self) -> bool:
        """Whether one parked night is covered."""
        return min(self.constant_h, self.ignition_off_h) >= NIGHT_H

    def as_json(self) -> dict[str, object]:
        """The hours as answered."""
        return {
            "constant_h": round(self.constant_h, DIGITS),
            "ignition_off_h": round(self.ignition_off_h, DIGITS),
            "night": self.night,
        }


def parked_of(belief: Aligned, script: Script) -> Parked:
    """The hours that the reports cover; the driver's next key-on ends them, and so does a restart."""
    kept = belief.kept
    if not kept:
        return Parked(0.0, 0.0)
    last_s = kept[-1][0]
    off = reported_turns(belief, script).get(script.turns[-1])
    if off is None or off.on:
        return Parked(_until_restart_h(belief, kept[0][0], last_s=last_s), 0.0)
    turned_on = (edge.lo_s for edge in observe(kept).edges if edge.on and edge.lo_s > off.hi_s)
    parked_s = min(last_s, next(turned_on, last_s))
    return Parked(
        _until_restart_h(belief, kept[0][0], last_s=last_s),
        _until_restart_h(belief, off.hi_s, last_s=parked_s),
        lost=any(report.event in RESTARTS and off.hi_s < time_s <= parked_s for time_s, report in kept),
    )


def hours_text(hours: float) -> str:
    """Hours as they are said; less than one in minutes.

    >>> hours_text(0.4), hours_text(15.25)
    ('24 min', '15.2 h')
    """
    return f"{hours * 60:.0f} min" if hours < 1 else f"{hours:.1f} h"


def _until_restart_h(belief: Aligned, since_s: float, *, last_s: float) -> float:
    ends = (time_s for time_s, report in belief.kept if report.event in RESTARTS and since_s < time_s <= last_s)
    return max(0.0, next(ends, last_s) - since_s) / HOUR_S
