"""Every row of the script with what the unit made of it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from backprobe.evidence.key_turn import IGNITION_KEYS
from backprobe.formats.instants import written_value
from backprobe.stages.prove.alignment import Aligned
from backprobe.stages.prove.delays import reported_turns
from backprobe.stages.prove.matching import spread_s
from backprobe.stages.prove.observed import Edge
from backprobe.stages.prove.script import Row, Script
from backprobe.stages.prove.setup import Timing


class TurnState(StrEnum):
    """What became of a row: as expected, surely not reported, or not to be told."""

    MATCHED = "matched"
    MISSING = "missing"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Outcome:
    """A row with the unit's report of it and its state."""

    row: Row
    edge: Edge | None
    state: TurnState

    def as_json(self) -> dict[str, object]:
        """The row as answered: times as they were written."""
        return {
            "t": written_value(self.row.turn.written),
            "key": str(self.row.turn.key),
            "expected": str(self.row.expected),
            "reported_t": None if self.edge is None else written_value(self.edge.report.written),
            "state": str(self.state),
        }


def false_edges(belief: Aligned, script: Script) -> tuple[Edge, ...]:
    """The unit's ignition events within the script for which no key was turned, in the order of time.

    An off after a first row that says off is none, nor is what a restart makes the unit say again.
    """
    found = belief.fits[0].match
    odd = [edge for due, edge in found.pairs if script.rows[due.row].on is not due.on and _is_odd(due.row, edge)]
    odd += found.unexplained
    inside = [edge for edge in odd if not edge.restated and edge.lo_s <= script.last_s]
    return tuple(sorted(inside, key=lambda edge: edge.hi_s))


def _is_odd(row: int, edge: Edge) -> bool:
    return bool(row) or edge.on


def outcomes(belief: Aligned, script: Script, *, timing: Timing, unknown: frozenset[int]) -> tuple[Outcome, ...]:
    """Every row's outcome; the turns of rows `unknown` are open where they were not reported."""
    reported = reported_turns(belief, script)
    contradicted = set(_contradicted(belief, script))
    found: list[Outcome] = []
    for index, row in enumerate(script.rows):
        if row.on is None:
            found.append(Outcome(row, None, TurnState.OPEN if index in contradicted else TurnState.MATCHED))
        elif index in reported:
            found.append(Outcome(row, reported[index], TurnState.MATCHED))
        else:
            missing = index not in unknown and _is_missing(
                index, belief, script=script, timing=timing, reported=reported
            )
            found.append(Outcome(row, None, TurnState.MISSING if missing else TurnState.OPEN))
    return tuple(found)


def _contradicted(belief: Aligned, script: Script) -> Iterator[int]:
    """The rows after which the unit said the opposite of where the key then stood."""
    causes = {id_of(edge): due.row for due, edge in belief.fits[0].match.pairs}
    for edge in false_edges(belief, script):
        before = [i for i, row in enumerate(script.rows) if row.time_s <= edge.hi_s]
        index = causes.get(id_of(edge), before[-1] if before else 0)
        if edge.on is not (script.rows[index].position in IGNITION_KEYS):
            yield index


def id_of(edge: Edge) -> tuple[bool, float, float]:
    """What tells one edge from another."""
    return edge.on, edge.lo_s, edge.hi_s


def _is_missing(index: int, belief: Aligned, *, script: Script, timing: Timing, reported: Mapping[int, Edge]) -> bool:
    """Whether a turn was surely not reported.

    It is missing only if its state was held longer than the largest plausible delay, the unit was heard before it
    and after that delay and still said the opposite, did not restart in between, and had reported the opposite turn
    before. In every other case nobody can say.
    """
    row, observed = script.rows[index], belief.span.observed
    longest_s = longest_plausible_s(belief, timing, on=bool(row.on))
    known_by_s = row.time_s + longest_s
    ends_s = script.next_turn_s(index)
    if ends_s <= known_by_s or not observed.alive(-math.inf, row.time_s):
        return False
    first_s = next((time_s for time_s in observed.times_s if time_s > known_by_s), math.inf)
    if math.isinf(first_s) or first_s > ends_s or observed.restarted(row.time_s - 1, first_s):
        return False
    if observed.state_at(first_s) is row.on:
        return False
    before = [i for i in script.turns if i < index]
    return before[-1] in reported if before else observed.state_at(row.time_s) is not row.on


def longest_plausible_s(belief: Aligned, timing: Timing, *, on: bool) -> float:
    """The longest time after a turn at which a report of it can still come, in the script's time [s]."""
    fitted_s = belief.fits[0].delays.of(on)
    limit_s = timing.on_limit_s if on else timing.off_limit_s
    interval_s = 0.0 if belief.span.observed.has_events else timing.interval_s
    return max(limit_s, fitted_s + 2 * spread_s(fitted_s)) + interval_s
