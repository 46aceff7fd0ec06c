"""The vehicle of a job by its VIN."""

from __future__ import annotations

from backprobe.evidence.job_sheet import JobSheet, Vehicle
from backprobe.evidence.walkround import OnVehicle, Walkround
from backprobe.findings import Verdict
from backprobe.job.vehicle import NO_VIN, vehicle_findings


def sheet(vin: str | None, **vehicle: int | bool) -> JobSheet:
    """A sheet with this VIN, of a job in 2026."""
    return JobSheet(vehicle=Vehicle(system_V=12, vin=vin, **vehicle), unit_sheet="unit.toml", date="2026-03-31")  # type: ignore[arg-type]


def read(vin: str) -> Walkround:
    """A walkround on which this VIN was read."""
    return Walkround(vehicle=OnVehicle(vin=vin))


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


def test_each_finding_says_which_vin_it_is_about() -> None:
    """The sheet's; on sheet and vehicle alike where both are one, hyphens and capitals aside."""
    right = "5ZLDR7HV5KR200417"
    assert vehicle_findings(sheet(right))[1].what == "check digit of the VIN, on the job sheet"
    alike = vehicle_findings(sheet(right), read("5zldr7hv5-kr-200417"))
    assert [each.what for each in alike][1] == "check digit of the VIN, on sheet and vehicle alike"
    assert len(alike) == 3


def test_a_vin_that_was_misread_on_the_vehicle_is_found_as_that() -> None:
    """200417 read as 200477: the sheet's VIN holds, the one that was read fails, and says where to look again."""
    found = vehicle_findings(sheet("5ZLDR7HV5KR200417", heavy=True, model_year=2019), read("5ZLDR7HV5KR200477"))
    digits = [(each.what, each.verdict) for each in found if each.id == "vin_check_digit"]
    assert digits == [
        ("check digit of the VIN, on the job sheet", Verdict.HOLDS),
        ("check digit of the VIN, as read on the vehicle", Verdict.FAILS),
    ]
    assert "5ZLDR7HV5KR200417" in (found[-1].next or "")


def test_another_right_vin_has_no_finding_of_its_own() -> None:
    """Two trucks of one fleet: that they differ is for the identity to say, neither VIN is wrong in itself."""
    found = vehicle_findings(sheet("5ZLDR7HV5KR200417", heavy=True, model_year=2019), read("5ZLDR7HVXKR200588"))
    assert len(found) == 3


def test_a_sheet_without_a_vin_is_open_whatever_was_read() -> None:
    """What was read has a wrong check digit, and that is said beside it."""
    found = vehicle_findings(sheet(None), read("5ZLDR7HV5KR200477"))
    assert [each.verdict for each in found] == [Verdict.OPEN, Verdict.FAILS]
