"""Positions of a long stretch, thinned evenly so that any length fits."""

from __future__ import annotations

from array import array

MOST = 1024


class Thinned:
    """East and north [m] of at most 1,024 of all the positions added, evenly spread over them."""

    __slots__ = ("_every", "_seen", "east_m", "north_m")

    def __init__(self) -> None:
        self.east_m, self.north_m = array("d"), array("d")
        self._every, self._seen = 1, 0

    def add(self, east_m: float, north_m: float) -> None:
        """Take in the next position."""
        if self._seen % self._every == 0:
            if len(self.east_m) == MOST:
                self.east_m, self.north_m = self.east_m[::2], self.north_m[::2]
                self._every *= 2
            if self._seen % self._every == 0:
                self.east_m.append(east_m)
                self.north_m.append(north_m)
        self._seen += 1

    def __len__(self) -> int:
        """How many positions were added."""
        return self._seen
