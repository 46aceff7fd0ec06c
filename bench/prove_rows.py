"""How fast a script is laid over a large table of reports: reading, aligning and judging 100,000 rows.

Run: python bench/prove_rows.py [ROWS …]. Each figure is the best of several runs in one process, once by the clock and
once by the processor's time, which other work on the machine does not lengthen; the aim is 2 s for 100,000 rows. Three
tables: one unit that reports every second; a backlog whose reports all arrive in one second; a yard of 200 units in one
export. The peer is the csv module reading the same rows into lists.
"""

from __future__ import annotations

import argparse
import csv
import io
import sys
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from time import perf_counter, process_time

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

from backprobe.evidence.key_turn import KeyScript
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.reports_csv import read_reports
from backprobe.stages.prove.prove import prove
from backprobe.stages.prove.setup import ProveSetup, VehiclePlace

RUNS = 3
START = datetime(2026, 3, 31, 6, tzinfo=UTC)
HEADER = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event"
STEPS = ((0, "off"), (180, "accessory"), (390, "off"), (560, "on"), (815, "crank"), (817, "running"), (1040, "off"))
ON_S, OFF_S = 562, 1060


def stamp(seconds: float) -> str:
    """A moment as servers write it."""
    return (START + timedelta(seconds=seconds)).isoformat().replace("+00:00", "Z")


def script() -> KeyScript:
    """A script in the middle of the first hour."""
    return read_key_script(["t,key", *(f"{stamp(1800 + t)},{key}" for t, key in STEPS)], file="script.csv")


def row(unit: str, seconds: float, arrived: float, since: float) -> str:
    """A report; the key was turned `since` seconds after the start of the table."""
    at = seconds - since
    event = "ignition_on" if at == ON_S else "ignition_off" if at == OFF_S else ""
    here = "-33.10001,151.20002,4.1,0,9,0.9,12.41"
    return f"{unit},{stamp(seconds)},{stamp(arrived)},{here},{int(ON_S <= at < OFF_S)},{event}"


def steady(rows: int) -> list[str]:
    """One unit, a report every second."""
    return [HEADER, *(row("LN2-1", s, s + 1, 1800) for s in range(rows))]


def backlog(rows: int) -> list[str]:
    """One unit that was out of reach: everything arrives in one second."""
    return [HEADER, *(row("LN2-1", s, rows + 5, 1800) for s in range(rows))]


def yard(rows: int) -> list[str]:
    """Two hundred units, a report each in turn; the first one has the script's turns."""
    found = [HEADER]
    for s in range(rows):
        unit = s % 200
        found.append(row(f"LN2-{unit + 1}", s // 4, s // 4 + 1, 1800 + unit * 7))
    return found


def ours(lines: list[str]) -> None:
    """Reading, aligning, judging, and the answer as JSON values."""
    place = VehiclePlace(lat_deg=-33.1, lon_deg=151.2)
    answer = prove(script(), read_reports(lines, file="reports.csv"), setup=ProveSetup(unit_id="LN2-1", place=place))
    assert answer.as_json()["ok"]


def peer(lines: list[str]) -> None:
    """The cells alone."""
    assert len(list(csv.reader(io.StringIO("\n".join(lines))))) == len(lines)


def best_s(work: Callable[[list[str]], None], lines: list[str]) -> tuple[float, float]:
    """The best of several runs, by the clock and by the processor's time."""
    times = []
    for _ in range(RUNS):
        started, used = perf_counter(), process_time()
        work(lines)
        times.append((perf_counter() - started, process_time() - used))
    return min(clock for clock, _ in times), min(used for _, used in times)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rows", nargs="*", type=int, default=[10_000, 100_000])
    print("table         rows   ours s   cpu s    csv s   cpu s   ratio of cpu")
    for rows in parser.parse_args().rows:
        for name, make in (("steady", steady), ("backlog", backlog), ("yard", yard)):
            lines = make(rows)
            own, other = best_s(ours, lines), best_s(peer, lines)
            ratio = own[1] / other[1]
            figures = "  ".join(f"{clock:>7.3f} {used:>7.3f}" for clock, used in (own, other))
            print(f"{name:8} {rows:>9,}  {figures}  {ratio:>8.1f}")


if __name__ == "__main__":
    main()
