"""How long a receiver's log of three hours takes, beside two readers of NMEA 0183 that only read.

    .venv/bin/python bench/reception.py [--log FILE] [--large-mb 100]

Without a log three hours of an invented receiver are used, one moment a second. Each figure is the best of three runs.
With --large-mb the log is repeated to that size, read as a stream, and the most memory that Python held is printed.
"""

from __future__ import annotations

import argparse
import io
import itertools
import sys
import tracemalloc
from collections.abc import Callable, Iterator
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

import pynmea2
import pynmeagps
from tests.samples.receiver_world import World, log_lines

from backprobe.formats.nmea_0183 import NmeaReader
from backprobe.stages.mount.reception.answer import answer_of
from backprobe.stages.mount.reception.listen import reception_of

RUNS = 3


def best_s(run: Callable[[], int]) -> tuple[float, int]:
    """The shortest of three runs, and what it counted."""
    times, count = [], 0
    for _ in range(RUNS):
        start = perf_counter()
        count = run()
        times.append(perf_counter() - start)
    return min(times), count


def judged(lines: list[str]) -> int:
    """All of it: read, judged, in the form of JSON."""
    answer = answer_of(reception_of(lines, file="log"))
    answer.as_json()
    return answer.log.sentences


def only_read(lines: list[str]) -> int:
    """Read into moments and nothing more."""
    reader = NmeaReader("log")
    for _ in reader.moments(lines):
        pass
    return reader.tally.sentences


def by_pynmeagps(raw: bytes) -> int:
    """Read by pynmeagps."""
    reader = pynmeagps.NMEAReader(io.BytesIO(raw), quitonerror=0, validate=1)
    return sum(1 for _, parsed in reader if parsed is not None)


def by_pynmea2(lines: list[str]) -> int:
    """Read by pynmea2."""
    good = 0
    for line in lines:
        try:
            pynmea2.parse(line, check=True)
            good += 1
        except pynmea2.ParseError:
            continue
    return good


def large(lines: list[str], megabytes: int) -> None:
    """A log of many megabytes as a stream."""
    size = sum(len(line) + 1 for line in lines)
    times = max(1, round(megabytes * 1e6 / size))
    stream: Iterator[str] = itertools.chain.from_iterable(itertools.repeat(lines, times))
    tracemalloc.start()
    log = reception_of(stream, file="large")
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    print(f"{times * size / 1e6:.0f} MB as a stream: {log.epochs:,} moments, at most {peak / 1e6:.1f} MB held")


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--log")
    parser.add_argument("--large-mb", type=int, default=0)
    chosen = parser.parse_args()
    if chosen.log:
        raw = Path(chosen.log).read_bytes()
    else:
        raw = "\r\n".join(log_lines(World(seed=1, minutes=180, step_s=1))).encode("ascii")
    lines = raw.decode("latin-1").splitlines()
    print(f"{len(raw) / 1e6:.2f} MB, {len(lines):,} lines")
    ours_s, _ = best_s(lambda: judged(lines))
    runs: tuple[tuple[str, Callable[[], int]], ...] = (
        ("read and judged", lambda: judged(lines)),
        ("read into moments", lambda: only_read(lines)),
        ("pynmeagps, read only", lambda: by_pynmeagps(raw)),
        ("pynmea2, read only", lambda: by_pynmea2(lines)),
    )
    for name, run in runs:
        seconds, count = best_s(run)
        print(f"{name.ljust(22)} {seconds:.2f} s, {count:,} good sentences, {seconds / ours_s:.1f} × ours")
    if chosen.large_mb:
        large(lines, chosen.large_mb)


if __name__ == "__main__":
    main()
