"""SEM almanacs: bare figures in a fixed order, angles in half turns (semicircles), inclination from 0.30 of them on.

The order is that which public readers of the form follow (from memory, held to a broadcast ephemeris in the tests): a
count and a title, week and time; then for each satellite its number, its vehicle's number, accuracy, three lines of
three figures (e, inclination, rate of the node; √a, node, perigee; mean anomaly and clock), health and configuration.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import islice

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.orbits import Elements, Orbits
from backprobe.formats.navigation_text import ALMANAC_GOOD_FOR_S, LAST_WEEK, Passed, figure, oddity, week_note
from backprobe.physics.gps_time import WEEK_S, full_week

WHAT = "a SEM almanac"
MIDDLE_INCLINATION = 0.30
MOST_LINES = 10_000  # of an almanac of 63 satellites there are some 600
SHAPE = (1, 1, 1, 3, 3, 3, 1, 1)  # how many figures stand in each line of a satellite


def is_sem(first_lines: Sequence[str]) -> bool:
    """Whether a file that begins so is a SEM almanac: a count and a title, then two whole figures."""
    told = [line for line in first_lines if line.strip()][:2]
    if len(told) < 2:
        return False
    count, _, title = told[0].strip().partition(" ")
    week = told[1].split()
    return count.isdigit() and not _figures(title) and len(week) == 2 and None not in map(figure, week)


def read_sem(lines: Iterable[str], *, file: str, near_week: int) -> Orbits:
    """The orbits in an almanac; weeks modulo 1024 are taken as those nearest to `near_week` (counted from 1980).

    A satellite whose lines are torn is passed over; reading goes on at the next line that can begin one. Raises
    UnreadableError where not one satellite can be read.
    """
    told = [(number, line) for number, line in enumerate(islice(lines, MOST_LINES), 1) if line.strip()]
    if len(told) < 2:
        raise UnreadableError(Place(file), f"{WHAT}: a count and a title, then week and time; the file ends before")
    number, line = told[1]
    week_text = [figure(text) for text in line.split()]
    if len(week_text) != 2 or week_text[0] is None or week_text[1] is None or not 0 <= week_text[0] <= LAST_WEEK:
        raise UnreadableError(Place(file, number, line), "the week and the seconds in it, as '107 405504'")
    written = int(week_text[0])
    week = full_week(written, near_week)
    passed, sets = Passed(file), []
    at = 2
    while at < len(told):
        rows = [_figures(text) for _, text in told[at : at + len(SHAPE)]]
        fault = _fault(rows)
        elements = None if fault else _elements(rows, toa_s=week * WEEK_S + week_text[1])
        fault = fault or (None if elements is None else oddity(elements))
        if elements is not None and fault is None:
            sets.append(elements)
            at += len(SHAPE)
        else:
            passed.over(*told[at], expected=fault or WHAT)
            at = _next_start(told, at + 1)
    passed.refuse_empty(sets, WHAT)
    return Orbits(
        file=file,
        kind="SEM almanac",
        good_for_s=ALMANAC_GOOD_FOR_S,
        sets=tuple(sets),
        skipped=tuple(passed.first),
        skipped_count=passed.count,
        notes=week_note({written: week}),
    )


def _next_start(told: Sequence[tuple[int, str]], at: int) -> int:
    """The next line at which a whole satellite stands; the end where there is none."""
    while at < len(told) and _fault([_figures(text) for _, text in told[at : at + len(SHAPE)]]) is not None:
        at += 1
    return at


def _figures(text: str) -> list[float]:
    """The figures of a line; none where anything else stands in it."""
    found = [figure(part) for part in text.split()]
    return [] if None in found else [each for each in found if each is not None]


def _fault(rows: Sequence[Sequence[float]]) -> str | None:
    """What keeps these lines from being those of one satellite."""
    shape = tuple(len(row) for row in rows)
    if shape != SHAPE:
        return f"eight lines for a satellite with {', '.join(str(each) for each in SHAPE)} figures in them"
    if rows[0][0] != int(rows[0][0]) or not 1 <= rows[0][0] <= 63:
        return "a satellite's number from 1 to 63"
    return None


def _elements(rows: Sequence[Sequence[float]], *, toa_s: float) -> Elements:
    (prn,), _, _, (e, inclination, omega_dot), (sqrt_a, omega0, omega), (m0, *_), (health,), _ = rows
    return Elements(
        id=f"G{int(prn):02d}",
        toe_s=toa_s,
        sqrt_a=sqrt_a,
        e=e,
        i0_rad=(MIDDLE_INCLINATION + inclination) * math.pi,
        omega0_rad=omega0 * math.pi,
        omega_rad=omega * math.pi,
        m0_rad=m0 * math.pi,
        omega_dot_rad_s=omega_dot * math.pi,
        healthy=health == 0,
    )
