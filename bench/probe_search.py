"""The large examination of the probe: thousands of awkward vehicles, each driven through the whole loop.

Run: .venv/bin/python bench/probe_search.py [vehicles per case] [first seed]
Prints for every case: unsafe choices (at any step, not only the last), promises broken, pairs found where a fit pair
exists, readings against positions × wires for vehicles of 6 to 14 wires; then how well `probability` is calibrated.
"""

import os
import random
import sys
import time
from collections import defaultdict
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [os.environ.get("PROBE_SRC", str(ROOT / "src")), str(ROOT)]

from tests.samples.awkward_vehicles import Technician, make_vehicle  # noqa: E402
from tests.samples.probe_loop import drive  # noqa: E402

from backprobe.evidence.keys import Capture  # noqa: E402
from backprobe.limits.lookup import meter  # noqa: E402
from backprobe.stages.probe.roles import Role  # noqa: E402
from backprobe.stages.probe.setup import Setup  # noqa: E402

D, MIN, MAX, LOG = Capture.DISPLAY, Capture.MIN, Capture.MAX, Capture.LOGGED
BINS = (0.0, 0.5, 0.8, 0.9, 0.95, 0.99, 1.01)


@dataclass
class Case:
    """One kind of vehicle, meter and technician."""

    name: str
    system_V: int = 12
    captures: tuple = (D, MIN, MAX)
    meter: str = "basic"
    has_crank: bool = True
    has_accessory: bool = True
    habits: dict = field(default_factory=dict)


CASES = (
    Case("12 V, careful"),
    Case("12 V, fast recorder too", captures=(D, MIN, MAX, LOG)),
    Case("12 V, 1 ms hold", meter="service"),
    Case("12 V, slips 1 %", habits={"slips": 0.01}),
    Case("12 V, slips 4 %", habits={"slips": 0.04}),
    Case("12 V, lost contact 1 %", habits={"misses": 0.01}),
    Case("12 V, loads on half of the readings", habits={"loads": 0.5}),
    Case("12 V, after at 30 min", habits={"minutes": 30.0}),
    Case("12 V, after at 5 min", habits={"minutes": 5.0}),
    Case("12 V, min for logged", captures=(D, MIN, MAX, LOG), habits={"gives": {LOG: MIN}}),
    Case("12 V, display for min", habits={"gives": {MIN: D}}),
    Case("12 V, display only", captures=(D,)),
    Case("12 V, display and recorder", captures=(D, LOG)),
    Case("12 V, display and min", captures=(D, MIN)),
    Case("12 V, no accessory", has_accessory=False, habits={"slips": 0.005}),
    Case("24 V, careful", system_V=24),
    Case("24 V, coarse meter, slips 1 %", system_V=24, habits={"slips": 0.01, "decimals": 1}),
    Case("24 V, lost contact 1 %", system_V=24, habits={"misses": 0.01}),
    Case("24 V, no accessory, recorder", system_V=24, has_accessory=False, captures=(D, MIN, LOG)),
    Case("electric, 12 V", has_crank=False, habits={"slips": 0.005}),
    Case("electric, 24 V, no accessory", system_V=24, has_crank=False, has_accessory=False),
)


@dataclass
class Tally:
    """What was counted over the vehicles of a case."""

    vehicles: int = 0
    unsafe: list = field(default_factory=list)
    broken: list = field(default_factory=list)
    fit: int = 0
    found: int = 0
    shares: list = field(default_factory=list)
    readings: list = field(default_factory=list)
    when_fit: list = field(default_factory=list)
    named: list = field(default_factory=list)
    seconds: float = 0.0


def examine(case: Case, count: int, seed: int) -> Tally:
    setup = Setup(
        system_V=case.system_V,
        meter=meter(case.meter),
        captures=frozenset(case.captures),
        has_crank=case.has_crank,
        has_accessory=case.has_accessory,
    )
    tally = Tally()
    began = time.perf_counter()
    for number in range(count):
        rng = random.Random(f"{case.name} {seed + number}")
        vehicle = make_vehicle(rng, system_V=case.system_V, has_crank=case.has_crank, has_accessory=case.has_accessory)
        outcome = drive(Technician(vehicle, setup, **case.habits), declare=(seed + number) % 3 == 0)
        tally.vehicles += 1
        tally.unsafe += [(seed + number, said, outcome.lines) for said in outcome.unsafe]
        tally.broken += outcome.broken
        if vehicle.has_fit_pair():
            tally.fit += 1
            tally.found += outcome.found
            if len(vehicle.wires) >= 6:
                tally.when_fit.append(outcome.readings / (5 * len(vehicle.wires)))
        if len(vehicle.wires) >= 6:
            tally.readings.append(outcome.readings)
            tally.shares.append(outcome.readings / (5 * len(vehicle.wires)))
        for wire in outcome.result.wires:
            if wire.belief.readings and wire.role is not Role.UNKNOWN:
                tally.named.append((wire.probability, str(wire.role) == vehicle.wires[wire.name].role))
    tally.seconds = time.perf_counter() - began
    return tally


def mean(values: list) -> float:
    return sum(values) / len(values) if values else float("nan")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    only = sys.argv[3] if len(sys.argv) > 3 else ""
    named, leaks, broken, totals = [], [], defaultdict(int), []
    print(f"{'case':38} unsafe  broken  found/fit      readings  of the table  where fit   s")
    for case in CASES:
        if only not in case.name:
            continue
        tally = examine(case, count, seed)
        named += tally.named
        totals.append(tally)
        leaks += [(case.name, *leak) for leak in tally.unsafe]
        for said in tally.broken:
            broken[said.split(":")[0]] += 1
        share = tally.found / tally.fit if tally.fit else 0.0
        print(
            f"{case.name:38} {len(tally.unsafe):6}  {len(tally.broken):6}  {tally.found:4}/{tally.fit:4} {share:4.0%}"
            f"  {mean(tally.readings):8.1f}"
            f"  {mean(tally.shares):11.1%}  {mean(tally.when_fit):8.1%}  {tally.seconds:5.0f}",
            flush=True,
        )
    print(f"{sum(t.vehicles for t in totals)} vehicles, {len(leaks)} unsafe choices; broken promises: {dict(broken)}")
    print("probability as said, how many wires named, how many rightly:")
    for low, high in pairwise(BINS):
        inside = [(p, right) for p, right in named if low <= p < high]
        if inside:
            said, true = mean([p for p, _ in inside]), mean([right for _, right in inside])
            print(f"  {low:.2f}-{min(high, 1):.2f}  {len(inside):6}  said {said:.3f}  right {true:.3f}")
    for name, number, said, lines in leaks[:12]:
        print(f"\n{name}, seed {number}: {said}")
        wire = said.split(":")[0].split()[1]
        print("   " + "\n   ".join(line for line in lines if line.split(",")[0] == wire))


if __name__ == "__main__":
    main()
