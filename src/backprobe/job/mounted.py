"""A job's mount sheet judged: does the chosen place see the sky, and does the unit hear there what it should."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from backprobe.errors import OptionError
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.mount_sheet import MountPlace, MountSheet
from backprobe.evidence.reception import Reception
from backprobe.evidence.report import ReportsTable
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.mount.beside import Measured, beside_finding, measured_by_log, measured_by_reports
from backprobe.stages.mount.day import Cell
from backprobe.stages.mount.findings import FINDING, not_chosen, place_finding
from backprobe.stages.mount.nominal import nominal_orbits
from backprobe.stages.mount.predict import PlacePrediction, Site, predict_place, ranked, sky_of
from backprobe.stages.mount.question import question
from backprobe.stages.mount.satellites import satellites_of
from backprobe.stages.prove.prove import Answer

ANY_DAY = "2026-01-01"  # where a job says no day: every day of the nominal constellation is like every other


@dataclass(frozen=True, slots=True, kw_only=True)
class Mounted:
    """What a mount sheet came to; `chosen` is None while nobody has said which place was taken, or where the job is.

    `heard` is what was measured there.
    """

    sheet: MountSheet
    chosen: PlacePrediction | None
    findings: tuple[Finding, ...]
    heard: tuple[Measured, ...] = ()


def heard_there(
    logs: Sequence[Reception], reports: ReportsTable | None, *, proof: Answer | None
) -> tuple[Measured, ...]:
    """What was measured at the unit's place: by receivers' logs, the longest first, and by the job's unit itself."""
    found = [measured_by_log(log) for log in sorted(logs, key=lambda each: -each.duration_ms)]
    if reports is not None and proof is not None:
        own = proof.proof.unit_id.casefold()
        found.append(measured_by_reports(each for each in reports.reports if each.unit_id.casefold() == own))
    return tuple(each for each in found if each is not None)


def judged_mount(sheet: MountSheet | None, job: JobSheet, *, heard: Sequence[Measured] = ()) -> Mounted | None:
    """The chosen place under the nominal sky where the vehicle stands, beside what was heard; None without a sheet."""
    if sheet is None:
        return None
    if job.place is None:
        return Mounted(sheet=sheet, chosen=None, findings=(_nowhere(sheet),))
    place = _chosen(sheet)
    site = site_of((job.place.lat_deg, job.place.lon_deg), job.date)
    if place is None:
        best = ranked([predicted(each, sheet, site=site) for each in sheet.places])[0]
        return Mounted(sheet=sheet, chosen=None, findings=(not_chosen(sheet, best),))
    found = predicted(place, sheet, site=site)
    beside = (beside_finding(found, each) for each in heard)
    return Mounted(sheet=sheet, chosen=found, findings=(place_finding(found, sheet), *beside), heard=tuple(heard))


def _chosen(sheet: MountSheet) -> MountPlace | None:
    """The place that was taken: the one that is named as such, or the only one."""
    if len(sheet.places) == 1:
        return sheet.places[0]
    return next((place for place in sheet.places if place.name == sheet.chosen), None)


def site_of(place: tuple[float, float], day: str | None) -> Site:
    """Where (degrees north and east) and when: the day of the work, or any."""
    try:
        return question(place, day or ANY_DAY).site
    except OptionError:  # a day in words of its own
        return question(place, ANY_DAY).site


def predicted(place: MountPlace, sheet: MountSheet, *, site: Site) -> PlacePrediction:
    """What a place would hear, worked once: a phone judges a job anew after each reading.

    What the sheet says of other places, and which was taken, makes no difference to one.
    """
    return _predicted(place, replace(sheet, places=(), chosen=None), site=site)


@lru_cache(maxsize=64)
def _predicted(place: MountPlace, sheet: MountSheet, *, site: Site) -> PlacePrediction:
    return predict_place(place, sheet, sky=nominal_sky(site))


@lru_cache(maxsize=4)
def nominal_sky(site: Site) -> tuple[tuple[Cell, ...], ...]:
    """The day of the nominal constellation over a site, worked once."""
    sky = sky_of(satellites_of(nominal_orbits(site.start_s)), site)
    return tuple(tuple(minute) for minute in sky)


def _nowhere(sheet: MountSheet) -> Finding:
    return Finding(
        id=FINDING,
        stage=Stage.MOUNT,
        what="The sky from the unit's place",
        verdict=Verdict.OPEN,
        because=f"{sheet.file} describes the place; the job sheet does not say where the vehicle stands",
        next="write lat and lon under [place] into job.toml: where the vehicle works, to a degree",
    )
