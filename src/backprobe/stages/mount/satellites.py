"""Which of a file's sets are reckoned with: those of healthy satellites, and of two that share one orbit only one.

Files that are put together from many receivers hold now and then a set under the number of another satellite. Two
satellites are never in one place: of such twins the one that has more sets in the file is believed.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass

from backprobe.evidence.orbits import Elements, Orbits


@dataclass(frozen=True, slots=True)
class Satellites:
    """The sets of each satellite that is reckoned with, by its id in their order, and what was left out."""

    sets: dict[str, tuple[Elements, ...]]
    sick: tuple[str, ...]
    twins: tuple[tuple[str, str], ...]  # left out, and as which it stands there


def satellites_of(orbits: Orbits) -> Satellites:
    """The satellites of a file; one with a sick set is left out altogether."""
    sick = {each.id for each in orbits.sets if not each.healthy}
    sets = [each for each in orbits.sets if each.id not in sick]
    counts = Counter(each.id for each in sets)
    alike: defaultdict[tuple[float, ...], set[str]] = defaultdict(set)
    for each in sets:
        alike[_orbit(each)].add(each.id)
    believed = {orbit: min(ids, key=lambda name: (-counts[name], name)) for orbit, ids in alike.items()}
    kept: dict[str, list[Elements]] = {name: [] for name in sorted(counts)}
    twins = []
    for each in sets:
        own = believed[_orbit(each)]
        if own == each.id:
            kept[each.id].append(each)
        else:
            twins.append((each.id, own))
    return Satellites(
        {name: tuple(own) for name, own in kept.items() if own}, tuple(sorted(sick)), tuple(sorted(set(twins)))
    )


def _orbit(each: Elements) -> tuple[float, ...]:
    return each.toe_s, each.m0_rad, each.omega0_rad, each.omega_rad, each.e


def left_out_notes(found: Satellites) -> tuple[str, ...]:
    """What was left out, in words."""
    notes = []
    if found.sick:
        notes.append(f"Left out as not healthy: {', '.join(found.sick)}.")
    notes += [
        f"{twin} stands in the file with the orbit of {own}, and was left out there." for twin, own in found.twins
    ]
    return tuple(notes)
