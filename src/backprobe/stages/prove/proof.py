"""What script and reports of one unit came to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.findings import Verdict, worst
from backprobe.formats.instants import written_value
from backprobe.stages.prove.alignment import Alignment
from backprobe.stages.prove.delays import Estimate
from backprobe.stages.prove.lights import LightOutcome
from backprobe.stages.prove.observed import Edge
from backprobe.stages.prove.parked import Parked
from backprobe.stages.prove.patterns import INCOMPLETE, Pattern, PatternId
from backprobe.stages.prove.position import Position
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.supply import Supply
from backprobe.stages.prove.turns import Outcome, TurnState

FIX_DIGITS = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """Everything that can be said of one job's unit; `alignment` is None where it has no reports of its own."""

    unit_id: str
    script: Script
    timing: Timing
    alignment: Alignment | None
    turns: tuple[Outcome, ...]
    false_events: tuple[Edge, ...]
    patterns: tuple[Pattern, ...]
    on_delay: Estimate | None
    off_delay: Estimate | None
    clock_offset: Estimate | None
    position: Position
    first_fix_s: float | None
    supply: Supply
    lights: tuple[LightOutcome, ...]
    parked: Parked
    left_out: Mapping[str, int]

    @property
    def other_unit(self) -> str | None:
        """The unit that fits better, where serials were swapped."""
        return next((pattern.other_unit for pattern in self.patterns if pattern.other_unit), None)

    def names(self, pattern: PatternId) -> bool:
        """Whether a pattern is named."""
        return any(each.id is pattern for each in self.patterns)

    @property
    def verdict(self) -> Verdict:
        """Fails with a fault, a missing turn or a wrong position; open where evidence is missing."""
        parts = [self.position.verdict, *self._turn_verdicts(), *self._pattern_verdicts()]
        if self.supply.verdict is not Verdict.OPEN:  # a supply nobody measured is no part of this proof
            parts.append(self.supply.verdict)
        if self.parked.lost:
            parts.append(Verdict.FAILS)
        return worst(parts)

    def _turn_verdicts(self) -> list[Verdict]:
        states = {outcome.state for outcome in self.turns}
        found = [Verdict.HOLDS]
        if TurnState.MISSING in states:
            found.append(Verdict.FAILS)
        if TurnState.OPEN in states or self.false_events or self.on_delay is None or self.off_delay is None:
            found.append(Verdict.OPEN)
        if self.on_delay is not None and self.on_delay.value_s > self.timing.on_limit_s + self.on_delay.u_s:
            # without the server's times nobody can tell a late unit from a clock that is ahead
            found.append(Verdict.OPEN if self.clock_offset is None else Verdict.FAILS)
        return found

    def _pattern_verdicts(self) -> list[Verdict]:
        return [Verdict.OPEN if pattern.id in INCOMPLETE else Verdict.FAILS for pattern in self.patterns]

    def as_json(self) -> dict[str, object]:
        """The proof as plain JSON values; times as they were written, figures rounded to their declared digits."""
        fix_s = self.first_fix_s
        answer: dict[str, object] = {
            "ok": True,
            "verdict": str(self.verdict),
            "unit_id": self.unit_id,
            "on_delay_s": _estimate(self.on_delay),
            "off_delay_s": _estimate(self.off_delay),
            "clock_offset_s": _estimate(self.clock_offset),
            "turns": [outcome.as_json() for outcome in self.turns],
            "false_events": [_event(edge) for edge in self.false_events],
            "patterns": [pattern.as_json() for pattern in self.patterns],
            "position": self.position.as_json(),
            "first_fix_s": None if fix_s is None else round(fix_s, FIX_DIGITS),
            "supply": self.supply.as_json(),
            "lights": [light.as_json() for light in self.lights],
            "parked": self.parked.as_json(),
            "left_out": dict(self.left_out),
        }
        return answer if self.other_unit is None else {**answer, "other_unit": self.other_unit}


def _estimate(estimate: Estimate | None) -> dict[str, float] | None:
    return None if estimate is None else estimate.as_json()


def _event(edge: Edge) -> dict[str, object]:
    return {"t": written_value(edge.report.written), "event": "ignition_on" if edge.on else "ignition_off"}
