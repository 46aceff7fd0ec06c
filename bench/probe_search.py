"""The large examination of the probe: thousands of awkward vehicles, each driven through the whole loop.

Run: .venv/bin/python bench/probe_search.py [vehicles per case] [first seed] [part of a case's name]
Prints for every case: unsafe choices (at any step, not only the last), promises broken, pairs found where a fit pair
exists, readings against positions × wires for vehicles of 6 to 14 wires; then how well `probability` is calibrated,
and the tables of wires that were chosen unsafely. PROBE_SRC=/some/src examines another state of the product.
"""

import os
import sys
import time
from collections import Counter
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [os.environ.get("PROBE_SRC", str(ROOT / "src")), str(ROOT)]

from tests.samples.probe_cases import CASES, Tally, examine, mean  # noqa: E402

BINS = (0.0, 0.5, 0.8, 0.9, 0.95, 0.99, 1.01)
MOST_SHOWN = 12


def line_of(name: str, tally: Tally, seconds: float) -> str:
    found = f"{tally.found:4}/{tally.fit:4} {tally.found / tally.fit if tally.fit else 0.0:4.0%}"
    shares = f"{mean(tally.readings):8.1f}  {mean(tally.shares):11.1%}  {mean(tally.when_fit):8.1%}"
    return f"{name:38} {len(tally.unsafe):6}  {len(tally.broken):6}  {found}  {shares}  {seconds:5.0f}"


def show_calibration(named: list) -> None:
    print("probability as said, how many wires named, how many rightly:")
    for low, high in pairwise(BINS):
        inside = [(p, right) for p, right in named if low <= p < high]
        if inside:
            said, true = mean([p for p, _ in inside]), mean([right for _, right in inside])
            print(f"  {low:.2f}-{min(high, 1):.2f}  {len(inside):6}  said {said:.3f}  right {true:.3f}")


def show_leaks(leaks: list) -> None:
    for name, number, said, lines in leaks[:MOST_SHOWN]:
        wire = said.split(":")[0].split()[1]
        print(f"\n{name}, seed {number}: {said}")
        print("   " + "\n   ".join(line for line in lines if line.split(",")[0] == wire))


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    only = sys.argv[3] if len(sys.argv) > 3 else ""
    named, leaks, broken, vehicles = [], [], Counter(), 0
    print(f"{'case':38} unsafe  broken  found/fit      readings  of the table  where fit   s")
    for case in (case for case in CASES if only in case.name):
        began = time.perf_counter()
        tally = examine(case, count, seed=seed)
        print(line_of(case.name, tally, time.perf_counter() - began), flush=True)
        named += tally.named
        leaks += [(case.name, *leak) for leak in tally.unsafe]
        broken.update(said.split(":")[0] for said in tally.broken)
        vehicles += tally.vehicles
    print(f"{vehicles} vehicles, {len(leaks)} unsafe choices; broken promises: {dict(broken)}")
    show_calibration(named)
    show_leaks(leaks)


if __name__ == "__main__":
    main()
