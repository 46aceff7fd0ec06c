"""The vehicle of a job by its VIN, as the job sheet has it."""

from __future__ import annotations

from backprobe.evidence.job_sheet import JobSheet
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.walkround.vin import check_vin

NO_VIN = Finding(
    id="vin_form",
    stage=Stage.WALKROUND,
    what="VIN",
    verdict=Verdict.OPEN,
    because="the job sheet holds no VIN",
    next="write the VIN from the plate into the job sheet",
)


def vehicle_findings(sheet: JobSheet) -> tuple[Finding, ...]:
    """The findings on the sheet's VIN; open where it holds none.

    >>> from backprobe.evidence.job_sheet import Vehicle
    >>> [each.next for each in vehicle_findings(JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="unit.toml"))]
    ['write the VIN from the plate into the job sheet']
    """
    vehicle = sheet.vehicle
    if vehicle.vin is None:
        return (NO_VIN,)
    return check_vin(vehicle.vin, heavy=vehicle.heavy, stated_year=vehicle.model_year, job_year=sheet.year).findings
