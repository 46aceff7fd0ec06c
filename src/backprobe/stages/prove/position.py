"""Is the unit where the vehicle is, and how long did it take to find out?

Both sides have an accuracy, given as receivers give it: 68 % of fixes lie within it. For errors of that kind one fix
in a hundred lies beyond twice the joint accuracy, three in a hundred thousand beyond three times (circular normal
distribution, our own model). Where a report gives no accuracy, HDOP times 5 m is taken (a common range error of open
sky, from memory), and 10 m where there is no HDOP either.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from backprobe.evidence.corner import CornerIndex
from backprobe.evidence.report import Fix
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.findings import Verdict
from backprobe.physics.great_circle import distance_m
from backprobe.stages.named_place import NamedPlace, named_place
from backprobe.stages.prove.observed import Stamped
from backprobe.stages.prove.power_up import PowerUp
from backprobe.stages.prove.setup import PLACE_ACCURACY_M

RANGE_ERROR_M = 5.0
USUAL_ACCURACY_M = 10.0
LEAST_ACCURACY_M = 2.0
SURE, DOUBTFUL = 2.0, 3.0  # times the joint accuracy
DRIVING_KMH = 8.0
BEHIND_S = 600.0
DIGITS = 1
PLACE_DIGITS = 6  # 0.1 m


@dataclass(frozen=True, slots=True)
class Position:
    """The verdict; distance between unit and vehicle and the joint accuracy [m], None where either is not known.

    `beyond` is the part of the fixes that lie beyond doubt elsewhere, `fixes` how many there were. `where` is the place
    that the unit reports, by its corner; None without an index of corners or without a fix.
    """

    verdict: Verdict
    distance_m: float | None = None
    u_m: float | None = None
    beyond: float = 0.0
    fixes: int = 0
    where: NamedPlace | None = None

    def as_json(self) -> dict[str, object]:
        """The position as answered."""
        distance, u = self.distance_m, self.u_m
        named = {} if self.where is None else {"where": self.where.as_json()}
        return {
            "verdict": str(self.verdict),
            "distance_m": None if distance is None else round(distance, DIGITS),
            "u_m": None if u is None else round(u, DIGITS),
            **named,
        }


def accuracy_of_m(fix: Fix) -> float:
    """The accuracy of a fix [m]: the receiver's own, or from its HDOP, or what is usual."""
    if fix.accuracy_m is not None:
        return max(LEAST_ACCURACY_M, fix.accuracy_m)
    return USUAL_ACCURACY_M if fix.hdop is None else max(LEAST_ACCURACY_M, RANGE_ERROR_M * fix.hdop)


def fixes_of(kept: Sequence[Stamped], *, last_s: float) -> tuple[Fix, ...]:
    """The fixes since power-up and until shortly after the script, while the vehicle stood."""
    return tuple(
        report.fix
        for time_s, report in kept
        if report.fix is not None and time_s <= last_s + BEHIND_S and (report.speed_kmh or 0.0) < DRIVING_KMH
    )


def position_of(fixes: Sequence[Fix], place: VehiclePlace | None, *, corners: CornerIndex | None = None) -> Position:
    """The later half of the fixes against the vehicle's place: the first ones of a cold start wander."""
    settled = fixes[len(fixes) // 2 :]
    where = None if corners is None or not settled else named_place(corners, middle_of(settled))
    if not fixes or place is None:
        return Position(Verdict.OPEN, fixes=len(fixes), where=where)
    here = (place.lat_deg, place.lon_deg)
    apart = [round(distance_m(here, (fix.lat_deg, fix.lon_deg)), DIGITS) for fix in settled]
    own_m = PLACE_ACCURACY_M if place.accuracy_m is None else place.accuracy_m
    joint = [round(math.hypot(accuracy_of_m(fix), own_m), DIGITS) for fix in settled]
    away, u = round(median(apart), DIGITS), round(median(joint), DIGITS)
    verdict = Verdict.HOLDS if away <= SURE * u else Verdict.THIN if away <= DOUBTFUL * u else Verdict.FAILS
    beyond = sum(1 for a, b in zip(apart, joint, strict=True) if a > DOUBTFUL * b) / len(settled)
    return Position(verdict, away, u, beyond, len(fixes), where)


def middle_of(fixes: Sequence[Fix]) -> tuple[float, float]:
    """The middle of fixes in degrees north and east: the median either way, also across the antimeridian.

    >>> middle_of([Fix(1.0, 179.0), Fix(2.0, -179.0), Fix(9.0, 179.5)])
    (2.0, 179.5)
    """
    first = fixes[0].lon_deg
    steps = [(fix.lon_deg - first + 180.0) % 360.0 - 180.0 for fix in fixes]
    east = (first + median(steps) + 180.0) % 360.0 - 180.0
    return round(median(fix.lat_deg for fix in fixes), PLACE_DIGITS), round(east, PLACE_DIGITS)


def first_fix_s(kept: Sequence[Stamped], power_up: PowerUp) -> float | None:
    """Seconds from power-up to the first report with a position; None where either was not seen."""
    if power_up.time_s is None:
        return None
    first = next((time_s for time_s, report in kept if report.fix is not None), None)
    return None if first is None else max(0.0, first - power_up.time_s)
