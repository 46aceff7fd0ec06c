"""How long it takes to hear a bus log out, against python-can's bare reading; and how much memory a long one takes.

Run: python bench/bus_log.py [--large MB]. Prints for each form the processor time of `listen_to` (reading and judging),
of python-can reading the same frames and doing nothing with them, and the ratio. The log is the real truck's where
../shared/data is there, else an invented one's of about 30,000 frames. Aim: within 1 s. python-can does not read the
aligned text: its row has the peer's time for the same frames as candump -l. With --large an aligned text of so many MB
is made and heard in a process of its own, and so is one of a hundredth of it; both peaks are printed.
"""

from __future__ import annotations

import argparse
import resource
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter, process_time

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "src"), str(ROOT)]

REAL = ROOT.parent / "shared" / "data" / "can" / "truck-key-cycle.candump.txt"
RUNS = 9
MOST_S = 1.0
MOST_GROWTH = 1.1
FORMS = ("txt", "log", "asc", "trc", "blf")


def invented() -> list[str]:
    """About 35,000 frames of an invented truck as aligned text."""
    from tests.samples.bus_frames import aligned, key_cycle

    return list(aligned(key_cycle(off_s=240.0, end_s=300.0)))


def write_forms(folder: Path) -> dict[str, Path]:
    """The same frames in each form."""
    import can

    from backprobe.formats.bus_faults import BusFaults
    from backprobe.formats.candump_text import read_candump

    lines = REAL.read_text(encoding="ascii").splitlines() if REAL.is_file() else invented()
    paths = {form: folder / f"log.{form}" for form in FORMS}
    paths["txt"].write_text("\n".join(lines) + "\n", encoding="ascii")
    frames = list(read_candump(lines, faults=BusFaults("log")))
    for form in FORMS[1:]:
        with can.Logger(str(paths[form])) as logger:
            for f in frames:
                logger(can.Message(timestamp=f.time_s + 1.7e9, arbitration_id=f.can_id, data=f.data, channel=1))
    return paths


def best_s(work: Callable[[], object]) -> float:
    """The best seconds of processor time of several runs: other work on the machine does not count."""
    best = float("inf")
    for _ in range(RUNS):
        started = process_time()
        work()
        best = min(best, process_time() - started)
    return best


def bare(path: Path) -> int:
    """python-can reads the log and does nothing with it."""
    import can

    return sum(1 for _ in can.LogReader(str(path)))


def speed() -> bool:
    """Print the table of seconds; False where the aim was missed."""
    from backprobe.cases.bus import listen_to

    kept = True
    print("form    frames  ours s  python-can s  ratio")
    with tempfile.TemporaryDirectory() as folder:
        paths = write_forms(Path(folder))
        for form, path in paths.items():
            peer = paths["log"] if form == "txt" else path
            frames = listen_to(path).heard.frames
            ours_s, peer_s = best_s(lambda path=path: listen_to(path)), best_s(lambda peer=peer: bare(peer))
            kept &= ours_s <= MOST_S
            print(f"{form:<6}{frames:>8,}  {ours_s:>6.3f}  {peer_s:>12.3f}  {ours_s / peer_s:>5.2f}")
        command = [sys.executable, "-c", "import sys; from backprobe.cli.main import main; sys.exit(main())"]
        started = perf_counter()
        subprocess.run(
            [*command, "bus", str(paths["txt"]), "--json"], capture_output=True, cwd=ROOT / "src", check=False
        )
        print(f"the whole command on the aligned text, start of Python included: {perf_counter() - started:.3f} s")
    return kept


def peak_MB() -> float:
    """The most memory that this process has held; what Linux says of it, else what the system's own count says.

    The count of getrusage takes over what the parent held, so it is the second choice.
    """
    status = Path("/proc/self/status")
    lines = status.read_text(encoding="ascii").splitlines() if status.is_file() else []
    held = next((int(line.split()[1]) for line in lines if line.startswith("VmHWM")), None)
    return (held or resource.getrusage(resource.RUSAGE_SELF).ru_maxrss) / 1000


def memory(large_MB: int) -> bool:
    """Print the peak of memory of a long log and of a hundredth of it; False where it grows."""
    lines = REAL.read_text(encoding="ascii").splitlines() if REAL.is_file() else invented()
    peaks: list[tuple[float, float, float]] = []
    with tempfile.TemporaryDirectory() as folder:
        for size_MB in (large_MB / 100, large_MB):
            path = Path(folder, "long.txt")
            with path.open("w", encoding="ascii") as file:
                turn, written = 0, 0
                while written < size_MB * 1e6:
                    text = "\n".join(f" ({float(line[2:12]) + 70 * turn:010.6f}{line[12:]}" for line in lines) + "\n"
                    turn, written = turn + 1, written + len(text)
                    file.write(text)
            started = perf_counter()
            out = subprocess.run(
                [sys.executable, __file__, "--hear", str(path)], capture_output=True, text=True, check=True
            ).stdout
            peaks.append((written / 1e6, float(out), perf_counter() - started))
    for size_MB, peak_MB, seconds in peaks:
        print(f"{size_MB:>8.1f} MB heard in {seconds:>7.1f} s with a peak of {peak_MB:.1f} MB")
    return peaks[1][1] <= MOST_GROWTH * peaks[0][1]


def main() -> int:
    """Print the tables; exit 1 where an aim was missed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--large", type=int, metavar="MB", default=0)
    parser.add_argument("--hear", metavar="FILE", help=argparse.SUPPRESS)
    chosen = parser.parse_args()
    if chosen.hear:
        from backprobe.cases.bus import listen_to

        listen_to(Path(chosen.hear))
        print(peak_MB())
        return 0
    kept = speed()
    if chosen.large:
        kept &= memory(chosen.large)
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
