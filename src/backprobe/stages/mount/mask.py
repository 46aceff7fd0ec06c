"""The sky as a place in the cab leaves it: what is lost on the way from each direction.

A ray from the unit meets the flat parts that were measured; each takes what its material takes, one after the other.
Where it meets none, what the place says of everything else stands in the way, and the unit's own cover always does.
Edges are sharp here; what bends round them is in `bent`. What metal elsewhere in the cab throws back is left out: it
is heard, but not from where the satellite stands.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.limits.material import Material
from backprobe.limits.materials import MATERIALS

CELL_DEG = 3
ROWS, COLUMNS = 90 // CELL_DEG, 360 // CELL_DEG

Ray = tuple[float, float, float]  # ahead, to the left, up


@dataclass(frozen=True, slots=True)
class Loss:
    """What stands in one direction: the materials met, and what they take together [dB]."""

    materials: tuple[str, ...]
    least_dB: float
    value_dB: float
    most_dB: float


@dataclass(frozen=True, slots=True)
class Mask:
    """The losses by cells of 3° by 3°: `cells[row][column]`, rows from the horizon up, columns from the front
    clockwise.
    """

    cells: tuple[tuple[Loss, ...], ...]

    def turned(self, columns: int) -> Mask:
        """The mask of the same place in a vehicle that was turned clockwise by so many columns."""
        return Mask(tuple(tuple(row[(k - columns) % COLUMNS] for k in range(COLUMNS)) for row in self.cells))


def mask_of(place: MountPlace) -> Mask:
    """The mask of a place."""
    known: dict[tuple[str, ...], Loss] = {}
    rows = []
    for row in range(ROWS):
        up = math.sin(math.radians((row + 0.5) * CELL_DEG))
        flat = math.cos(math.radians((row + 0.5) * CELL_DEG))
        cells = []
        for column in range(COLUMNS):
            turn = math.radians((column + 0.5) * CELL_DEG)
            met = materials_met(place, (flat * math.cos(turn), -flat * math.sin(turn), up))
            if met not in known:
                known[met] = _loss(met)
            cells.append(known[met])
        rows.append(tuple(cells))
    return Mask(tuple(rows))


def materials_met(place: MountPlace, ray: Ray) -> tuple[str, ...]:
    """The materials that stand between the unit and the sky in one direction; 'open' alone counts for nothing."""
    met = [part.material for part in place.parts if is_hit(part, ray)] or [place.elsewhere]
    return tuple(name for name in (*place.cover, *met) if name != "open")


def is_hit(part: Part, ray: Ray) -> bool:
    """Whether a ray from the unit goes through the part."""
    ahead, left, up = ray
    if part.side is Side.ABOVE:
        if up <= 0:
            return False
        reach_mm = part.away_mm / up
        spans = ((part.behind_mm, part.ahead_mm, ahead), (part.right_mm, part.left_mm, left))
        return all(_within(reach_mm * along, low, high=high) for low, high, along in spans)
    sign = 1.0 if part.side in (Side.AHEAD, Side.LEFT) else -1.0
    lengthwise = part.side in (Side.AHEAD, Side.BEHIND)
    out, along = (ahead, left) if lengthwise else (left, ahead)
    nearing = sign * out + up / math.tan(math.radians(part.rake_deg))
    if nearing <= 1e-9:
        return False
    reach_mm = part.away_mm / nearing
    low, high = (part.right_mm, part.left_mm) if lengthwise else (part.behind_mm, part.ahead_mm)
    from_mm = 0.0 if part.from_mm is None else part.from_mm
    high_enough = reach_mm * up >= from_mm and (part.to_mm is None or reach_mm * up <= part.to_mm)
    return high_enough and _within(reach_mm * along, low, high=high)


def _within(at_mm: float, low: float | None, *, high: float | None) -> bool:
    """Whether a point lies between a part's edges, counted one way as `high` and the other way as `low`."""
    return (high is None or at_mm <= high) and (low is None or at_mm >= -low)


def _loss(met: tuple[str, ...]) -> Loss:
    rows = [MATERIALS[name] for name in met]
    return Loss(met, *(math.fsum(each) for each in _columns(rows)))


def _columns(rows: list[Material]) -> Iterator[tuple[float, ...]]:
    yield tuple(row.least_dB for row in rows)
    yield tuple(row.value_dB for row in rows)
    yield tuple(row.most_dB for row in rows)
