"""The longest stretch of a log in which the antenna did not move.

The log is cut into pieces of half a minute. A piece is at rest where the receiver's speed is that of nobody walking,
or, where no speed is told, where its positions stay together; pieces at rest that follow one another make a stretch.
"""

from __future__ import annotations

import math

from backprobe.evidence.epoch import EpochFix
from backprobe.evidence.reception import Rest
from backprobe.physics.great_circle import EARTH_RADIUS_M
from backprobe.stages.mount.reception.scatter import scatter_of
from backprobe.stages.mount.reception.thinning import Thinned

PIECE_S = 30.0
LEAST_REST_S = 60.0
REST_SPEED_MPS = 0.7  # half a walk: common practice, no source
SPEEDLESS_EXTENT_M = 25.0
ELSEWHERE_M = 100.0  # from the stretch's beginning: farther than positions wander, near metal too
_LONGEST_SILENCE_S = 60.0
_M_PER_DEG = EARTH_RADIUS_M * math.pi / 180


class _Piece:
    """Half a minute of positions, east and north of the stretch's origin."""

    __slots__ = ("end_s", "places", "speeds", "start_s")

    def __init__(self, start_s: float) -> None:
        self.start_s = self.end_s = start_s
        self.places: list[tuple[float, float]] = []
        self.speeds: list[float] = []

    def still(self) -> bool:
        if self.speeds:
            return math.fsum(self.speeds) / len(self.speeds) <= REST_SPEED_MPS
        east_m, north_m = [place[0] for place in self.places], [place[1] for place in self.places]
        return max(max(east_m) - min(east_m), max(north_m) - min(north_m)) <= SPEEDLESS_EXTENT_M


class RestFinder:
    """Takes positions in their order and keeps the longest stretch at rest; memory stays flat."""

    def __init__(self) -> None:
        self._origin: tuple[float, float] | None = None
        self._piece = _Piece(-math.inf)
        self._stretch, self._start_s, self._end_s = Thinned(), 0.0, -math.inf
        self._best: tuple[float, Thinned] = (0.0, Thinned())

    def add(self, time_s: float, fix: EpochFix) -> None:
        """Take in the next position."""
        if time_s - self._piece.start_s >= PIECE_S:
            self._end_piece()
            self._piece = _Piece(time_s)
        origin = self._origin = self._origin or (fix.lat_deg, fix.lon_deg)
        east = (fix.lon_deg - origin[1] + 180.0) % 360.0 - 180.0
        scale = _M_PER_DEG * math.cos(math.radians(origin[0]))
        self._piece.end_s = time_s
        self._piece.places.append((east * scale, (fix.lat_deg - origin[0]) * _M_PER_DEG))
        if fix.speed_mps is not None:
            self._piece.speeds.append(fix.speed_mps)

    def result(self) -> Rest | None:
        """The longest stretch at rest in figures; None where nothing rested for a minute."""
        self._end_piece()
        self._end_stretch()
        duration_s, stretch = self._best
        if duration_s < LEAST_REST_S:
            return None
        scatter = scatter_of(stretch.east_m, stretch.north_m)
        return Rest(
            duration_s=round(duration_s),
            fixes=len(stretch),
            independent_tenths=round(scatter.independent * 10),
            r50_mm=round(scatter.r50_m * 1000),
            r95_mm=round(scatter.r95_m * 1000),
        )

    def _end_piece(self) -> None:
        piece = self._piece
        if not piece.places:
            return
        if not piece.still():
            self._end_stretch()
            return
        if piece.start_s - self._end_s > _LONGEST_SILENCE_S or self._elsewhere(piece):
            self._end_stretch()
        if not len(self._stretch):
            self._start_s = piece.start_s
        for east_m, north_m in piece.places:
            self._stretch.add(east_m, north_m)
        self._end_s = piece.end_s

    def _elsewhere(self, piece: _Piece) -> bool:
        if not len(self._stretch):
            return False
        east_m, north_m = piece.places[0]
        return math.hypot(east_m - self._stretch.east_m[0], north_m - self._stretch.north_m[0]) > ELSEWHERE_M

    def _end_stretch(self) -> None:
        if len(self._stretch) and self._end_s - self._start_s > self._best[0]:
            self._best = (self._end_s - self._start_s, self._stretch)
        self._stretch, self._end_s = Thinned(), -math.inf
