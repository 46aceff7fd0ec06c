"""How fast a recorder wrote its rows, and whether its clock went on while it did."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import fsum
from statistics import median

MOST_STEPS = 8192
STANDS_ROWS = 5  # so many rows of one time, and four times as many as is usual: the clock stood still
STANDS_TIMES = 4
LONGEST_RUN = 1000  # longer runs of rows at one time are counted as this long
UNKNOWN_S = 1.0  # where the clock never goes on


@dataclass(slots=True)
class Pace:
    """The steps between rows, taken in block by block in memory that does not grow.

    `steps` are up to 8,192 steps spread evenly over the recording, `widest_s` is the largest of all. `runs` counts
    the runs of rows that share one time by their length, `gained_s` how far the clock went on after them; `run` is
    the length of the last one, which has not ended.
    """

    steps: list[float] = field(default_factory=list)
    stride: int = 1
    seen: int = 0
    widest_s: float = 0.0
    last_s: float = 0.0
    runs: dict[int, int] = field(default_factory=dict)
    gained_s: dict[int, float] = field(default_factory=dict)
    run: int = 0
    longest: int = 0
    longest_at_s: float = 0.0

    def add(self, times: list[float], steps: list[float]) -> None:
        """Take in the times of a block, which never fall, and the step before each row, 0 before the very first."""
        self._sample(steps)
        widest_s = max(steps)
        self.widest_s = max(self.widest_s, widest_s)
        if self.run == 1 and min(steps) > 0:  # the clock goes on with every row
            self._end_runs(1, len(steps), gained_s=fsum(steps))
        else:
            self._count(steps)
        self.last_s = times[-1]

    def _sample(self, steps: list[float]) -> None:
        start = -self.seen % self.stride if self.run else 1  # the step before the very first row is none
        self.steps.extend(steps[start :: self.stride])
        self.seen += len(steps) if self.run else len(steps) - 1
        while len(self.steps) > MOST_STEPS:
            self.steps = self.steps[::2]
            self.stride *= 2

    def _count(self, steps: list[float]) -> None:
        now_s = self.last_s
        for step in steps:
            if step > 0 and self.run:
                self._end_runs(min(self.run, LONGEST_RUN), 1, gained_s=step)
                self.run = 0
            now_s += step
            self.run += 1
            if self.run > self.longest:
                self.longest, self.longest_at_s = self.run, now_s

    def _end_runs(self, length: int, count: int, *, gained_s: float) -> None:
        self.runs[length] = self.runs.get(length, 0) + count
        self.gained_s[length] = self.gained_s.get(length, 0.0) + gained_s

    @property
    def usual_run(self) -> int:
        """How many rows share one time, in the median."""
        every: int = sum(self.runs.values())
        so_far = 0
        for length in sorted(self.runs):
            so_far += self.runs[length]
            if 2 * so_far >= every:
                return length
        return max(1, self.run)

    @property
    def stands(self) -> bool:
        """Whether the clock stood still while rows went on."""
        usual = self.usual_run
        return usual > 1 or self.longest >= max(STANDS_ROWS, STANDS_TIMES * usual)

    @property
    def interval_s(self) -> float:
        """The median step of a clock that goes on; of one that stands, the seconds a row where it does go on."""
        if not self.stands:
            return round(median(self.steps), 9) if self.steps else 0.0
        lengths = [length for length in self.runs if length <= 2 * self.usual_run]
        rows: int = sum(length * self.runs[length] for length in lengths)
        return round(fsum(self.gained_s[length] for length in lengths) / rows, 9) if rows else UNKNOWN_S
