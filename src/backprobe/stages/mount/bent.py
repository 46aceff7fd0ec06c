"""Losses with what bends round the edges: behind a metal edge a satellite does not fall silent at once.

Each direction gets the least of its own loss and those of directions near it with what the bending costs. The
distance of the edges is taken as 1 m, which is far for a cab: nearer edges let more round (our own model on ITU-R
P.526).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache

from backprobe.physics.geodesy import east_north_up
from backprobe.physics.knife_edge import bending_dB
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, ROWS

EDGE_M = 1.0
REACH_DEG = 15.0  # beyond, more is lost than a fix can spare
_REACH_ROWS = int(REACH_DEG // CELL_DEG)
_DIGITS = 6

Near = tuple[int, int, float]  # the other row, columns to the right, loss [dB]


def bent(losses_dB: Sequence[Sequence[float]]) -> list[list[float]]:
    """The losses of the mask's cells [dB], each with the best way round an edge."""
    return [[_least(losses_dB, row, column=column) for column in range(COLUMNS)] for row in range(ROWS)]


def _least(losses_dB: Sequence[Sequence[float]], row: int, *, column: int) -> float:
    own = losses_dB[row][column]
    near = _near(row)
    if own <= near[0][2]:
        return own
    for other, right, cost in near:
        if cost >= own:
            break
        way = losses_dB[other][(column + right) % COLUMNS] + cost
        if way < own:
            own = way
    return own


@cache
def _near(row: int) -> tuple[Near, ...]:
    """The cells within reach of one in a row, by what the bending costs; near the zenith not every column of them."""
    here = _middle(row, 0)
    found = []
    for other in range(max(0, row - _REACH_ROWS), min(ROWS, row + _REACH_ROWS + 1)):  # no other row is so near
        stride = max(1, round(1 / math.cos(math.radians((other + 0.5) * CELL_DEG))))
        for step in range(-(COLUMNS // 2 // stride), COLUMNS // 2 // stride + 1):
            right = step * stride
            there = _middle(other, right)
            apart = math.acos(min(1.0, math.fsum(a * b for a, b in zip(here, there, strict=True))))
            if (other, right) != (row, 0) and math.degrees(apart) <= REACH_DEG:
                found.append((other, right, round(bending_dB(apart, edge_m=EDGE_M), _DIGITS)))
    return tuple(sorted(found, key=lambda near: (near[2], near[:2])))


def _middle(row: int, column: int) -> tuple[float, float, float]:
    return east_north_up((column + 0.5) * CELL_DEG, (row + 0.5) * CELL_DEG)
