"""How long the desk's list takes among 20,000 jobs: first page, search, a page far down, one state; and the export.

Run: python bench/desk_list.py [--jobs N] [--store ADDRESS]. Rows are written straight into the store, as judging leaves
them; every question is then asked 20 times over the use case that answers the call (without HTTP), and the slowest is
shown beside the middle one. The peer is the database's own time for a bare count of the same table, which no list can
undercut by much. Aim: 200 ms in the middle; the slowest tells what else the machine had to do.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

from sqlalchemy import func, insert, select, text  # noqa: E402

from backprobe.cases.desk_jobs import list_jobs  # noqa: E402
from backprobe.cases.export_jobs import Form, exported  # noqa: E402
from backprobe.cases.may import Caller, Role  # noqa: E402
from backprobe.cases.tokens import now  # noqa: E402
from backprobe.cases.yard import Yard, open_yard  # noqa: E402
from backprobe.store.jobs import Wanted  # noqa: E402
from backprobe.store.people import Person, add_person  # noqa: E402
from backprobe.store.tables import job, job_person  # noqa: E402

RUNS = 20
AIM_MS = 200.0
STATES = ("new", "in_work", "provisional", "proven", "abandoned")
VERDICTS = ("fails", "thin", "open", "holds")


def fill(yard: Yard, count: int) -> None:
    """Jobs of an invented fleet, each given to one of 40 people."""
    people = [
        Person(id=f"p{n}", organisation=yard.organisation, name=f"P {n}", language="en", units="us", role="installer")
        for n in range(40)
    ]
    rows = [row(yard.organisation, number) for number in range(count)]
    given = [{"organisation": yard.organisation, "job": r["id"], "person": f"p{at % 40}"} for at, r in enumerate(rows)]
    with yard.store.writing() as connection:
        for who in people:
            add_person(connection, who, made_at=now())
        connection.execute(insert(job), rows)
        connection.execute(insert(job_person), given)
    with yard.store.writing() as connection:
        connection.execute(text("ANALYZE"))  # as PostgreSQL does by itself within a minute


def row(organisation: str, number: int) -> dict[str, object]:
    """One job's row."""
    urgency = (0, 3, 3, 2, 3, 1, 3, 2, 3, 3)[number % 10]
    plate, vin, serial = f"LY {number:05}", f"5ZLDR7HV5KR{number:06}", f"LN2-{number:05}"
    return {
        "organisation": organisation,
        "id": f"LY-2026-{number}",
        "name": plate,
        "state": STATES[number % 5],
        "verdict": VERDICTS[urgency],
        "urgency": urgency,
        "fails": int(urgency == 0),
        "thin": int(urgency == 1),
        "open": int(urgency == 2),
        "next": "measure X12/9 VT in accessory: a true ignition is dead in accessory",
        "vin": vin,
        "plate": plate,
        "fleet_number": str(number),
        "vehicle_type": "Harrow & Vale Drover 7 2019",
        "unit_sheet": "unit.toml",
        "serial": serial,
        "unit_id": None,
        "yard": f"bay {number % 30}",
        "lat": 51.0 + number / 1e5,
        "lon": -0.2,
        "entries": 120,
        "cursor": number + 1,
        "judged_cursor": number + 1,
        "search": f"{plate} {vin} {serial} ly-2026-{number} bay {number % 30}".casefold(),
        "made_at": now(),
        "updated_at": now(),
    }


def asked_ms(ask: Callable[[], object]) -> tuple[float, float]:
    """The middle and the slowest of several answers [ms]."""
    taken = []
    for _ in range(RUNS):
        started = perf_counter()
        ask()
        taken.append((perf_counter() - started) * 1000)
    return statistics.median(taken), max(taken)


def far_down(yard: Yard, caller: Caller, *, pages: int) -> str | None:
    """The place in the list after so many pages."""
    after = None
    for _ in range(pages):
        after = list_jobs(yard, caller, wanted=Wanted(after=after, limit=200))["after"]  # type: ignore[assignment]
    return after


def bare_count(yard: Yard) -> None:
    """What the database takes to look at every row."""
    with yard.store.reading() as connection:
        connection.execute(select(func.count(), func.max(func.length(job.c.search))).select_from(job)).one()


def main() -> None:
    """Print each question's time against the aim."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--jobs", type=int, default=20_000)
    parser.add_argument("--store")
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        yard = open_yard(Path(name) / "data", address=chosen.store)
        fill(yard, chosen.jobs)
        lead = Caller(role=Role.LEAD, organisation=yard.organisation)
        deep = far_down(yard, lead, pages=chosen.jobs // 400)
        questions: dict[str, Wanted] = {
            "first page": Wanted(),
            "one state": Wanted(state="provisional"),
            "search, one hit": Wanted(q=f"{chosen.jobs - 7:05}"),
            "search, no hit": Wanted(q="nothing like it"),
            "halfway down": Wanted(after=deep),
            "200 rows": Wanted(limit=200),
        }
        print(f"{chosen.jobs} jobs on {chosen.store or 'SQLite'}; {RUNS} times each, median and slowest [ms]")
        middle = 0.0
        for what, wanted in questions.items():
            median, worst = asked_ms(lambda wanted=wanted: list_jobs(yard, lead, wanted=wanted))
            middle = max(middle, median)
            print(f"{what:18}{median:8.1f}{worst:8.1f}")
        median, worst = asked_ms(lambda: bare_count(yard))
        print(f"{'peer: bare count':18}{median:8.1f}{worst:8.1f}")
        started = perf_counter()
        size = len(exported(yard, lead, form=Form.CSV).encode())
        print(f"export as CSV: {perf_counter() - started:.2f} s, {size / 1e6:.1f} MB")
        yard.store.close()
    print("within the aim" if middle <= AIM_MS else f"NOT within the aim of {AIM_MS:.0f} ms")


if __name__ == "__main__":
    main()
