"""The vehicle of a job by its VIN: that of the job sheet, and one that was read otherwise on the vehicle itself."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.walkround.vin import check_vin
from backprobe.stages.walkround.vin_number import tidied

ON_SHEET, ON_VEHICLE, ON_BOTH = "on the job sheet", "as read on the vehicle", "on sheet and vehicle alike"
FORM, CHECK_DIGIT = "vin_form", "vin_check_digit"

NO_VIN = Finding(
    id=FORM,
    stage=Stage.WALKROUND,
    what="VIN",
    verdict=Verdict.OPEN,
    because="the job sheet holds no VIN",
    next="write the VIN from the plate into the job sheet",
)


def vehicle_findings(sheet: JobSheet, walked: Walkround | None = None) -> tuple[Finding, ...]:
    """The findings on the sheet's VIN, open where it holds none; each says which VIN it is about.

    Where the VIN that was read on the vehicle is another than the sheet's, what is wrong with its form or its
    check digit is found, too: which character may have been misread is best looked up at the plate.

    >>> from backprobe.evidence.job_sheet import Vehicle
    >>> [each.next for each in vehicle_findings(JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="unit.toml"))]
    ['write the VIN from the plate into the job sheet']
    """
    said, read = sheet.vehicle.vin, walked.vehicle.vin if walked else None
    is_same = said is not None and read is not None and _plain(said) == _plain(read)
    of_read = (
        ()
        if read is None or is_same
        else tuple(each for each in _judged(sheet, read, where=ON_VEHICLE) if _is_odd(each))
    )
    if said is None:
        return (NO_VIN, *of_read)
    return (*_judged(sheet, said, where=ON_BOTH if is_same else ON_SHEET), *of_read)


def _judged(sheet: JobSheet, vin: str, *, where: str) -> tuple[Finding, ...]:
    vehicle = sheet.vehicle
    check = check_vin(vin, heavy=vehicle.heavy, stated_year=vehicle.model_year, job_year=sheet.year)
    return tuple(replace(each, what=f"{each.what}, {where}") for each in check.findings)


def _is_odd(found: Finding) -> bool:
    return found.id in (FORM, CHECK_DIGIT) and found.verdict is Verdict.FAILS


def _plain(vin: str) -> str:
    return tidied(vin)[0].casefold()
