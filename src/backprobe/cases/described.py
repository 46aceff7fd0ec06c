"""What the list of jobs shows of a job: worked out from its entries, written into its row."""

from __future__ import annotations

from collections import Counter

from sqlalchemy import Connection

from backprobe.cases.held_job import HeldJob, has_begun
from backprobe.cases.unit_claims import plain_serial
from backprobe.cases.usual import may_be_usual
from backprobe.evidence.job_sheet import JobSheet
from backprobe.findings import Verdict
from backprobe.store import jobs
from backprobe.store.upsert import Row

NEW, IN_WORK = "new", "in_work"
LONGEST = 200
OWING, DONE = 3, 4  # places in the list of jobs that have ended: behind all that ask for work


def describe_job(connection: Connection, organisation: str, *, held: HeldJob, cursor: int) -> None:
    """Write the row of a job that was judged up to `cursor`."""
    values = {**_judgement(held), **_sheet(held), "judged_cursor": cursor}
    jobs.describe(connection, organisation, job_id=held.id, values=values)


def state_of(held: HeldJob) -> str:
    """new, in_work, or how it was signed off."""
    return held.end or (IN_WORK if has_begun(held) else NEW)


def _judgement(held: HeldJob) -> Row:
    findings = () if held.judged is None else held.judged.findings
    counts = Counter(finding.verdict for finding in findings)
    step = held.fault if held.judged is None else held.judged.next
    stage = None if held.judged is None else held.judged.next_stage
    return {
        "state": state_of(held),
        "verdict": str(held.verdict),
        "urgency": _urgency(counts, held),
        "usual": may_be_usual(held),
        "fails": counts[Verdict.FAILS],
        "thin": counts[Verdict.THIN],
        "open": counts[Verdict.OPEN],
        "next": None if step is None else step.replace("\0", " "),
        "next_stage": stage and str(stage),
    }


def _urgency(counts: Counter[Verdict], held: HeldJob) -> int:
    """What fails comes first in the list, then what is thin, open, holds; last what has ended, whatever its verdict."""
    closing = None if held.judged is None else held.judged.closing
    if held.end and closing is not None:
        return OWING if closing.next else DONE
    if counts[Verdict.FAILS]:
        return 0
    if counts[Verdict.THIN]:
        return 1
    return 3 if held.verdict is Verdict.HOLDS else 2


def _sheet(held: HeldJob) -> Row:
    """Vehicle, unit and place, as far as they are known."""
    if held.judged is None:
        slots = {name: slot.value for name, slot in held.state.slots.items()}
        known: dict[str, object] = {"vin": plain(slots.get("vin")), "serial": plain(slots.get("serial"))}
    else:
        known = _from_sheet(held.judged.evidence.sheet)
    shown = (known.get("plate"), known.get("fleet_number"), plain(held.id))
    name = next(str(value) for value in shown if value)
    words = (held.id, *(str(value) for value in known.values() if isinstance(value, str)))
    return {**known, "name": name, "search": (plain(" ".join(words), 2000) or "").casefold()}


def _from_sheet(sheet: JobSheet) -> dict[str, object]:
    vehicle, place = sheet.vehicle, sheet.place
    kind = " ".join(part for part in (vehicle.maker, vehicle.model, str(vehicle.model_year or "")) if part)
    return {
        "vin": plain(vehicle.vin),
        "plate": plain(vehicle.plate),
        "fleet_number": plain(vehicle.fleet_number),
        "vehicle_type": plain(kind),
        "unit_sheet": plain(sheet.unit_sheet),
        "serial": plain(sheet.unit_serial),
        "unit_id": None if sheet.unit_id is None else plain_serial(sheet.unit_id)[:LONGEST] or None,
        "yard": plain(sheet.yard),
        "lat": None if place is None else place.lat_deg,
        "lon": None if place is None else place.lon_deg,
    }


def plain(text: str | None, most: int = LONGEST) -> str | None:
    r"""A text that every database takes: on one line, not too long; None for nothing.

    >>> plain(" LY\t07 "), plain("")
    ('LY 07', None)
    """
    if text is None:
        return None
    letters = "".join(letter if letter.isprintable() else " " for letter in text)
    return letters.strip()[:most] or None
