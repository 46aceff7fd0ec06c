"""A quantity against time for a picture, held in few buckets however long the log is."""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.drawings.trace import Point

MOST_POINTS = 4_096


@dataclass(slots=True)
class EnvelopeTrack:
    """The lowest and highest value of each stretch of time; stretches double when there are too many."""

    step_s: float = 0.01
    points: list[Point] = field(default_factory=list)

    def take(self, time_s: float, value: float) -> None:
        """Take in the next value; times never fall.

        >>> track = EnvelopeTrack(step_s=1.0)
        >>> for time_s, value in ((0.1, 3.0), (0.2, 1.0), (1.5, 2.0)):
        ...     track.take(time_s, value)
        >>> track.points
        [(0.1, 1.0, 3.0), (1.5, 2.0, 2.0)]
        """
        points = self.points
        if points and int(points[-1][0] / self.step_s) == int(time_s / self.step_s):
            first_s, low, high = points[-1]
            points[-1] = (first_s, min(low, value), max(high, value))
            return
        points.append((time_s, value, value))
        while len(self.points) > MOST_POINTS:
            self._halve()

    def _halve(self) -> None:
        self.step_s *= 2
        merged: list[Point] = []
        for point in self.points:
            if merged and int(merged[-1][0] / self.step_s) == int(point[0] / self.step_s):
                first_s, low, high = merged[-1]
                merged[-1] = (first_s, min(low, point[1]), max(high, point[2]))
            else:
                merged.append(point)
        self.points = merged
