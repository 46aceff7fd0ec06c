"""A day at a place, minute by minute: which satellites are used under each heading, and what fix they give."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from backprobe.physics.dop import planar
from backprobe.physics.geodesy import Vector
from backprobe.physics.tracks import Seen
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, ROWS

HEADING_STEP_DEG = 15
NO_FIX = math.inf
_PER_CELL = 1 / CELL_DEG
_A_HAIR = 1e-7  # of a cell: sines differ in the last place between Pythons, and 45° is 45° in both


@dataclass(frozen=True, slots=True)
class Quality:
    """What a fix must be: four satellites at least, and PDOP and HDOP (where it is given) at most."""

    pdop_most: float
    hdop_most: float | None = None


@dataclass(slots=True)
class Day:
    """What every minute of a day gave under one heading: HDOP (infinite without a fix), satellites used, fixes good."""

    heading_deg: float
    hdop: list[float] = field(default_factory=list)
    used: list[int] = field(default_factory=list)
    good: int = 0


@dataclass(frozen=True, slots=True)
class Cell:
    """A satellite at one minute: the mask's row and the column that it would have with the front to the north."""

    row: int
    column: int
    direction: Vector


def placed(sky: Sequence[Sequence[Seen]]) -> list[list[Cell]]:
    """The satellites of each minute with their cells; done once for all places and headings."""
    return [[_cell(east, north, up=up) for _, east, north, up in minute] for minute in sky]


def _cell(east: float, north: float, *, up: float) -> Cell:
    row = int(math.degrees(math.asin(min(up, 1.0))) * _PER_CELL + _A_HAIR)
    column = int(math.degrees(math.atan2(east, north)) % 360.0 * _PER_CELL + _A_HAIR)
    return Cell(min(row, ROWS - 1), column % COLUMNS, (east, north, up))


def days(
    sky: Sequence[Sequence[Cell]], usable: Sequence[Sequence[bool]], *, headings: Sequence[float], quality: Quality
) -> list[Day]:
    """The day under each heading [degrees]; a heading between the mask's columns is taken to the nearest of them.

    Headings under which the same satellites are used in a minute share the work on it.
    """
    found = [Day(heading) for heading in headings]
    bits = _bits(usable, headings)
    everyone = (1 << len(headings)) - 1
    members: dict[int, tuple[Day, ...]] = {}
    for minute in sky:
        groups: list[tuple[int, tuple[Vector, ...]]] = [(everyone, ())]
        for cell in minute:
            under = bits[cell.row][cell.column]
            if under:
                groups = _parted(groups, under, direction=cell.direction)
        for heads, used in groups:
            if heads not in members:
                members[heads] = tuple(day for k, day in enumerate(found) if heads >> k & 1)
            _note(members[heads], used, quality=quality)
    return found


def _bits(usable: Sequence[Sequence[bool]], headings: Sequence[float]) -> list[list[int]]:
    """For each cell of the sky with the front to the north, the headings under which it is usable, as bits."""
    turns = [round(heading * _PER_CELL) % COLUMNS for heading in headings]
    return [[_under(row, column, turns=turns) for column in range(COLUMNS)] for row in usable]


def _under(row: Sequence[bool], column: int, *, turns: Sequence[int]) -> int:
    return sum(1 << k for k, turn in enumerate(turns) if row[(column - turn) % COLUMNS])


def _parted(
    groups: list[tuple[int, tuple[Vector, ...]]], under: int, *, direction: Vector
) -> list[tuple[int, tuple[Vector, ...]]]:
    """The groups of headings, each parted into those under which one more satellite is used and the others."""
    parted = []
    for heads, used in groups:
        inside = heads & under
        if inside:
            parted.append((inside, (*used, direction)))
        if inside != heads:
            parted.append((heads & ~under, used))
    return parted


def _note(members: tuple[Day, ...], used: tuple[Vector, ...], *, quality: Quality) -> None:
    """Write one minute into the days of the headings that share it."""
    squares = planar(list(used))
    hdop, good = NO_FIX, 0
    if squares is not None:
        hdop = math.sqrt(squares[0])
        within = quality.hdop_most is None or hdop <= quality.hdop_most
        good = int(within and squares[0] + squares[1] <= quality.pdop_most**2)
    for day in members:
        day.hdop.append(hdop)
        day.used.append(len(used))
        day.good += good
