"""Reports that a collector pushes: kept once each, and handed to the job whose vehicle holds the unit.

In the job they stand as one file that the server writes and replaces as more arrive, so that phones, desk and engine
find them as they find any other table of reports.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import Connection, RowMapping

from backprobe.cases.hand_in_file import keep_bytes
from backprobe.cases.held_job import decoded, sheets_of
from backprobe.cases.may import Caller, Deed
from backprobe.cases.server_words import SERVER, say
from backprobe.cases.tokens import fresh_id, hashed, now
from backprobe.cases.unit_claims import MOST_SERIAL, plain_serial
from backprobe.cases.yard import Yard
from backprobe.errors import InputError, RefusedError
from backprobe.evidence.report import Report, ReportNames
from backprobe.formats.job_toml import read_job
from backprobe.formats.report_columns import KNOWN, names_from_option
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.reports_jsonl import table_of_json_lines
from backprobe.job.canonical import Body
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.journal import Draft
from backprobe.job.kinds import CORRECTION, SIGN_OFF, WITHDRAWN, text
from backprobe.store import entries, reports
from backprobe.store.entries import Held
from backprobe.store.tables import ENDED

KIND, FILE = "reports", "reports.csv"
MOST_ROWS = 10_000  # in one push
MOST_IN_JOB = 5_000  # the newest; a proof rests on those around the key script
PUSH = "the push"
AT_ONCE = 50


@dataclass(frozen=True, slots=True)
class Push:
    """What came: the bytes, whether they are JSON lines or CSV, and a column map that goes before the feed's own."""

    content: bytes
    is_json: bool
    columns: str | None = None


def push_reports(yard: Yard, caller: Caller, *, feed: RowMapping, push: Push) -> dict[str, object]:
    """Keep a push and hand its reports on. Raises InputError where nothing in it can be read, RefusedError."""
    caller.must(Deed.PUSH_REPORTS)
    names = ReportNames(json.loads(feed["columns"])) if push.columns is None else names_from_option(push.columns)
    found, skipped = _read(push, names)
    rows = [_row(report, caller=caller, feed_id=feed["id"]) for report in found if _named(report)]
    skipped += len(found) - len(rows)
    by_digest = {str(row["digest"]): row for row in rows}
    with yard.store.writing() as connection:
        held = entries.held(connection, caller.organisation)
        known = reports.known(connection, held.organisation, digests=list(by_digest))
        reports.add(connection, [row for digest, row in by_digest.items() if digest not in known])
    units = dict.fromkeys(str(row["unit"]) for row in rows)
    reached = [job for unit in units if (job := deliver(yard, caller.organisation, unit=unit)) is not None]
    kept = len(by_digest) - len(known)
    return {"kept": kept, "known": len(rows) - kept, "skipped": skipped, "jobs": reached}


def _read(push: Push, names: ReportNames) -> tuple[tuple[Report, ...], int]:
    """The reports, and how many lines were passed over."""
    lines = decoded(push.content).replace("\r\n", "\n").replace("\r", "\n").split("\n")
    odd = 0
    if push.is_json:
        lines, _, odd = table_of_json_lines(lines, file=PUSH)
    if len(lines) > MOST_ROWS + 2:
        raise RefusedError(f"at most {MOST_ROWS} reports in one push", code="too_large")
    table = read_reports(lines, file=PUSH, names=names)
    return table.reports, odd + table.skipped_rows


def _named(report: Report) -> bool:
    unit = plain_serial(report.unit_id)
    return 0 < len(unit) <= MOST_SERIAL and unit.isprintable() and report.written.isprintable()


def _row(report: Report, *, caller: Caller, feed_id: str) -> dict[str, object]:
    """A report's row in our own columns; rows that say the same have the same digest."""
    said = _written(_cells(report))
    return {
        "organisation": caller.organisation,
        "digest": hashed(said),
        "unit": plain_serial(report.unit_id),
        "time_s": report.time_s,
        "row": said,
        "received_at": now(),
        "feed": feed_id,
    }


