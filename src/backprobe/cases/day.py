"""A phone's day: the jobs of its person with their sheets, and which unit is in which vehicle."""

from __future__ import annotations

from sqlalchemy import Connection, RowMapping

from backprobe.cases.held_job import sheets_of
from backprobe.cases.judging import judge_again
from backprobe.cases.may import Caller, Deed
from backprobe.cases.usual import usual_in
from backprobe.cases.yard import Yard
from backprobe.cases.yard_corners import day_corners
from backprobe.store import jobs, units


def day_of(yard: Yard, caller: Caller) -> dict[str, object]:
    """Jobs and units, as in docs/api.md. Raises RefusedError."""
    caller.must(Deed.READ_DAY)
    _judge_new(yard, caller)
    with yard.store.reading() as connection:
        rows = jobs.of_person(connection, caller.organisation, person_id=caller.person or "")
        found = [_job(yard, connection, caller=caller, row=row) for row in rows]
        names = jobs.vehicle_names(connection, caller.organisation)
        claims = units.held_by(connection, caller.organisation)
        usual = usual_in(yard, connection, organisation=caller.organisation, rows=rows)
    serials = [{"serial": each.serial, "job": each.job, "vehicle": names.get(each.job)} for each in claims]
    places = [(row["lat"], row["lon"]) for row in rows if row["lat"] is not None and row["lon"] is not None]
    return {"jobs": found, "serials": serials, "usual": usual, "corners": day_corners(yard, places)}


def _judge_new(yard: Yard, caller: Caller) -> None:
    """Rows of jobs that nobody has looked at yet bear no names: look at them now."""
    with yard.store.reading() as connection:
        rows = jobs.of_person(connection, caller.organisation, person_id=caller.person or "")
    for row in rows:
        if row["judged_cursor"] == 0:
            judge_again(yard, caller.organisation, job_id=row["id"])


def _job(yard: Yard, connection: Connection, *, caller: Caller, row: RowMapping) -> dict[str, object]:
    files = sheets_of(yard, connection, organisation=caller.organisation, job_id=str(row["id"]))
    return {**job_json(row), "cursor": row["cursor"], "said": _said(row), "files": files}


def _said(row: RowMapping) -> dict[str, object] | None:
    """What the engine says of a job up to an entry; None while it was not judged, or could not be."""
    if row["judged_cursor"] == 0 or (row["next"] and not row["next_stage"]):
        return None
    counts = {name: row[name] for name in ("fails", "open")}
    return {"verdict": row["verdict"], **counts, "stage": row["next_stage"], "cursor": row["judged_cursor"]}


def job_json(row: RowMapping) -> dict[str, object]:
    """What is shown of a job: its vehicle, unit and place."""
    place = None
    if row["lat"] is not None:
        place = {"lat": row["lat"], "lon": row["lon"], "name": row["yard"]}
    return {
        "id": row["id"],
        "name": row["name"],
        "state": row["state"],
        "vehicle": {name: row[name] for name in ("plate", "fleet_number", "vin")} | {"type": row["vehicle_type"]},
        "unit": {"sheet": row["unit_sheet"], "serial": row["serial"]},
        "place": place,
    }
