"""Make the demo's recording of a crank: an invented truck, a starter and a meter, all out of formulas.

Run ``python builders/build_demo.py``; ``--check`` only says whether the file in demo/ is the one it would write.
"""

from __future__ import annotations

import math
import sys
from dataclasses import dataclass
from pathlib import Path

OUT = Path(__file__).resolve().parents[1] / "demo" / "linden-yard" / "truck-07" / "recordings" / "crank.csv"
STEP_S = 0.004
KEY_ON_S, CRANK_S, STARTED_S, END_S = 1.0, 2.4, 3.3, 6.4


@dataclass(frozen=True)
class Start:
    """A start of an engine: the battery's levels, its dip when the starter bites, compressions, the wires' names."""

    wires: tuple[str, str, str]  # supply, ignition, accessory
    rest_V: float = 12.62
    on_V: float = 12.41
    plateau_V: float = 11.15
    ripple_V: float = 0.22
    trough_V: float = 0.85  # below the plateau
    charging_V: float = 14.05
    ripple_Hz: float = 9.0  # compressions a second: a six-cylinder turned at 180 /min


SEVEN = Start(("X12/4 RD", "X12/9 VT", "X12/6 GY"))


def battery_V(time_s: float, start: Start = SEVEN) -> float:
    """The battery's terminals: rest, key on, inrush trough, plateau with compressions, charging."""
    if time_s < KEY_ON_S:
        return start.rest_V
    if time_s < CRANK_S:
        return start.on_V
    if time_s < STARTED_S:
        since = time_s - CRANK_S
        plateau = start.plateau_V + start.ripple_V * math.cos(2 * math.pi * start.ripple_Hz * since) + 0.25 * since
        trough = start.trough_V * math.exp(-((max(0.0, since - 0.018) / 0.022) ** 2))
        return start.on_V + (plateau - trough - start.on_V) * min(1.0, since / 0.006)
    return start.charging_V - 1.6 * math.exp(-(time_s - STARTED_S) / 0.35)


def noise_V(row: int, wire: int) -> float:
    """A little disturbance without chance: the same on every machine."""
    return 0.012 * math.sin(12.9898 * row + 78.233 * wire)


def row_at(row: int, start: Start = SEVEN) -> str:
    """One line of the recording: battery, supply, ignition and accessory wire."""
    time_s = row * STEP_S
    level = battery_V(time_s, start)
    cranking = CRANK_S <= time_s < STARTED_S
    on = time_s >= KEY_ON_S
    wires = (level, level - 0.03, level - 0.06 if on else 0.02, 0.02 if cranking or not on else level - 0.05)
    return ",".join([f"{time_s:.3f}", *(f"{volts + noise_V(row, i):.3f}" for i, volts in enumerate(wires))])


def text(start: Start = SEVEN) -> str:
    """The whole file."""
    rows = (row_at(row, start) for row in range(round(END_S / STEP_S)))
    return "\n".join([",".join(("time_s", "battery", *start.wires)), *rows]) + "\n"


def main() -> int:
    """Write the file, or with --check compare it."""
    wanted = text()
    if "--check" in sys.argv[1:]:
        current = OUT.is_file() and OUT.read_text(encoding="utf-8") == wanted
        print(f"{OUT.name}: {'current' if current else 'not what builders/build_demo.py would write'}")
        return 0 if current else 1
    OUT.parent.mkdir(parents=True, exist_ok=True)
    OUT.write_text(wanted, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
