"""How long it takes to read a recording of 4 channels and look it through, against numpy.loadtxt of the same file.

Run: python bench/recording_judged.py [ROWS …]. Prints for each number of rows and rate the seconds of reading, of
looking, of the peer, and the ratio of reading and looking together to the peer (the product's aim: at most 8). The
vehicle is an invented one with a heater, a failed attempt and a start; each figure is the best of several runs.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

RUNS = 3
MOST_RATIO = 8.0
WIRES = ("battery", "constant", "ignition", "accessory")
RATES_HZ = (100, 1000, 10_000)


def write_recording(path: Path, rows: int, *, rate_Hz: int) -> None:
    """The driver turns the key in the middle of the recording."""
    from tests.samples.waveforms import Load, Turn, Vehicle, wire_at

    middle_s = rows / rate_Hz / 2
    vehicle = Vehicle(
        key_on_s=middle_s - 6.0,
        turns=(Turn(start_s=middle_s, fires=False, length_s=1.5), Turn(start_s=middle_s + 4.0)),
        loads=(Load(start_s=middle_s - 5.0, end_s=middle_s - 1.0, amps=90.0),),
        length_s=2 * middle_s,
    )
    with path.open("w", encoding="ascii") as file:
        file.write(",".join(("time_s", *WIRES)) + "\n")
        for row in range(rows):
            time_s = row / rate_Hz
            far = abs(time_s - middle_s) > 20.0
            at_s = middle_s + (20.0 if time_s > middle_s else -20.0) if far else time_s
            noise = (row * 7919 % 61 - 30) / 2000
            volts = [vehicle.battery_at(at_s), *(wire_at(vehicle, wire, time_s=at_s) for wire in WIRES[1:])]
            file.write(f"{time_s:.4f}," + ",".join(f"{each + noise:.3f}" for each in volts) + "\n")


def seconds(work: Callable[[], object]) -> float:
    """How long something takes."""
    started = perf_counter()
    work()
    return perf_counter() - started


def best_s(path: Path) -> tuple[float, float, float]:
    """The best seconds of reading, of looking and of the peer, taken in turn."""
    import numpy

    from backprobe.files.open import text_lines
    from backprobe.formats.recording_csv import read_recording
    from backprobe.limits.lookup import meter
    from backprobe.stages.probe.recording.channels import thresholds_V
    from backprobe.stages.probe.recording.view import look
    from backprobe.stages.probe.setup import Setup

    setup = Setup(system_V=12, meter=meter("service"), cylinders=4)
    best = [float("inf")] * 3
    for _ in range(RUNS):
        started = perf_counter()
        recording = read_recording(text_lines(path), file=path.name, thresholds_V=thresholds_V(setup))
        read_s = perf_counter() - started
        started = perf_counter()
        view = look(recording, setup)
        look_s = perf_counter() - started
        assert [crank.started for crank in view.cranks if crank.sure > 0.5] == [False, True], view.cranks
        peer_s = seconds(lambda: numpy.loadtxt(path, delimiter=",", skiprows=1))
        best = [min(pair) for pair in zip(best, (read_s, look_s, peer_s), strict=True)]
    return best[0], best[1], best[2]


def main() -> int:
    """Print the table; exit 1 where the aim was missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rows", nargs="*", type=int, default=[1_000_000])
    missed = False
    print("      rows  rows/s  read s  look s  loadtxt s  ratio")
    with tempfile.TemporaryDirectory() as folder:
        for rows in parser.parse_args().rows:
            for rate_Hz in RATES_HZ:
                path = Path(folder, f"{rows}-{rate_Hz}.csv")
                write_recording(path, rows, rate_Hz=rate_Hz)
                read_s, look_s, peer_s = best_s(path)
                ratio = (read_s + look_s) / peer_s
                missed |= ratio > MOST_RATIO
                print(f"{rows:>10,}  {rate_Hz:>6}  {read_s:>6.3f}  {look_s:>6.3f}  {peer_s:>9.3f}  {ratio:>5.2f}")
                path.unlink()
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
