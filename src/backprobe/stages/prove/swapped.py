"""Does another unit of the same yard tell this script better than the job's own?"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from backprobe.evidence.report import Report
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.physics.great_circle import distance_m
from backprobe.stages.prove.alignment import Aligned, align
from backprobe.stages.prove.delays import reported_turns
from backprobe.stages.prove.patterns import Pattern, PatternId
from backprobe.stages.prove.position import fixes_of
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.wirings import IGNITION

YARD_M = 1000.0
FITS = 0.8  # of the turns, at least
LEAST_TURNS = 2
BETTER = 3.0  # nats by which the other unit must explain the script better
ODD_MOST = 0.25
EARLY_S = -3.0
SLACK_S = 5.0


def swapped_serial(
    others: Mapping[str, Sequence[Report]],
    script: Script,
    *,
    timing: Timing,
    place: VehiclePlace | None,
    own: Aligned | None,
) -> Pattern | None:
    """The unit whose reports fit a true ignition best, where the job's own fits badly or is not there at all."""
    turns = len(script.turns)
    most = math.inf if own is None else own.shift.cost + own.fits[0].cost - BETTER
    best: tuple[float, str] | None = None
    for unit_id, reports in others.items():
        belief = align(reports, script, timing=timing, wirings=(IGNITION,)).best
        told = len(reported_turns(belief, script))
        cost = belief.shift.cost + belief.fits[0].cost
        if told < max(LEAST_TURNS, FITS * turns) or cost > most:
            continue
        if _odd(belief) > ODD_MOST * told or not _in_time(belief, timing) or not _in_yard(belief, script, place=place):
            continue
        if best is None or cost < best[0]:
            best = cost, unit_id
    if best is None:
        return None
    surplus = 2 * BETTER if own is None else most + BETTER - best[0]
    return Pattern(PatternId.SWAPPED_SERIAL, 1.0 - math.exp(-surplus), other_unit=best[1])


def _odd(belief: Aligned) -> int:
    return sum(1 for edge in belief.fits[0].match.unexplained if not edge.restated)


def _in_time(belief: Aligned, timing: Timing) -> bool:
    """Whether the delays are those of a healthy unit with a clock that needs no excuse."""
    delays = belief.fits[0].delays
    if belief.shift.guessed:
        return False
    return EARLY_S <= delays.on_s <= timing.on_limit_s and EARLY_S <= delays.off_s <= timing.off_limit_s + SLACK_S


def _in_yard(belief: Aligned, script: Script, *, place: VehiclePlace | None) -> bool:
    """Whether a unit can be in the vehicle's yard, as far as its position is known."""
    fixes = fixes_of(belief.kept, last_s=script.last_s)
    if place is None or not fixes:
        return True
    fix = fixes[-1]
    return distance_m((place.lat_deg, place.lon_deg), (fix.lat_deg, fix.lon_deg)) <= YARD_M
