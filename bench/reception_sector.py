"""How often the search for a blocked sector is wrong under an open sky, and how often it finds a blocked one.

    .venv/bin/python bench/reception_sector.py [--open 1000] [--blocked 100]

Skies and receivers are invented (tests/samples/receiver_world.py): 20 minutes at rest, read and judged as NMEA logs. A
sector counts as found where its middle is within a third of its width, at least 30°, of the true one.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from tests.samples.receiver_world import World, log_lines

from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sector import Sector, blocked_sectors, satellites_round

SKIES = (("8 satellites, GPS", 8, ("GP",)), ("12, GPS", 12, ("GP",)), ("24, GPS and GLONASS", 24, ("GP", "GL")))


def found(world: World) -> tuple[tuple[Sector, ...], bool]:
    """The sectors found in a world, and whether the log was good enough for 'nothing is blocked'."""
    bins = reception_of(log_lines(world), file="world").bins
    return blocked_sectors(bins), satellites_round(bins) >= 10


def false_alarms(count: int) -> None:
    """Open skies that are called blocked."""
    for name, satellites, systems in SKIES:
        seen = [found(World(seed=seed, satellites=satellites, systems=systems)) for seed in range(count)]
        wrong = sum(bool(sectors) for sectors, _ in seen)
        judged = sum(enough for _, enough in seen)
        share = f"{wrong} of {count} called blocked ({wrong / count:.1%})"
        print(f"open sky, {name}: {share}; enough to say so: {judged / count:.0%}")


def detections(count: int) -> None:
    """Blocked skies, by width and loss."""
    print("found on the right side:".ljust(30), "8 dB    15 dB   25 dB")
    for name, satellites, systems in SKIES:
        for width in (60, 90, 120, 180):
            shares = [
                share_found(count, width, loss=loss, satellites=satellites, systems=systems) for loss in (8, 15, 25)
            ]
            print(f"{name}, {width}° wide".ljust(30), "   ".join(f"{share:4.0%}" for share in shares))


def share_found(count: int, width: int, *, loss: float, satellites: int, systems: tuple[str, ...]) -> float:
    """The share of worlds in which the strongest sector found is the true one."""
    hits = 0
    for seed in range(count):
        start = Random(seed).uniform(0, 360)
        blocked = (start, start + width, 90.0, loss)
        sectors, _ = found(World(seed=1_000_000 + seed, satellites=satellites, systems=systems, blocked=blocked))
        if sectors:
            wide = (sectors[0].to_deg - sectors[0].from_deg) % 360 or 360
            off = abs((sectors[0].from_deg + wide / 2 - start - width / 2 + 180) % 360 - 180)
            hits += off <= max(30.0, width / 3)
    return hits / count


def main() -> None:
    """Print both tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--open", type=int, default=1000)
    parser.add_argument("--blocked", type=int, default=100)
    chosen = parser.parse_args()
    false_alarms(chosen.open)
    detections(chosen.blocked)


if __name__ == "__main__":
    main()
