"""What the readers of navigation files share: figures as Fortran writes them, and what was passed over."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.orbits import Elements
from backprobe.physics.gps_time import WEEK_S

MOST_SHOWN = 20
_FIGURE = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[EeDd][+-]?\d{1,3})?", re.ASCII)
# what an orbit of GPS can be; a figure that slid into another column is outside
SQRT_A = (5_000.0, 5_300.0)
MOST_E = 0.1
INCLINATION_RAD = (0.7, 1.2)
ANGLE_RAD = 10.0
SMALL_RAD, SMALL_M, SMALL_RAD_S = 0.01, 20_000.0, 1e-7  # what corrections and rates stay within
LAST_WEEK = 7000  # of the year 2114


def figure(text: str) -> float | None:
    """The figure that stands alone in `text`, with E or D before its power of ten; None for anything else.

    >>> figure(" -0.1228D+03"), figure("5153.579590"), figure("0.12 0.3")
    (-122.8, 5153.57959, None)
    """
    plain = text.strip()
    value = float(plain.upper().replace("D", "E")) if _FIGURE.fullmatch(plain) else math.inf
    return value if math.isfinite(value) else None


def oddity(elements: Elements) -> str | None:
    """Why these can be no elements of a GPS satellite; None where they can."""
    if not SQRT_A[0] <= elements.sqrt_a <= SQRT_A[1]:
        return f"the root of the half axis is {elements.sqrt_a:g}; {SQRT_A[0]:g} to {SQRT_A[1]:g} is expected"
    if not 0 <= elements.e <= MOST_E:
        return f"the eccentricity is {elements.e:g}; 0 to {MOST_E:g} is expected"
    if not INCLINATION_RAD[0] <= elements.i0_rad <= INCLINATION_RAD[1]:
        return (
            f"the inclination is {elements.i0_rad:g} rad; {INCLINATION_RAD[0]:g} to {INCLINATION_RAD[1]:g} is expected"
        )
    angles = (elements.omega0_rad, elements.omega_rad, elements.m0_rad)
    if any(abs(angle) > ANGLE_RAD for angle in angles):
        return "an angle of more than 10 rad; angles within a turn or two are expected"
    if not 0 <= elements.toe_s <= LAST_WEEK * WEEK_S:
        return f"its time is week {elements.toe_s / WEEK_S:.0f}; a week from 0 (1980) to {LAST_WEEK} is expected"
    return None if _small(elements) else "a correction or a rate far larger than any orbit has"


def _small(elements: Elements) -> bool:
    """Whether the small corrections and the rates are small."""
    turns = (elements.cuc_rad, elements.cus_rad, elements.cic_rad, elements.cis_rad)
    rates = (elements.omega_dot_rad_s, elements.i_dot_rad_s, elements.delta_n_rad_s)
    groups = ((turns, SMALL_RAD), ((elements.crc_m, elements.crs_m), SMALL_M), (rates, SMALL_RAD_S))
    return all(abs(value) <= most for values, most in groups for value in values)


@dataclass(slots=True)
class Passed:
    """Collects what was passed over, the first few with their places."""

    file: str
    first: list[Skipped] = field(default_factory=list)
    count: int = 0

    def over(self, line: int, text: str, *, expected: str) -> None:
        """Count a line that was passed over."""
        self.count += 1
        if len(self.first) < MOST_SHOWN:
            self.first.append(Skipped(Place(self.file, line, text), expected))

    def refuse_empty(self, sets: list[Elements], what: str) -> None:
        """Raise UnreadableError where nothing at all could be read, with the first fault."""
        if sets:
            return
        if self.first:
            raise UnreadableError(self.first[0].place, f"{self.first[0].expected}; not one satellite could be read")
        raise UnreadableError(Place(self.file), f"{what} with at least one satellite in it; there is none")


ALMANAC_GOOD_FOR_S = 7 * 86_400.0  # common practice, no source: a new one is taken every week


def week_note(weeks: Mapping[int, int]) -> tuple[str, ...]:
    """A note where a file counts its weeks modulo 1024: which they were taken for.

    >>> week_note({107: 2155})
    ('Week 107 is counted modulo 1024; it was taken as week 2155, the nearest to the day asked for.',)
    """
    return tuple(
        f"Week {written} is counted modulo 1024; it was taken as week {week}, the nearest to the day asked for."
        for written, week in weeks.items()
        if written != week
    )
