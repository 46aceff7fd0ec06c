"""How long the judgement of twelve wires with the next reading takes, beside a bare loop over the same readings.

Run: python bench/probe_next.py
"""

from __future__ import annotations

import statistics
import time

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.limits.lookup import meter
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.wires import judge_wires

SETUP = Setup(system_V=12, meter=meter("basic"))
SHOWN = {Key.OFF: 12.6, Key.ACCESSORY: 12.5, Key.ON: 12.4, Key.CRANK: 10.9, Key.RUNNING: 14.1}
TIMES = 40


def table() -> ReadingsTable:
    """Twelve wires with five readings each; no two alike, and no pair proven, so that the search runs to its end."""
    readings = []
    for wire in range(12):
        for place, (key, volts) in enumerate(SHOWN.items()):
            live = (wire >> (place % 4)) & 1
            shown = f"{volts - 0.03 * wire:.2f}" if live else "0.02"
            capture = Capture.MIN if key is Key.CRANK else Capture.DISPLAY
            readings.append(
                Reading(wire=f"w{wire}", key=key, volts=float(shown), typed=shown, count_V=0.01, capture=capture)
            )
    return ReadingsTable(readings=tuple(readings), wires=tuple(f"w{wire}" for wire in range(12)))


def median_ms(call) -> float:
    """The median time of a call [ms]."""
    taken = []
    for _ in range(TIMES):
        start = time.perf_counter()
        call()
        taken.append((time.perf_counter() - start) * 1000.0)
    return statistics.median(taken)


def main() -> None:
    """Print the figures."""
    found = table()
    bare = median_ms(lambda: [sum(r.volts for r in found.readings if r.wire == w) for w in found.wires])
    judged = median_ms(lambda: judge_wires(found, SETUP))
    print(f"12 wires × 5 readings: judged with next in {judged:.1f} ms (aim 30 ms), {judged / bare:.0f} × a bare loop")
    print(f"next: {judge_wires(found, SETUP).next}")


if __name__ == "__main__":
    main()
