"""A navigation file of any kind that is read: RINEX 2 and 3, YUMA, SEM; told by how it begins."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain, islice

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.orbits import Orbits
from backprobe.formats.rinex_nav import is_rinex, read_rinex_nav
from backprobe.formats.sem import is_sem, read_sem
from backprobe.formats.yuma import is_yuma, read_yuma

LOOKED_AT = 20  # lines
EXPECTED = "a RINEX 2 or 3 navigation file, a YUMA almanac or a SEM almanac"


def read_navigation(lines: Iterable[str], *, file: str, near_week: int) -> Orbits:
    """The orbits in a file; `near_week` is the GPS week, counted from 1980, that the prediction is about.

    Raises UnreadableError, saying what was expected, for files of other kinds and those with nothing to read in them.
    """
    every = iter(lines)
    first = list(islice(every, LOOKED_AT))
    whole = chain(first, every)
    if is_rinex(first):
        return read_rinex_nav(whole, file=file)
    if is_yuma(first):
        return read_yuma(whole, file=file, near_week=near_week)
    if is_sem(first):
        return read_sem(whole, file=file, near_week=near_week)
    shown = next((line for line in first if line.strip()), None)
    raise UnreadableError(Place(file, 1, shown), EXPECTED)
