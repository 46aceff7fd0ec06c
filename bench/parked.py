"""How long a parked vehicle takes to judge, with uncertainty: answer, findings, JSON, curve.

Run: python bench/parked.py. Prints the best of several runs in milliseconds; the aim is 100 ms in CPython.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

from tests.samples.parked import parked

from backprobe.drawings.parked_curve import parked_curve
from backprobe.stages.parked.answer import parked_json
from backprobe.stages.parked.curve import curve_of
from backprobe.stages.parked.parked import parked_answer

RUNS = 20
AIM_MS = 100.0


def judged() -> object:
    """The whole answer with its findings."""
    return parked_json(parked_answer(parked()))


def drawn() -> object:
    """The curve."""
    content = curve_of(parked_answer(parked()))
    return None if content is None else parked_curve(content)


def best_ms(work: Callable[[], object]) -> float:
    """The best of several runs, in milliseconds."""
    best = float("inf")
    for _ in range(RUNS):
        started = perf_counter()
        work()
        best = min(best, perf_counter() - started)
    return best * 1000.0


def main() -> int:
    """Print the table; 1 where the aim is missed."""
    spent = {work.__name__: best_ms(work) for work in (judged, drawn)}
    for name, ms in spent.items():
        print(f"{name:<10}{ms:>8.2f} ms   {ms / AIM_MS:.3f} of the aim of {AIM_MS:g} ms")
    return 0 if sum(spent.values()) <= AIM_MS else 1


if __name__ == "__main__":
    sys.exit(main())
