"""How long the wiring of a whole job takes to judge: order, crank, fuses, ground, joints, inputs, mount.

Run: python bench/join.py. Prints the best and the median of several runs in milliseconds for a job whose crank of
10 s is sampled each millisecond; the aim is 100 ms in CPython.
"""

from __future__ import annotations

import sys
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from dataclasses import replace

from tests.samples.wiring import GOOD

from backprobe.stages.join.join import join_findings
from backprobe.stages.join.level_waveform import level_waveform

RUNS = 15
AIM_MS = 100.0


def timed_ms(case) -> float:
    before = perf_counter()
    join_findings(case)
    return (perf_counter() - before) * 1000.0


def main() -> int:
    cases = {
        "level I, 1 s": GOOD,
        "level II, 10 s, the unit resets": replace(GOOD, supply_crank=level_waveform("II", system_V=12)),
    }
    slow = False
    for name, case in cases.items():
        runs = [timed_ms(case) for _ in range(RUNS)]
        print(f"{name:34} best {min(runs):6.1f} ms  median {median(runs):6.1f} ms  aim {AIM_MS:g} ms")
        slow = slow or min(runs) > AIM_MS
    return 1 if slow else 0


if __name__ == "__main__":
    raise SystemExit(main())
