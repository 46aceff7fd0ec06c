"""The whole walkround: every matter judged, and all that is well told as one."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.meter import Meter
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding, Verdict
from backprobe.stages.walkround.authority import authority
from backprobe.stages.walkround.condition import condition_before
from backprobe.stages.walkround.doubts import Matter, not_said
from backprobe.stages.walkround.hazards import hazards
from backprobe.stages.walkround.identity import identity
from backprobe.stages.walkround.previous_device import previous_device
from backprobe.stages.walkround.unit_ready import unit_ready

WALKROUND = Matter("walkround", "Walkround")
PHOTOS = Matter("walkround_photos", "Photos of the walkround")
CAUTION = "hazard_"  # ids of findings that hold and are still to be read each by itself
MISSING = (
    "there is no walkround.toml: authority, identity, devices fitted before, condition, unit on the bench and hazards "
    "are not written down"
)
PUT_THERE = "put the photos into the job folder, under photos/, or take their names out of walkround.toml"
TAKE_AGAIN = "copy the photo again from the camera, or take it again"
WALK = "walk round the vehicle before anything is touched, and write walkround.toml"


def walkround_findings(
    walked: Walkround | None, sheet: JobSheet, *, unit: UnitSheet, meter: Meter, cranked: bool
) -> tuple[Finding, ...]:
    """The findings on a walkround: one for all that is well, one for each matter that is not, one for each hazard.

    `cranked` says whether the evidence holds a crank. Without a walkround there is one finding, open.
    """
    if walked is None:
        return (WALKROUND.finding([not_said(MISSING, WALK)], well=""),)
    return _joined(
        (
            *authority(walked.authority, has_crank=sheet.vehicle.has_crank, cranked=cranked),
            identity(walked.vehicle, sheet.vehicle),
            previous_device(walked),
            condition_before(walked.before),
            *unit_ready(walked.bench, sheet.unit_serial, meter=meter),
            *hazards(walked.hazards, sheet, unit=unit),
        )
    )


def _joined(found: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings with all that are well, but for cautions, in one."""
    well = [each for each in found if each.verdict is Verdict.HOLDS and not each.id.startswith(CAUTION)]
    others = [each for each in found if each not in well]
    one = [WALKROUND.finding([], well="; ".join(each.because for each in well))] if well else []
    return (*one, *others)


def photos_named(missing: Sequence[str], refused: Sequence[str] = ()) -> tuple[Finding, ...]:
    """The finding on photos that the walkround names: `missing` are not there, `refused` are no pictures; else none."""
    doubts = [not_said(f"named and not there: {', '.join(missing)}", PUT_THERE)] if missing else []
    doubts += [not_said(f"cannot be shown: {each}", TAKE_AGAIN) for each in refused]
    return (PHOTOS.finding(doubts, well=""),) if doubts else ()