def _cells(report: Report) -> list[str]:
    fix = report.fix
    values: Mapping[str, object] = {
        "unit_id": report.unit_id,
        "t": report.written,
        "received_at": None if report.received_s is None else _stamp(report.received_s),
        "lat": None if fix is None else fix.lat_deg,
        "lon": None if fix is None else fix.lon_deg,
        "accuracy_m": None if fix is None else fix.accuracy_m,
        "speed_kmh": report.speed_kmh,
        "sats": None if fix is None else fix.sats,
        "hdop": None if fix is None else fix.hdop,
        "supply_V": report.supply_V,
        "ignition": None if report.ignition is None else int(report.ignition),
        "event": None if report.event is None else str(report.event),
    }
    return ["" if values[name] is None else str(values[name]) for name in KNOWN]


def _stamp(time_s: float) -> str:
    return datetime.fromtimestamp(time_s, UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def _written(cells: Sequence[str]) -> str:
    held = io.StringIO()
    csv.writer(held, lineterminator="\n").writerow(cells)
    return held.getvalue()


def deliver(yard: Yard, organisation: str, *, unit: str) -> str | None:
    """Hand the reports of a unit to the job that is in work on it; the job, None where there is none."""
    while True:
        with yard.store.reading() as connection:
            job_id = reports.job_of_unit(connection, organisation, unit=unit)
            if job_id is None:
                return None
            rows = reports.of_unit(connection, organisation, unit=unit, job_id=job_id, most=MOST_IN_JOB)
            heading = _heading(yard, connection, organisation=organisation, job_id=job_id)
        content = (heading + "".join(row["row"] for row in rows)).encode()
        sha256 = keep_bytes(yard, content, at=now())
        body: Body = {"file": FILE, "sha256": sha256, "bytes": len(content), "stored": True}
        with yard.store.writing() as connection:
            held = entries.held(connection, organisation)
            again = reports.of_unit(connection, organisation, unit=unit, job_id=job_id, most=MOST_IN_JOB)
            if _is_over(held, job_id):
                return None  # signed off just now: later reports are not for this job
            if [row["digest"] for row in again] != [row["digest"] for row in rows]:
                continue  # more came meanwhile
            _say(held, job_id, body=body)
            reports.delivered(connection, organisation, unit=unit, job_id=job_id)
            return job_id


def _is_over(held: Held, job_id: str) -> bool:
    """Whether somebody has signed the job off for good, whether its row says so yet or not."""
    raws = entries.of_job(held.connection, held.organisation, job_id=job_id, kinds=[SIGN_OFF])
    return bool(raws) and text(read_entry(raws[-1]).body, "end") in ENDED


def _heading(yard: Yard, connection: Connection, *, organisation: str, job_id: str) -> str:
    """Our columns under the names that the job's sheet says reports have, as whoever reads them will look for those."""
    sheet = sheets_of(yard, connection, organisation=organisation, job_id=job_id).get("job.toml")
    try:
        theirs = {} if sheet is None else read_job(sheet, "job.toml").report_names.columns
    except InputError:
        theirs = {}
    return _written([theirs.get(name, name) for name in KNOWN])


def _say(held: Held, job_id: str, *, body: Body) -> None:
    """Say which file holds the reports, in place of what the server said before; nothing where that is the same."""
    kinds = (KIND, CORRECTION, WITHDRAWN)
    raws = entries.of_job(held.connection, held.organisation, job_id=job_id, kinds=kinds)
    standing = fold(read_entry(raw) for raw in raws).of_kind(KIND)
    mine = [one for one in standing if one.entry.device == SERVER]
    if any(one.body.get("sha256") == body["sha256"] for one in mine):
        return
    blobs = (str(body["sha256"]),)
    if mine:
        replaced: Body = {"replaces": [one.id for one in mine], "kind": KIND, "body": body}
        draft = Draft(id=fresh_id(), kind=CORRECTION, body=replaced, blobs=blobs)
    else:
        draft = Draft(id=fresh_id(), kind=KIND, body=body, blobs=blobs)
    say(held, [draft], job_id=job_id, at=now())


def deliver_waiting(yard: Yard) -> int:
    """Hand on reports whose unit came into a vehicle after they had arrived; of how many units."""
    with yard.store.reading() as connection:
        waiting = reports.waiting_units(connection, limit=AT_ONCE)
    for organisation, unit in waiting:
        deliver(yard, organisation, unit=unit)
    return len(waiting)
