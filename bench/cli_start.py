"""How long the command line takes to its first answer, beside a Python that starts and does nothing.

Run: python bench/cli_start.py
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

DEMO = Path(__file__).resolve().parents[1] / "demo" / "linden-yard" / "truck-12" / "readings.csv"
ENTRY = "import sys; from backprobe.cli.main import main; sys.exit(main())"
RUNS = {
    "python that does nothing": ["-c", "pass"],
    "backprobe --version": ["-c", ENTRY, "--version"],
    "backprobe --help": ["-c", ENTRY, "--help"],
    "backprobe probe (demo table)": ["-c", ENTRY, "probe", str(DEMO), "--system", "12"],
}
TIMES = 9


def main() -> None:
    """Print the median of several runs each, taken in turn so that the machine's load meets all alike."""
    taken: dict[str, list[float]] = {name: [] for name in RUNS}
    for _ in range(TIMES):
        for name, words in RUNS.items():
            start = time.perf_counter()
            subprocess.run([sys.executable, *words], check=False, capture_output=True)
            taken[name].append(time.perf_counter() - start)
    bare = statistics.median(taken["python that does nothing"])
    for name, times in taken.items():
        middle = statistics.median(times)
        print(f"{name:30} {middle * 1000:6.0f} ms  {middle / bare:4.1f} ×  (aim 300 ms)")


if __name__ == "__main__":
    main()
