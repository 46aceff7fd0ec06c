"""Where the words of a sky plot stand, so that none hides a mark or another word."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

Point = tuple[float, float]

_GAP = 3.0


@dataclass(frozen=True, slots=True)
class Box:
    """What is taken already: its middle, its width and its height."""

    x: float
    y: float
    width: float
    height: float

    def shared(self, other: Box) -> float:
        """The area that two boxes share."""
        wide = (self.width + other.width) / 2 - abs(self.x - other.x)
        high = (self.height + other.height) / 2 - abs(self.y - other.y)
        return max(wide, 0.0) * max(high, 0.0)


def placed(marks: Sequence[Point], sizes: Sequence[tuple[float, float]], *, mark: float, taken: list[Box]) -> list[Box]:
    """For each of `marks` (half as wide as `mark` says) a box of its size beside it, clear of all others if it can be.

    The places are tried in a fixed order: right, left, above, below, then the corners; `taken` grows with each. A size
    of no width gets a box of no width at the mark.
    """
    taken += [Box(x, y, 2 * mark, 2 * mark) for x, y in marks]
    found = []
    for (x, y), size in zip(marks, sizes, strict=True):
        if size[0] <= 0.0:
            found.append(Box(x, y, 0.0, 0.0))
            continue
        best = min(_around(x, y, mark=mark, size=size), key=lambda box: hidden(box, taken))
        taken.append(best)
        found.append(best)
    return found


def _around(x: float, y: float, *, mark: float, size: tuple[float, float]) -> list[Box]:
    width, height = size
    aside, over = mark + _GAP + width / 2, mark + height / 2
    ways = ((1, 0), (-1, 0), (0, -1), (0, 1), (0.8, -0.8), (-0.8, -0.8), (0.8, 0.8), (-0.8, 0.8))
    return [Box(x + dx * aside, y + dy * over, width, height) for dx, dy in ways]


def hidden(box: Box, taken: Sequence[Box]) -> float:
    """The area of `taken` that a box hides."""
    total = 0.0
    for other in taken:
        total += box.shared(other)
    return round(total, 3)
