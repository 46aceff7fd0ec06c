"""YUMA almanacs: a block of named figures for each satellite, angles in radians.

Names by published almanacs of 1997 to 2020 as quoted in public code (the words differ a little between publishers, so a
name is told by its beginning). The week may be counted modulo 1024.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import chain

from backprobe.evidence.orbits import Elements, Orbits
from backprobe.formats.navigation_text import ALMANAC_GOOD_FOR_S, LAST_WEEK, Passed, figure, oddity, week_note
from backprobe.physics.gps_time import WEEK_S, full_week

WHAT = "a YUMA almanac"
# how a name begins, in small letters without spaces -> what it is
_NAMES = {
    "id": "id",
    "health": "health",
    "eccentricity": "e",
    "timeofapplicability": "toa",
    "orbitalinclination": "i0",
    "rateofrightascen": "omega_dot",
    "sqrt(a)": "sqrt_a",
    "rightascenat": "omega0",
    "argumentofperigee": "omega",
    "meananom": "m0",
    "week": "week",
}
NEEDED = tuple(_NAMES.values())


def is_yuma(first_lines: Sequence[str]) -> bool:
    """Whether a file that begins so is a YUMA almanac."""
    return any(line.startswith("*") and "almanac" in line.casefold() for line in first_lines) or any(
        line.casefold().startswith("eccentricity:") for line in first_lines
    )


def read_yuma(lines: Iterable[str], *, file: str, near_week: int) -> Orbits:
    """The orbits in an almanac; weeks modulo 1024 are taken as those nearest to `near_week` (counted from 1980).

    Raises UnreadableError where not one satellite can be read.
    """
    passed = Passed(file)
    sets: list[Elements] = []
    weeks: dict[int, int] = {}
    block: dict[str, float] = {}
    start, head = 0, ""
    for number, line in enumerate(chain(lines, "*"), 1):
        name, _, value = line.partition(":")
        begins = line.startswith("*") or (name.strip().casefold() == "id" and "id" in block)
        if begins:
            _close(block, (start, head), passed=passed, sets=sets, weeks=weeks, near_week=near_week)
            block, start, head = {}, number, line
        key = _key(name)
        found = figure(value)
        if key is not None and found is not None:
            block[key] = found
    passed.refuse_empty(sets, WHAT)
    return Orbits(
        file=file,
        kind="YUMA almanac",
        good_for_s=ALMANAC_GOOD_FOR_S,
        sets=tuple(sets),
        skipped=tuple(passed.first),
        skipped_count=passed.count,
        notes=week_note(weeks),
    )


def _key(name: str) -> str | None:
    plain = "".join(name.split()).casefold()
    return next((key for begin, key in _NAMES.items() if plain.startswith(begin)), None) if plain else None


def _close(
    block: Mapping[str, float],
    place: tuple[int, str],
    *,
    passed: Passed,
    sets: list[Elements],
    weeks: dict[int, int],
    near_week: int,
) -> None:
    """Take the block that has ended, or count it as passed over."""
    if not block:
        return
    lacking = [name for name in NEEDED if name not in block]
    if lacking:
        passed.over(
            *place, expected=f"a block with all of its figures; of this one {', '.join(lacking)} cannot be read"
        )
        return
    if block["id"] != int(block["id"]) or not 1 <= block["id"] <= 63:
        passed.over(*place, expected="ID: a satellite's number from 1 to 63")
        return
    if not (0 <= block["week"] <= LAST_WEEK and 0 <= block["toa"] <= WEEK_S):
        passed.over(*place, expected=f"a week up to {LAST_WEEK}, and seconds in it up to {WEEK_S}")
        return
    written = int(block["week"])
    week = full_week(written, near_week)
    elements = Elements(
        id=f"G{int(block['id']):02d}",
        toe_s=week * WEEK_S + block["toa"],
        sqrt_a=block["sqrt_a"],
        e=block["e"],
        i0_rad=block["i0"],
        omega0_rad=block["omega0"],
        omega_rad=block["omega"],
        m0_rad=block["m0"],
        omega_dot_rad_s=block["omega_dot"],
        healthy=block["health"] == 0,
    )
    odd = oddity(elements)
    if odd is not None:
        passed.over(*place, expected=odd)
        return
    weeks[written] = week
    sets.append(elements)
