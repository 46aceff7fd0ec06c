"""Each turn of the starter and each stop of the engine, from the engine speed alone, sample by sample.

The key's crank cannot be seen on a bus; that the engine turns can. A crank begins where a standing engine turns. It
ends where its speed has left the starter's for good, or where it stands again.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from statistics import median

from backprobe.stages.bus.despike import Despiker
from backprobe.stages.probe.recording.engine_speed import RUNS_RPM, TURNS_RPM

ABSENT_S = 2.0  # no engine speed for so long: what the engine did meanwhile is not known
STOOD_S = 0.5  # an engine that is running down jerks: it counts as standing after so long
CATCHES = 1.5  # times the starter's speed: from here on the engine turns by itself (common practice, no source)
LEAST_PEAK_RPM = 60.0  # a jerk is no crank (common practice, no source)
HOLDS_S = 1.0  # an engine that runs for so long was started
LONGEST_CRANK_S = 60.0
MOST_SAMPLES = 20_000
MOST_EVENTS = 1_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One turn of the starter [s]: it stood at `stood_s` at the latest; `started` is None where the log breaks off."""

    stood_s: float
    start_s: float
    end_s: float
    started: bool | None
    starter_rpm: float


@dataclass(slots=True)
class EngineTrack:
    """What an engine's speed has shown so far; `state` is 'stands', 'turns', 'runs', or '' where it is not known."""

    state: str = ""
    samples: int = 0
    first_s: float = 0.0
    last_s: float = 0.0
    highest_rpm: float = 0.0
    highest_s: float = 0.0
    attempts: list[Attempt] = field(default_factory=list)
    stops_s: list[float] = field(default_factory=list)
    appeared_s: list[float] = field(default_factory=list)  # where speed was reported again after an absence
    ran_when_heard_s: list[float] = field(default_factory=list)  # where it ran when it was reported again
    _stood_s: float = 0.0
    _since_s: float = 0.0
    _ran_s: float | None = None
    _turned: list[tuple[float, float]] = field(default_factory=list)
    _despiker: Despiker = field(default_factory=Despiker)

    def take(self, time_s: float, rpm: float) -> None:
        """Take in the next sample; times never fall."""
        if not self.samples or time_s - self.last_s > ABSENT_S:
            self._came(time_s)
        if rpm > self.highest_rpm:
            self.highest_rpm, self.highest_s = rpm, time_s
        self.samples += 1
        self.last_s = time_s
        for sample_s, value in self._despiker.take(time_s, rpm):
            self._step(sample_s, value)

    def _step(self, time_s: float, rpm: float) -> None:
        if rpm < TURNS_RPM:
            self._stands(time_s)
        elif self.state == "runs":
            self._goes_on(time_s)
        elif self.state == "turns" or self.state == "" or time_s - self._since_s >= STOOD_S:
            self._turns(time_s, rpm)

    @property
    def ran_at_start(self) -> bool:
        """Whether it ran when it was first heard."""
        return bool(self.ran_when_heard_s) and self.ran_when_heard_s[0] == self.first_s

    def finish(self) -> None:
        """The log ends here."""
        for sample_s, value in self._despiker.rest():
            self._step(sample_s, value)
        if self.state == "turns":
            self._close(self.last_s, started=None)
        elif self._ran_s is not None:
            self._close(self.last_s, started=True)

    def _came(self, time_s: float) -> None:
        if self.samples:
            self.finish()
        else:
            self.first_s = time_s
        self._keep(self.appeared_s, time_s)
        self.state, self._stood_s, self._since_s = "", time_s, time_s

    def _stands(self, time_s: float) -> None:
        if self.state == "turns":
            self._close(time_s, started=False)
        elif self.state == "runs":
            if self._ran_s is not None:
                self._close(time_s, started=False)
            self._keep(self.stops_s, time_s)
        if self.state != "stands":
            self.state, self._since_s = "stands", time_s
        self._stood_s = time_s

    def _turns(self, time_s: float, rpm: float) -> None:
        if self.state == "" and rpm >= RUNS_RPM:  # it ran before anybody listened
            self.state = "runs"
            self._keep(self.ran_when_heard_s, time_s)
            return
        self.state = "turns"
        self._turned.append((time_s, rpm))
        if rpm >= RUNS_RPM:
            self.state, self._ran_s = "runs", time_s
        elif time_s - self._turned[0][0] > LONGEST_CRANK_S or len(self._turned) > MOST_SAMPLES:
            self._turned.clear()  # no starter turns for so long
            self.state = "runs"

    def _goes_on(self, time_s: float) -> None:
        if self._ran_s is not None and time_s - self._ran_s >= HOLDS_S:
            self._close(time_s, started=True)

    def _close(self, time_s: float, *, started: bool | None) -> None:
        turned = self._turned
        slow = [rpm for _, rpm in turned if rpm < RUNS_RPM] or [TURNS_RPM]
        starter_rpm = median(slow)
        ran_s = self._ran_s
        end_s = time_s if ran_s is None else _left(turned, CATCHES * starter_rpm)
        self._turned, self._ran_s = [], None
        if max(rpm for _, rpm in turned) < LEAST_PEAK_RPM:
            return
        between = turned[0][1] >= RUNS_RPM  # it was cranked between two samples: no sooner than it last stood
        attempt = Attempt(
            stood_s=self._stood_s,
            start_s=self._stood_s if between else turned[0][0],
            end_s=end_s,
            started=started,
            starter_rpm=starter_rpm,
        )
        if len(self.attempts) < MOST_EVENTS:
            self.attempts.append(attempt)

    @staticmethod
    def _keep(events: list[float], time_s: float) -> None:
        if len(events) < MOST_EVENTS:
            events.append(time_s)


def _left(turned: list[tuple[float, float]], rpm: float) -> float:
    """The time of the first sample after which the speed stays above `rpm`."""
    end_s = turned[-1][0]
    for time_s, value in reversed(turned):
        if value <= rpm:
            break
        end_s = time_s
    return end_s
