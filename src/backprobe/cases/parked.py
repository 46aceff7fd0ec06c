"""A parked vehicle from a job sheet in a file, with the unit's sheet and the meter's beside it."""

from __future__ import annotations

from pathlib import Path

from backprobe.cases.policy import policy_for
from backprobe.errors import JobError
from backprobe.files.open import small_text
from backprobe.formats.job_toml import read_job
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.job.door import meter_for
from backprobe.stages.parked.parked import ParkedCase


def parked_case(path: Path, policy: Path | None = None) -> ParkedCase:
    """The case that the job sheet holds. Raises InputError where a sheet cannot be read or says nothing of it.

    `policy` is the fleet's own, where none lies beside the sheet.
    """
    sheet = read_job(small_text(path), path.name)
    if sheet.parked is None:
        raise JobError(f"{path.name} says nothing of the battery: a table [battery] and a table [parked] are expected")
    if not sheet.vehicle.has_crank:
        raise JobError(f"{path.name}: has_crank = false; the days are reckoned until a vehicle no longer cranks")
    unit = read_unit_sheet(small_text(path.parent / sheet.unit_sheet), sheet.unit_sheet)
    meter_text = small_text(path.parent / sheet.meter_file) if sheet.meter_file else None
    return ParkedCase(
        sheet=sheet.parked,
        unit=unit,
        meter=meter_for(sheet, meter_text),
        system_V=sheet.vehicle.system_V,
        policy=policy_for(path.parent, policy),
    )
