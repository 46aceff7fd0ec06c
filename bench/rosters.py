"""Rosters: how long a list of vehicles takes to be read and held against what is known, as CSV and as a workbook.

Run: python bench/rosters.py [ROWS]. Peers: the csv module and openpyxl reading the same cells and looking at nothing.
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

import openpyxl

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

from backprobe.cases.roster import roster_in
from backprobe.evidence.job_row import JobRow
from backprobe.formats.jobs_export import jobs_csv, jobs_geojson
from backprobe.job.roster_preview import preview_roster

HEADING = ["plate", "fleet_number", "type", "yard", "lat", "lon", "serial", "day", "installer"]
RUNS = 3


def row(number: int) -> list[str]:
    """One invented vehicle."""
    place = [f"{-33 - number / 1e5:.5f}", f"{151 + number / 1e5:.5f}"]
    return [f"LY {number:05}", str(number), "Box van", "Linden Yard", *place, f"{number:08}", "2026-03-31", "Ada Quill"]


def best_s(work: Callable[[], object]) -> float:
    """The best of several runs."""
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return min(times)


def cells_of_csv(path: Path) -> int:
    """Every cell, looked at by nobody."""
    with path.open(newline="", encoding="utf-8") as file:
        return sum(len(cells) for cells in csv.reader(file))


def cells_of_workbook(path: Path) -> int:
    """The same."""
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    return sum(len(cells) for cells in book.worksheets[0].iter_rows(values_only=True))


def main() -> None:
    """Print the figures."""
    rows = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    table = [HEADING, *(row(number) for number in range(rows))]
    with TemporaryDirectory() as folder:
        plain, book = Path(folder) / "trucks.csv", Path(folder) / "trucks.xlsx"
        plain.write_text("\n".join(",".join(cells) for cells in table), encoding="utf-8")
        made = openpyxl.Workbook(write_only=True)
        sheet = made.create_sheet()
        for cells in table:
            sheet.append(cells)
        made.save(book)
        for path, peer, name in ((plain, cells_of_csv, "csv module"), (book, cells_of_workbook, "openpyxl alone")):
            ours, other = best_s(lambda path=path: roster_in(path)), best_s(lambda path=path, peer=peer: peer(path))
            print(f"{path.name}, {rows:,} rows: {ours:.2f} s; {name} {other:.2f} s")
        roster = roster_in(plain)
    known = best_s(lambda: preview_roster(roster, roster.rows))
    print(f"held against {rows:,} known rows: {known:.2f} s")
    jobs = [
        JobRow(id=r.name, name=r.name, state="open", verdict="open", lat_deg=r.lat_deg, lon_deg=r.lon_deg)
        for r in roster.rows
    ]
    as_csv, as_geojson = best_s(lambda: jobs_csv(jobs)), best_s(lambda: jobs_geojson(jobs))
    print(f"exported as CSV: {as_csv:.2f} s, as GeoJSON: {as_geojson:.2f} s")


if __name__ == "__main__":
    main()
