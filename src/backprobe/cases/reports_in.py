"""Reports that a collector pushes: kept once each, and handed to the job whose vehicle holds the unit.

In the job each push stands as an entry of the server's with a file of its own; what comes in small pieces is gathered
first, for seconds while somebody works on the job, for an hour otherwise. Phones, desk and engine read all such files
as one table.
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
from backprobe.cases.server_words import say
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
from backprobe.job.journal import Draft
from backprobe.job.kinds import SIGN_OFF, text
from backprobe.store import entries, jobs, reports
from backprobe.store.entries import Held
from backprobe.store.reports import Turn
from backprobe.store.tables import ENDED

KIND = "reports"
MOST_ROWS = 10_000  # in one push
MOST_PUSHES_A_DAY, MOST_BYTES_A_DAY, DAY_S = 20_000, 200_000_000, 86_400  # of one token; days are those of UTC
MOST_IN_ENTRY = 5_000
MOST_IN_JOB = 20_000  # two weeks of a report a minute; what comes later is kept, and in no job
WORTH_BYTES = 64_000  # so much is handed on whenever it is there
WORK_S, AT_WORK_S = (
    2 * 3600,
    20,
)  # so long after its last entry a job counts as worked on; it then gets reports so often
IDLE_S = 3600  # and otherwise so often
PUSH = "the push"
AT_ONCE = 50


@dataclass(frozen=True, slots=True)
class Push:
    """What came: the bytes, whether they are JSON lines or CSV, and a column map that goes before the feed's own."""

    content: bytes
    is_json: bool
    columns: str | None = None


def over_quota_s(yard: Yard, *, feed: RowMapping, size: int, at: datetime) -> int | None:
    """Count a push of `size` bytes at `at` (UTC); the seconds until the next day where it is one too many."""
    with yard.store.writing() as connection:
        pushes, total = reports.count_push(connection, feed["id"], day=at.date().isoformat(), size=size)
    if pushes <= MOST_PUSHES_A_DAY and total <= MOST_BYTES_A_DAY:
        return None
    return DAY_S - (at.hour * 3600 + at.minute * 60 + at.second)


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


def turn() -> Turn:
    """When reports that wait are handed on, as of now."""
    return Turn(bytes=WORTH_BYTES, work_since=now(-WORK_S), at_work=now(-AT_WORK_S), idle=now(-IDLE_S))


def deliver(yard: Yard, organisation: str, *, unit: str) -> str | None:
    """Hand the reports of a unit to the job that is in work on it, where their turn has come; the job, if any."""
    while True:
        with yard.store.reading() as connection:
            job_id = reports.job_of_unit(connection, organisation, unit=unit)
            if job_id is None:
                return None
            if not reports.is_due(connection, organisation, unit=unit, job_id=job_id, turn=turn()):
                return job_id
            rows = reports.waiting(connection, organisation, unit=unit, most=MOST_IN_ENTRY)
            reached = reports.how_many_reached(connection, organisation, unit=unit, job_id=job_id)
            heading = _heading(yard, connection, organisation=organisation, job_id=job_id)
        body = _kept(yard, heading, rows=rows) if reached < MOST_IN_JOB else None
        digests = [str(row["digest"]) for row in rows]
        with yard.store.writing() as connection:
            held = entries.held(connection, organisation)
            if _is_over(held, job_id):
                return None  # signed off just now: later reports are not for this job
            if set(digests) - reports.still_waiting(connection, organisation, digests=digests):
                continue  # handed on by another call meanwhile
            reports.delivered(connection, organisation, digests=digests, job_id=job_id)
            if body is not None:
                _say(held, job_id, body=body)


def _kept(yard: Yard, heading: str, *, rows: Sequence[RowMapping]) -> Body:
    """The body of an entry that names a file with these rows; the file is kept."""
    content = (heading + "".join(row["row"] for row in rows)).encode()
    sha256 = keep_bytes(yard, content, at=now())
    first = datetime.fromtimestamp(rows[0]["time_s"], UTC).strftime("%Y-%m-%dT%H%M%SZ")
    return {"file": f"reports-{first}-{sha256[:8]}.csv", "sha256": sha256, "bytes": len(content), "stored": True}


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
    """Say which file holds the reports that have come."""
    at = now()
    draft = Draft(id=fresh_id(), kind=KIND, body=body, blobs=(str(body["sha256"]),))
    say(held, [draft], job_id=job_id, at=at)
    jobs.describe(held.connection, held.organisation, job_id=job_id, values={"reported_at": at})


def deliver_waiting(yard: Yard) -> int:
    """Hand on reports that wait and whose turn has come; of how many units."""
    with yard.store.reading() as connection:
        waiting = reports.waiting_units(connection, turn=turn(), limit=AT_ONCE)
    for organisation, unit in waiting:
        deliver(yard, organisation, unit=unit)
    return len(waiting)
