"""What each place would hear through a day, and which of them is the best."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from backprobe.evidence.mount_sheet import MountPlace, MountSheet
from backprobe.findings import Limit, Verdict, judge
from backprobe.physics.orbit import Observer
from backprobe.physics.tracks import sky_by_step
from backprobe.stages.mount.day import HEADING_STEP_DEG, Cell, Day, Quality, days, placed
from backprobe.stages.mount.heard import LEAST_ELEVATION_DEG, Case, usable
from backprobe.stages.mount.mask import Mask, mask_of
from backprobe.stages.mount.satellites import Satellites
from backprobe.stages.mount.wanted import quality_of, share_limit

MINUTES = 1440
STEP_S = 60.0
HEADINGS = tuple(float(heading) for heading in range(0, 360, HEADING_STEP_DEG))
SHARE_DIGITS, DOP_DIGITS = 4, 2
_RANK = {Verdict.HOLDS: 0, Verdict.THIN: 1, Verdict.OPEN: 2, Verdict.FAILS: 3}


@dataclass(frozen=True, slots=True)
class Site:
    """Where and when: degrees north and east, and the beginning of the 24 hours in GPS seconds."""

    lat_deg: float
    lon_deg: float
    start_s: float


@dataclass(frozen=True, slots=True)
class DayFigures:
    """What a day comes to: its share with a good fix (0 to 1), HDOP kept for half and 95 % of it, satellites used.

    An HDOP is None where there is no fix at all for so long.
    """

    share: float
    hdop_median: float | None
    hdop_p95: float | None
    least: int
    median: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacePrediction:
    """What a place would hear: its figures under `heading_deg`, and with all doubts settled against it and for it.

    `heading_deg` is that of the sheet; where it says any, the worst one, which is always in `worst_heading_deg`.
    """

    place: MountPlace
    mask: Mask
    heading_deg: float
    worst_heading_deg: float
    usual: DayFigures
    hard: DayFigures
    kind: DayFigures
    verdict: Verdict

    def as_json(self) -> dict[str, object]:
        """The place as plain JSON values."""
        return {
            "name": self.place.name,
            "fix_share": self.usual.share,
            "hdop": {"median": self.usual.hdop_median, "p95": self.usual.hdop_p95},
            "satellites": {"least": self.usual.least, "median": self.usual.median},
            "worst_heading_deg": self.worst_heading_deg,
            "verdict": str(self.verdict),
        }


def sky_of(satellites: Satellites, site: Site) -> list[list[Cell]]:
    """The satellites above the mask angle, minute by minute through 24 hours."""
    observer = Observer(site.lat_deg, site.lon_deg)
    low = math.sin(math.radians(LEAST_ELEVATION_DEG))
    return placed(
        sky_by_step(satellites.sets, observer, start_s=site.start_s, steps=MINUTES, step_s=STEP_S, least_up=low)
    )


def predict(sheet: MountSheet, sky: Sequence[Sequence[Cell]]) -> tuple[PlacePrediction, ...]:
    """Each place of the sheet, in its order."""
    return tuple(predict_place(place, sheet, sky=sky) for place in sheet.places)


def predict_place(place: MountPlace, sheet: MountSheet, *, sky: Sequence[Sequence[Cell]]) -> PlacePrediction:
    """What one place would hear."""
    quality = quality_of(sheet)
    mask = mask_of(place)
    by_heading = days(sky, usable(mask, Case.USUAL), headings=HEADINGS, quality=quality)
    every = [(day.heading_deg, figures(day)) for day in by_heading]
    worst_deg, worst = min(every, key=lambda pair: goodness(pair[1]))
    heading_deg = worst_deg if sheet.heading_deg is None else sheet.heading_deg
    usual = worst if sheet.heading_deg is None else _one(mask, sky, case=Case.USUAL, at=(heading_deg, quality))
    worst_mask, best_mask = _supposed_masks(place, mask)
    hard = min(_one(worst_mask, sky, case=Case.HARD, at=(heading_deg, quality)), usual, key=goodness)
    kind = max(_one(best_mask, sky, case=Case.KIND, at=(heading_deg, quality)), usual, key=goodness)
    limit = share_limit(sheet)
    return PlacePrediction(
        place=place,
        mask=mask,
        heading_deg=heading_deg,
        worst_heading_deg=worst_deg,
        usual=usual,
        hard=hard,
        kind=kind,
        verdict=verdict_of(limit, usual, low=hard, high=kind),
    )


def _supposed_masks(place: MountPlace, mask: Mask) -> tuple[Mask, Mask]:
    """The masks at the worst and at the best of the figures; the same where the place was measured."""
    supposed = place.supposed
    if supposed is None:
        return mask, mask
    return mask_of(replace(place, parts=supposed.worst)), mask_of(replace(place, parts=supposed.best))


def verdict_of(limit: Limit, usual: DayFigures, *, low: DayFigures, high: DayFigures) -> Verdict:
    """How the shares of a day stand to the limit [%]."""
    value, least, most = (round(100 * each.share, SHARE_DIGITS - 2) for each in (usual, low, high))
    return judge(limit, value, low=least, high=most)


def _one(mask: Mask, sky: Sequence[Sequence[Cell]], *, case: Case, at: tuple[float, Quality]) -> DayFigures:
    """The day under one heading."""
    heading_deg, quality = at
    return figures(days(sky, usable(mask, case), headings=[heading_deg], quality=quality)[0])


def figures(day: Day) -> DayFigures:
    """The figures of a day; what is kept for a share of it is not passed in that share of its minutes."""
    hdop, used = sorted(day.hdop), sorted(day.used)
    count = len(hdop)
    return DayFigures(
        share=round(day.good / count, SHARE_DIGITS),
        hdop_median=_finite(hdop[(count - 1) // 2]),
        hdop_p95=_finite(hdop[math.ceil(0.95 * count) - 1]),
        least=used[0],
        median=used[(count - 1) // 2],
    )


def _finite(hdop: float) -> float | None:
    return None if math.isinf(hdop) else round(hdop, DOP_DIGITS)


def goodness(found: DayFigures) -> tuple[float, float, float, int, int]:
    """By what days are compared, the better the higher: share, HDOP of 95 % and of half the day, satellites."""
    p95 = math.inf if found.hdop_p95 is None else found.hdop_p95
    half = math.inf if found.hdop_median is None else found.hdop_median
    return found.share, -p95, -half, found.median, found.least


def ranked(found: Sequence[PlacePrediction]) -> tuple[PlacePrediction, ...]:
    """The places, the best first: by verdict, then by their figures; of two alike the one that was named first."""
    return tuple(sorted(found, key=lambda each: (_RANK[each.verdict], *(-part for part in goodness(each.usual)))))
