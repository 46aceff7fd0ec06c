"""A crank reading that is too good beside those of the other wires.

All wires hang on one battery and only lose volts on their way. A single MIN that stands far above every other wire's
is more likely a slip of the pen ('12.0' for '10.2') or a crank that never came than a better wire, and it is the one
slip that would make a poor wire look fit. It is measured again; a second value close by confirms it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.stages.probe.belief import Belief
from backprobe.stages.probe.setup import Setup

APART_V = 1.0  # how far wires differ in the crank without a second look (12 V system); our own estimate
AGREE_V = 0.5  # how far two cranks on one wire differ (12 V system); our own estimate
LIVE_IN_CRANK_V = 5.0  # a wire above this in the crank hangs on the battery (12 V system); common practice, no source


def set_outliers_aside(beliefs: Sequence[Belief], setup: Setup) -> list[Belief]:
    """The beliefs, with crank readings that stand out among their doubtful ones."""
    return [_without_outlier(belief, beliefs, setup=setup) for belief in beliefs]


def _without_outlier(belief: Belief, beliefs: Sequence[Belief], *, setup: Setup) -> Belief:
    found = []
    for capture in (Capture.MIN, Capture.LOGGED):
        own = _cranks(belief, capture, setup=setup)
        others = [r.volts for other in beliefs if other is not belief for r in _cranks(other, capture, setup=setup)]
        if own and others and _stands_out(own, others, scale=setup.system_V / 12.0):
            found.append(own[-1])
    return replace(belief, doubtful=(*belief.doubtful, *found)) if found else belief


def _stands_out(own: Sequence[Reading], others: Sequence[float], *, scale: float) -> bool:
    """Whether the highest of the own readings stands far above all others and is not confirmed by a second one."""
    highest = own[-1].volts
    confirmed = len(own) > 1 and highest - own[-2].volts <= AGREE_V * scale
    return highest - max(others) > APART_V * scale and not confirmed


def _cranks(belief: Belief, capture: Capture, *, setup: Setup) -> list[Reading]:
    """The wire's live crank readings with that capture, the highest last."""
    live_V = LIVE_IN_CRANK_V * setup.system_V / 12.0
    found = [r for r in belief.at(Key.CRANK) if r.capture is capture and r.volts >= live_V]
    return sorted(found, key=lambda reading: reading.volts)
