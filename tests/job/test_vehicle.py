"""The vehicle of a job by its VIN."""

from __future__ import annotations

from backprobe.evidence.job_sheet import JobSheet, Vehicle
from backprobe.findings import Verdict
from backprobe.job.vehicle import NO_VIN, vehicle_findings


def sheet(vin: str | None, **vehicle: int | bool) -> JobSheet:
    """A sheet with this VIN, of a job in 2026."""
    return JobSheet(vehicle=Vehicle(system_V=12, vin=vin, **vehicle), unit_sheet="unit.toml", date="2026-03-31")  # type: ignore[arg-type]


def test_a_sheet_without_a_vin_is_open() -> None:
    """It asks for the plate."""
    assert vehicle_findings(sheet(None)) == (NO_VIN,)
    assert NO_VIN.verdict is Verdict.OPEN


def test_the_papers_and_the_job_s_year_decide_the_model_year() -> None:
    """K in position 10 is 1989 or 2019; for a heavy vehicle the papers say which."""
    years = [
        vehicle_findings(sheet("1M8GDM9AXKP042788", heavy=True, model_year=year))[2] for year in (1989, 2019, 2020)
    ]
    assert [each.verdict for each in years] == [Verdict.HOLDS, Verdict.HOLDS, Verdict.FAILS]
    assert vehicle_findings(sheet("1M8GDM9AXKP042788", heavy=True))[2].verdict is Verdict.OPEN
