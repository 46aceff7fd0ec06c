"""How long a phone's day takes in a yard of 20,000 jobs, 20,000 units and a finished vehicle of the type.

Run: python bench/day.py [--jobs N] [--store ADDRESS]. Rows are written straight into the store, as judging leaves them,
one unit claimed by each; truck 7 of the demo is handed in and signed off, for the 500 jobs of one person to follow. The
day is asked 20 times over the use case that answers the call, then over HTTP by a phone with one job: for the first
time, after a reading of its own, and unchanged. There is no peer to compare with; the list of the units alone is shown
beside it, for that is what grows with the yard. Aim: 200 ms in the middle, for the day of a phone.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

import httpx  # noqa: E402
from bench.desk_list import AIM_MS, RUNS, asked_ms, fill  # noqa: E402
from sqlalchemy import insert, select, update  # noqa: E402
from tests.cases.test_held_job import hand_in  # noqa: E402
from tests.cases.test_usual import finished  # noqa: E402
from tests.samples.journals import Phone  # noqa: E402
from tests.samples.served import serving  # noqa: E402

from backprobe.cases.day import day_of  # noqa: E402
from backprobe.cases.judging import judge_again  # noqa: E402
from backprobe.cases.may import Caller, Role  # noqa: E402
from backprobe.cases.usual import usual_in  # noqa: E402
from backprobe.cases.yard import Yard, open_yard  # noqa: E402
from backprobe.server.settings import Settings  # noqa: E402
from backprobe.store import jobs, units  # noqa: E402
from backprobe.store.tables import job, unit_claim  # noqa: E402


def claim_all(yard: Yard) -> None:
    """A unit in the vehicle of each job; every second finished one may be followed, those of another type."""
    with yard.store.writing() as connection:
        rows = connection.execute(select(job.c.id, job.c.serial, job.c.plate).where(job.c.serial.is_not(None)))
        claims = [
            {"organisation": yard.organisation, "serial": row.serial, "job": row.id, "vehicle": row.plate}
            for row in rows
        ]
        connection.execute(insert(unit_claim), claims)
        ended = job.c.state.in_(("proven", "provisional"))
        connection.execute(update(job).where(ended).values(usual=True, vehicle_type="Harrow & Vale Drover 5 2011"))


def over_the_line(data: Path, address: str | None) -> None:
    """What a phone with one job of its own gets from a server, packed: first, after its own reading, and unchanged."""
    settings = Settings(data=data, store=address, pages=ROOT / "web" / "dist")
    with serving(settings) as server, server.phone("Ines", device="phone-a") as phone:
        device = Phone(job="LY-2026-own")
        phone.post("/api/entries", json={"entries": [device.claims("serial", "LN2-OWN").raw.decode()]})
        first = phone.get("/api/day")
        marks, tag = first.json()["marks"], first.headers["etag"]
        told(phone, "first day", tag="", marks={})
        phone.post("/api/entries", json={"entries": [device.reads("Red", "on", "12.3").raw.decode()]})
        tag = told(phone, "after a reading", tag=tag, marks=marks)
        told(phone, "unchanged", tag=tag, marks=marks)


def told(phone: httpx.Client, what: str, *, tag: str, marks: dict[str, str]) -> str:
    """Ask for the day, and print what the answer costs; its mark."""
    sizes: list[int] = []

    def ask() -> None:
        with phone.stream("GET", "/api/day", params=marks, headers={"If-None-Match": tag}) as answer:
            sizes.append(sum(map(len, answer.iter_raw())) + sum(len(a) + len(b) + 4 for a, b in answer.headers.raw))
            tags.append(answer.headers["etag"])

    tags: list[str] = []
    median, worst = asked_ms(ask)
    print(f"{what:18}{median:8.1f}{worst:8.1f}   {max(sizes):9,} bytes over the line")
    return tags[-1]


def main() -> None:
    """Print the day's time and what of it is what."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--jobs", type=int, default=20_000)
    parser.add_argument("--store")
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        yard = open_yard(Path(name) / "data", address=chosen.store)
        fill(yard, chosen.jobs)
        claim_all(yard)
        caller = Caller(role=Role.PHONE, organisation=yard.organisation, person="p1")
        truck = finished(Path(name) / "truck")
        hand_in(yard, Caller(role=Role.PHONE, organisation=yard.organisation, person="p2"), truck)
        judge_again(yard, yard.organisation, job_id=truck.id)

        def usual() -> object:
            with yard.store.reading() as connection:
                rows = jobs.of_person(connection, yard.organisation, person_id="p1")
                return usual_in(yard, connection, organisation=yard.organisation, rows=rows)

        def serials() -> object:
            with yard.store.reading() as connection:
                return units.held_by(connection, yard.organisation), jobs.vehicle_names(connection, yard.organisation)

        found = day_of(yard, caller)
        assert isinstance(found["usual"], list)
        assert len(found["usual"]) == 1, "the finished truck is not in the day"
        print(f"{chosen.jobs} jobs on {chosen.store or 'SQLite'}; {RUNS} times each, median and slowest [ms]")
        for what, ask in (("the day", lambda: day_of(yard, caller)), ("usual", usual), ("serials", serials)):
            median, worst = asked_ms(ask)
            print(f"{what:18}{median:8.1f}{worst:8.1f}")
        over_the_line(Path(name) / "data", chosen.store)
        yard.store.close()
    print(f"aim for the day: {AIM_MS:.0f} ms")


if __name__ == "__main__":
    main()
