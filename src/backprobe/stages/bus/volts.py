"""The supply as the vehicle's own computers report it: its extremes, its pace, and what it did in each crank."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import median

PLAUSIBLE_V = (3.0, 36.0)  # beyond this no vehicle's computer reports a supply: common practice, no source
BEFORE_S = 10.0  # the level before a crank is the highest reported within this time
RECENT_S = 90.0
MOST_RECENT = 20_000
MOST_STEPS = 4_096
SYSTEM_24_V = 18.0  # a supply that was ever higher is that of a 24 V system: ISO 16750-2's highest for 12 V
EARLY_S = 0.6  # the starter pulls the supply down so long before the speed is reported (our own model)
FALL_V = 0.3  # a fall by so much from one report to the next, 12 V system (common practice, no source)


@dataclass(frozen=True, slots=True)
class InCrank:
    """What was reported while the starter turned; None where nothing was. `rest_V` is the level before [V, s]."""

    start_s: float
    lowest_V: float | None
    lowest_s: float | None
    rest_V: float | None
    samples: int
    step_s: float | None


@dataclass(slots=True)
class VoltTrack:
    """What the supply has shown so far; samples of several nodes are one row, each with its sender."""

    samples: int = 0
    implausible: int = 0
    first_V: float = 0.0
    first_s: float = 0.0
    lowest_V: float = float("inf")
    lowest_s: float = 0.0
    highest_V: float = float("-inf")
    running_V: tuple[float, float] | None = None  # lowest and highest while the engine ran
    recent: deque[tuple[float, int, float]] = field(default_factory=deque)
    _steps: list[float] = field(default_factory=list)
    _stride: int = 1

    def take(self, time_s: float, volts: float, *, node: int = 0, running: bool = False) -> None:
        """Take in the next report; what no vehicle shows is counted and left out."""
        if not PLAUSIBLE_V[0] <= volts <= PLAUSIBLE_V[1]:
            self.implausible += 1
            return
        if not self.samples:
            self.first_V, self.first_s = volts, time_s
        else:
            self._step(time_s - self.recent[-1][0])
        self.samples += 1
        if volts < self.lowest_V:
            self.lowest_V, self.lowest_s = volts, time_s
        self.highest_V = max(self.highest_V, volts)
        if running:
            low, high = self.running_V or (volts, volts)
            self.running_V = min(low, volts), max(high, volts)
        self.recent.append((time_s, node, volts))
        while len(self.recent) > MOST_RECENT or time_s - self.recent[0][0] > RECENT_S:
            self.recent.popleft()

    def _step(self, step_s: float) -> None:
        if self.samples % self._stride == 0:
            self._steps.append(step_s)
        if len(self._steps) > MOST_STEPS:
            self._steps = self._steps[::2]
            self._stride *= 2

    @property
    def step_s(self) -> float | None:
        """The median time between two reports of any node [s]; None with fewer than two."""
        return round(median(self._steps), 6) if self._steps else None

    @property
    def system_V(self) -> int:
        """12 or 24, told from the highest level reported."""
        return 24 if self.highest_V > SYSTEM_24_V else 12

    def in_crank(self, start_s: float, end_s: float, *, stood_s: float) -> InCrank:
        """What was reported from `start_s` to `end_s`.

        The crank began earlier, though not before the engine was seen standing, where the supply had fallen already.
        """
        begun_s = self._fell_s(start_s, stood_s=stood_s)
        begun_s = start_s if begun_s is None else begun_s
        held = [(time_s, volts) for time_s, _, volts in self.recent if begun_s <= time_s <= end_s]
        before = [volts for time_s, _, volts in self.recent if begun_s - BEFORE_S <= time_s < begun_s]
        lowest = min(held, key=lambda sample: sample[1], default=(None, None))
        times = [time_s for time_s, _ in held]
        step_s = median(b - a for a, b in pairwise(times)) if len(times) > 1 else self.step_s
        return InCrank(begun_s, lowest[1], lowest[0], max(before, default=None), len(held), step_s)

    def _fell_s(self, start_s: float, *, stood_s: float) -> float | None:
        """When a node reported its supply to have fallen, shortly before the engine was reported to turn."""
        last: dict[int, float] = {}
        fell: float | None = None
        least = FALL_V * self.system_V / 12
        for time_s, node, volts in self.recent:
            if time_s >= start_s:
                break
            near = time_s >= start_s - EARLY_S and time_s >= stood_s - EARLY_S
            if near and fell is None and node in last and last[node] - volts >= least:
                fell = time_s
            last[node] = volts
        return fell
