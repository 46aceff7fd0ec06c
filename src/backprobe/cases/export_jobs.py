"""All jobs as other programs read them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import StrEnum

from sqlalchemy import RowMapping

from backprobe.cases.may import Caller, Deed
from backprobe.cases.yard import Yard
from backprobe.evidence.job_row import JobRow
from backprobe.formats.jobs_export import jobs_csv, jobs_geojson, jobs_json
from backprobe.store import jobs

MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"  # without it spreadsheets take UTF-8 for something else


class Form(StrEnum):
    """The forms there are."""

    CSV = "csv"
    JSON = "json"
    GEOJSON = "geojson"


TYPES: Mapping[Form, str] = {
    Form.CSV: "text/csv; charset=utf-8",
    Form.JSON: "application/json",
    Form.GEOJSON: "application/geo+json",
}
_WRITERS: Mapping[Form, Callable[[list[JobRow]], str]] = {
    Form.CSV: lambda rows: MARK + jobs_csv(rows),
    Form.JSON: jobs_json,
    Form.GEOJSON: jobs_geojson,
}


def exported(yard: Yard, caller: Caller, *, form: Form) -> str:
    """All jobs in one of the forms. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    with yard.store.reading() as connection:
        rows = [job_row(row) for row in jobs.every(connection, caller.organisation)]
    return _WRITERS[form](rows)


def job_row(row: RowMapping) -> JobRow:
    """A job's row of the store as a row of an export."""
    same = ("id", "name", "state", "verdict", "fails", "thin", "open", "next", "plate", "fleet_number", "vin")
    more = ("vehicle_type", "yard", "updated_at")
    known = {name: row[name] for name in (*same, *more)}
    return JobRow(**known, unit_serial=row["serial"], lat_deg=row["lat"], lon_deg=row["lon"])
