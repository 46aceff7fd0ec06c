"""How fast and in how much memory a recording is read: one pass over 4 channels against numpy.loadtxt of the same file.

Run: python bench/recording_rows.py [ROWS …]. Prints, for each number of rows, seconds of both, their ratio (the
product's aim for reading and judging together is at most 8), the seconds of a window near the end of the file, and
the peak memory of each in a process of its own. Each figure is the best of several runs.
"""

from __future__ import annotations

import argparse
import resource
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

RUNS = 5
HEADER = "time_s,battery,Red 12,Blue 3,Green"


def write_recording(path: Path, rows: int) -> None:
    """An invented recording at 1 kHz: rest, a crank in the middle, charging; two wires follow, one is dead."""
    start, end = rows // 2, rows // 2 + min(1500, rows // 4)
    with path.open("w", encoding="ascii") as file:
        file.write(HEADER + "\n")
        for i in range(rows):
            noise = (i * 7919 % 61) / 1000
            level = 12.6 if i < start else 10.1 + (i % 180) / 200 if i < end else 14.1
            file.write(f"{i / 1000:.3f},{level + noise:.3f},{level - 0.08 + noise:.3f},{noise:.3f},{level / 2:.3f}\n")


def read_ours(path: Path) -> None:
    """The product's one pass."""
    from backprobe.files.open import text_lines
    from backprobe.formats.recording_csv import read_recording

    recording = read_recording(text_lines(path), file=path.name, thresholds_V=(10.0, 9.0, 8.0))
    assert len(recording.channels) == 4


def read_peer(path: Path) -> None:
    """The peer: the figures alone, whole in memory, no header, no judging."""
    import numpy

    assert numpy.loadtxt(path, delimiter=",", skiprows=1).shape[1] == 5


def window_s(path: Path) -> float:
    """Seconds for a window of 2 s near the end of the file."""
    from backprobe.files.open import text_lines
    from backprobe.formats.recording_csv import read_recording

    recording = read_recording(text_lines(path), file=path.name, thresholds_V=())
    started = perf_counter()
    assert len(recording.fine(recording.end_s - 2.0, recording.end_s).time_s) > 1000
    return perf_counter() - started


READERS = {"ours": read_ours, "peer": read_peer}


def best_s(path: Path) -> dict[str, float]:
    """The best of several runs of each reader, taken in turn so that both meet the same machine.

    The first run of each is not counted: it loads the modules.
    """
    best = dict.fromkeys(READERS, float("inf"))
    for run in range(1 + RUNS):
        for reader, read in READERS.items():
            started = perf_counter()
            read(path)
            best[reader] = min(best[reader], perf_counter() - started) if run else best[reader]
    return best


def peak_MB(reader: str, path: Path) -> float:
    """The most memory a fresh process needs that reads the file once."""
    command = [sys.executable, __file__, "--child", reader, "--file", str(path)]
    return float(subprocess.run(command, check=True, capture_output=True, text=True).stdout)


def main() -> None:
    """Print the table, or, as a child, the peak memory of one reading."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rows", nargs="*", type=int, default=[100_000, 1_000_000])
    parser.add_argument("--child", choices=READERS, help=argparse.SUPPRESS)
    parser.add_argument("--file", type=Path, help=argparse.SUPPRESS)
    asked = parser.parse_args()
    if asked.child:
        READERS[asked.child](asked.file)
        print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)  # Linux counts in KiB
        return
    print("      rows   ours s  loadtxt s  ratio  window s  ours MB  loadtxt MB")
    with tempfile.TemporaryDirectory() as folder:
        paths = {rows: Path(folder, f"{rows}.csv") for rows in asked.rows}
        for rows, path in paths.items():
            write_recording(path, rows)
        # before this process grows: a child's peak begins with that of its parent
        peaks = {rows: (peak_MB("ours", path), peak_MB("peer", path)) for rows, path in paths.items()}
        for rows, path in paths.items():
            best = best_s(path)
            ratio = best["ours"] / best["peer"]
            seconds = f"{best['ours']:>7.3f}  {best['peer']:>9.3f}  {ratio:>5.2f}  {window_s(path):>8.3f}"
            print(f"{rows:>10,}  {seconds}  {peaks[rows][0]:>7.1f}  {peaks[rows][1]:>10.1f}")


if __name__ == "__main__":
    main()
