"""Prediction and measurement side by side: what the unit hears, against what its place should give it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.evidence.reception import Reception
from backprobe.evidence.report import Report
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.stages.mount.predict import DayFigures, PlacePrediction
from backprobe.stages.mount.reception import figures

FINDING = "mount_sky_beside"
LEAST_MOMENTS = 10
DIGITS = 2
WORSE = (
    "the unit hears less than its place should give: see which way up it lies, look for metal, foil or coated glass "
    "that mount.toml does not name, and for what stood beside the vehicle"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What was heard: HDOP, its median and the range of eight of ten moments; satellites, their median; and by whom."""

    hdop: float
    hdop_low: float
    hdop_high: float
    used: float | None
    source: str


def measured_by_reports(reports: Iterable[Report]) -> Measured | None:
    """What a unit's reports say of its reception; None with fewer than ten that state an HDOP."""
    fixes = [report.fix for report in reports if report.fix is not None and report.fix.hdop]
    hdop = sorted(fix.hdop for fix in fixes if fix.hdop)
    if len(hdop) < LEAST_MOMENTS:
        return None
    used = sorted(fix.sats for fix in fixes if fix.sats)
    return Measured(
        hdop=_share(hdop, 0.5),
        hdop_low=_share(hdop, 0.1),
        hdop_high=_share(hdop, 0.9),
        used=_share(used, 0.5) if used else None,
        source=f"{len(hdop)} reports of the unit",
    )


def measured_by_log(log: Reception) -> Measured | None:
    """What a receiver's log says of its reception; None where it states no HDOP."""
    hdop, used = figures.hdop(log), figures.used(log)
    if hdop is None:
        return None
    middle, low, high = hdop
    return Measured(hdop=middle, hdop_low=low, hdop_high=high, used=None if used is None else used[0], source=log.file)


def _share(ordered: Sequence[float], share: float) -> float:
    """The value that a share of an ordered list keeps within."""
    return float(ordered[round(share * (len(ordered) - 1))])


def beside_finding(found: PlacePrediction, measured: Measured) -> Finding:
    """The HDOP that was measured against that which the prediction keeps for 95 % of a day."""
    usual = found.usual
    limit = predicted_limit(usual)
    verdict = Verdict.OPEN
    if limit is not None:
        verdict = judge(limit, measured.hdop, low=measured.hdop_low, high=measured.hdop_high)
    return Finding(
        id=FINDING,
        stage=Stage.MOUNT,
        what=f"Heard from '{found.place.name}', beside what was predicted",
        verdict=verdict,
        because=f"heard: {_heard(measured)}; predicted for GPS alone: {_predicted(usual)}",
        next=WORSE if verdict is Verdict.FAILS else None,
        value=measured.hdop,
        low=measured.hdop_low,
        high=measured.hdop_high,
        digits=DIGITS,
        limit=limit,
    )


def predicted_limit(usual: DayFigures) -> Limit | None:
    """The most HDOP that the prediction allows; None where it sees no fix for so long."""
    if usual.hdop_p95 is None:
        return None
    basis = "predicted for this place: the HDOP that is kept for 95 % of a day at the worst heading"
    return Limit("mount_hdop_predicted", usual.hdop_p95, "", Side.AT_MOST, basis, Standing.MODEL)


def _heard(measured: Measured) -> str:
    used = "" if measured.used is None else f", {measured.used:g} satellites half the time"
    spread = f"{measured.hdop_low:.2f} to {measured.hdop_high:.2f} in eight of ten"
    return f"HDOP {measured.hdop:.2f} half the time, {spread}{used} ({measured.source})"


def _predicted(usual: DayFigures) -> str:
    half = "no fix for half the day" if usual.hdop_median is None else f"HDOP {usual.hdop_median:.2f} for half the day"
    most = "none for 95 % of it" if usual.hdop_p95 is None else f"{usual.hdop_p95:.2f} for 95 % of it"
    return f"{half}, {most}, {usual.median} satellites"
