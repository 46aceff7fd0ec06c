"""What a technician waits for: `backprobe judge` on the demo job, with and without the record.

    python bench/judge_demo.py [ROUNDS]

Each run is a process of its own, as a terminal starts it, on a folder that was judged before (nothing new to import)
and on a fresh copy; modules are compiled beforehand, as they are from the second run on. The runs take turns, so that a
busy machine slows all alike; medians are shown, and ratios to a Python that starts and does nothing; the processor's
own time is shown beside the clock's, as other work does not lengthen it. Figures hold for one machine only.
"""

import os
import resource
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter

ROOT = Path(__file__).resolve().parents[1]
YARD = ROOT / "demo" / "linden-yard"
MAIN = "import sys; from backprobe.cli.main import main; sys.exit(main())"
IMPORTS = "import backprobe.cli.judge"
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
ENVIRONMENT.pop("PYTHONDONTWRITEBYTECODE", None)


def timed(*words: str) -> tuple[float, float]:
    """What one Python process took by the clock and of the processor [s]; 0 and 1 are answers, all else is a fault."""
    before, used_before = perf_counter(), used_s()
    done = subprocess.run([sys.executable, *words], env=ENVIRONMENT, capture_output=True, check=False)
    took_s = perf_counter() - before
    if done.returncode not in (0, 1) or done.stderr:  # a traceback ends with 1 too
        raise SystemExit(done.stderr.decode())
    return took_s, used_s() - used_before


def used_s() -> float:
    """The processor's time of all processes that were started and have ended [s]."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def copied(to: Path) -> Path:
    """A fresh copy of the yard with truck 07, never judged before."""
    shutil.rmtree(to, ignore_errors=True)
    shutil.copytree(YARD, to, ignore=shutil.ignore_patterns("*journal*", "blobs"))
    return to / "truck-07"


def heaviest(count: int) -> list[str]:
    """The modules that take longest to import on the way to `judge`, themselves alone."""
    command = [sys.executable, "-X", "importtime", "-c", IMPORTS]
    lines = subprocess.run(command, env=ENVIRONMENT, capture_output=True, text=True, check=True).stderr.splitlines()
    parts = [line.removeprefix("import time:").split("|") for line in lines if "|" in line and "self" not in line]
    ranked = sorted(((int(own), name.strip()) for own, _, name in parts), reverse=True)
    return [f"{own / 1000:6.1f} ms  {name}" for own, name in ranked[:count]]


def main() -> int:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 11
    with tempfile.TemporaryDirectory() as name:
        place = Path(name)
        ENVIRONMENT["PYTHONPYCACHEPREFIX"] = str(place / "compiled")
        seen = copied(place / "seen")
        timed("-c", MAIN, "judge", str(seen))
        runs = {
            "python, nothing else": lambda: timed("-c", "pass"),
            "backprobe --version": lambda: timed("-c", MAIN, "--version"),
            "imports of judge": lambda: timed("-c", IMPORTS),
            "judge": lambda: timed("-c", MAIN, "judge", str(seen)),
            "judge, first time": lambda: timed("-c", MAIN, "judge", str(copied(place / "fresh"))),
            "judge --record": lambda: timed("-c", MAIN, "judge", str(seen), "--record", str(place / "out.pdf")),
        }
        for run in runs.values():
            run()
        print("longest to import, each alone:", *heaviest(8), "", sep="\n")
        taken = {label: [] for label in runs}
        for _ in range(rounds):
            for label, run in runs.items():
                taken[label].append(run())
    start_s = median(clock for clock, _ in taken["python, nothing else"])
    print(f"{'':24}{'median':>9}{'fastest':>9}{'processor':>11}   × start")
    for label, times in taken.items():
        clocks = [clock for clock, _ in times]
        middle_s, used = median(clocks), median(used for _, used in times)
        print(
            f"{label:24}{middle_s * 1000:6.0f} ms{min(clocks) * 1000:6.0f} ms{used * 1000:8.0f} ms"
            f"{middle_s / start_s:10.1f}"
        )
    return 0


if __name__ == "__main__":
    sys.exit(main())
