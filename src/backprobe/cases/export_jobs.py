"""All jobs as other programs read them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from enum import StrEnum

from sqlalchemy import RowMapping

from backprobe.cases.may import Caller, Deed
from backprobe.cases.yard import Yard
from backprobe.cases.yard_corners import yard_corners
from backprobe.evidence.corner import CornerIndex
from backprobe.evidence.job_row import JobRow
from backprobe.formats.jobs_export import jobs_csv, jobs_geojson, jobs_json
from backprobe.stages.named_place import named_place
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
    corners = yard_corners(yard)
    with yard.store.reading() as connection:
        rows = [job_row(row, corners) for row in jobs.every(connection, caller.organisation)]
    return _WRITERS[form](rows)


def job_row(row: RowMapping, corners: CornerIndex | None = None) -> JobRow:
    """A job's row of the store as a row of an export; where corners are known, its place in words too."""
    same = ("id", "name", "state", "verdict", "fails", "thin", "open", "next", "plate", "fleet_number", "vin")
    more = ("vehicle_type", "yard", "updated_at")
    known = {name: row[name] for name in (*same, *more)}
    found = JobRow(**known, unit_serial=row["serial"], lat_deg=row["lat"], lon_deg=row["lon"])
    if corners is None or found.lat_deg is None or found.lon_deg is None:
        return found
    place = named_place(corners, (found.lat_deg, found.lon_deg))
    return replace(found, corner=place.text, attribution=None if place.near is None else place.attribution)
