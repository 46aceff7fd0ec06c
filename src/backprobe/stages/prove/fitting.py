"""The delays under which a wiring explains the reports best.

Both delays are taken from the reports themselves: every distance between a change of the level and a report of the
same direction is a candidate; candidates that several changes share are tried first, in all combinations.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import product
from statistics import median

from backprobe.evidence.key_turn import BODY_KEYS
from backprobe.stages.prove.debounce import Delays, due_from
from backprobe.stages.prove.matching import Match, Span, match
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.wirings import Change, Wiring, changes_of

TRIED = 3  # delays of each direction that are tried in combination
TOGETHER_S = 6.0
EARLY_S = 6.0  # the hand writes a turn down late, or the known clock is a little off
SENSED_S = 30.0  # a unit that senses the start takes up to this long
SLOW_ON_S = 120.0
SLOW_OFF_S = 1800.0
CLOCK_S = 60.0  # an unknown clock may be this far out; more is tried as a belief of its own
# costs [nats], our own estimate
TOO_SLOW = 4.0
SLOWER = 3.0
TOO_EARLY = 10.0  # no unit reports a turn before it happens
FITTED = 0.5
COST_DIGITS = 6  # logarithms differ in the last place between builds of Python
UNSEEN = 5.0  # a wake that nobody saw, a unit that is never off and was never seen on
TIMER = 3.0
CLOCK_OFF = 1.0
UNKNOWN_U_S = 2.0  # of a clock that only the turns tell
MARGIN_S = 1.5  # beyond the limit by this much; more where only common practice says what is too late
USUAL_MARGIN_S = 2.5


@dataclass(frozen=True, slots=True)
class Fit:
    """A wiring with its best delays: the cost [nats], the level before the script, and the match."""

    wiring: Wiring
    delays: Delays
    cost: float
    level: bool
    match: Match
    patterns: frozenset[PatternId]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Case:
    """One wiring under one script: the level before it, its changes, and what was observed."""

    wiring: Wiring
    script: Script
    span: Span
    timing: Timing
    level: bool
    changes: tuple[Change, ...]

    @property
    def on_most_s(self) -> float:
        """The longest on-delay that needs no excuse; that of an inverted input is the key's off."""
        if PatternId.INVERTED in self.wiring.patterns:
            return self.timing.off_limit_s
        sensed = PatternId.SENSED_NOT_WIRED in self.wiring.patterns
        return max(SENSED_S, self.timing.on_limit_s) if sensed else self.timing.on_limit_s

    def match(self, delays: Delays) -> Match:
        """The reports for what is due under these delays."""
        due = tuple(due_from(self.changes, delays, level=self.level))
        return match(due, self.span, level=self.level, noise=self.wiring.noise)


def fit(wiring: Wiring, script: Script, *, span: Span, timing: Timing, clock_u_s: float | None) -> Fit:
    """The best fit of one wiring; `clock_u_s` is how well the reports' clock was set right, None where it was not."""
    level, changes = changes_of(wiring, script)
    if not level and span.observed.state_at(span.start_s):  # somebody had just turned the key off
        before = Change(on=False, lo_s=span.start_s - SLOW_ON_S, hi_s=span.start_s, row=0)
        level, changes = True, (before, *changes)
    case = _Case(wiring=wiring, script=script, span=span, timing=timing, level=level, changes=changes)
    tries = [
        _tried(case, on=on, usual_s=usual_s, limit_s=limit_s, known=clock_u_s is not None) or (usual_s, limit_s)
        for on, usual_s, limit_s in (
            (True, timing.usual_on_s, timing.on_limit_s),
            (False, timing.usual_off_s, timing.off_limit_s),
        )
    ]
    fits = [_fitted(case, _delays(case, on_s, off_s=off_s, u_s=clock_u_s)) for on_s, off_s in product(*tries)]
    return min(fits, key=lambda each: each.cost)


def _fitted(case: _Case, delays: Delays) -> Fit:
    """The fit under given delays, once more under what its own matches say of them."""
    found = case.match(delays)
    better = _refined(found, delays)
    if better != delays:
        again = case.match(better)
        if again.cost <= found.cost:
            found, delays = again, better
    late = _is_late(found, delays, timing=case.timing)
    cost = case.wiring.cost + found.cost + _delay_cost(case, delays, found=found, late=late)
    cost += UNSEEN if _is_unseen(case, found) else 0.0
    patterns = case.wiring.patterns
    if late and not case.wiring.noise and PatternId.INVERTED not in patterns:
        patterns |= {PatternId.FOLLOWS_DOOR_OR_TIMER}
    return Fit(case.wiring, delays, round(cost, COST_DIGITS), case.level, found, patterns)


def _is_unseen(case: _Case, found: Match) -> bool:
    """Whether nobody has seen what the wiring is about: a unit woken by the body, or on while nothing is off."""
    if PatternId.BODY_WAKE in case.wiring.patterns:
        return not any(due.on and case.script.rows[due.row].turn.key in BODY_KEYS for due, _ in found.pairs)
    return PatternId.NEVER_OFF in case.wiring.patterns and not case.span.observed.seen_on_s


def _tried(case: _Case, *, on: bool, usual_s: float, limit_s: float, known: bool) -> tuple[float, ...]:
    """The delays worth trying for one direction, the most shared first; none where nothing is seen."""
    early_s = EARLY_S if known else CLOCK_S
    late_s = SLOW_ON_S if on else SLOW_OFF_S
    found = sorted(_distances(case, on=on, usual_s=usual_s, limit_s=limit_s))
    inside = [each for each in found if -early_s <= each <= late_s]
    shared: list[tuple[int, float, float]] = []
    for index, first in enumerate(inside):
        cluster = inside[index : bisect_right(inside, first + TOGETHER_S)]
        middle = median(cluster)
        shared.append((-len(cluster), abs(middle - usual_s), middle))
    best: list[float] = []
    for _, _, middle in sorted(shared):
        if len(best) < TRIED and all(abs(middle - other) > TOGETHER_S / 2 for other in best):
            best.append(middle)
    return tuple(best)


def _distances(case: _Case, *, on: bool, usual_s: float, limit_s: float) -> Iterator[float]:
    edges, _ = case.span.by_direction[on]
    for change in case.changes:
        if change.on is not on or change.lo_s != change.hi_s:
            continue
        for edge in edges:
            yield min(max(usual_s, edge.lo_s - change.lo_s), edge.hi_s - change.lo_s)
            if not edge.exact:  # any delay between two reports will do: the longest healthy one as well
                yield min(max(limit_s, edge.lo_s - change.lo_s), edge.hi_s - change.lo_s)


def _delays(case: _Case, on_s: float, *, off_s: float, u_s: float | None) -> Delays:
    """The delays with what of them must be the clock, where that is not known: an on that comes too early or late."""
    if u_s is not None:
        return Delays(on_s=on_s, off_s=off_s, clock_most_s=u_s)
    clock_s = on_s - case.timing.usual_on_s
    unlikely = not -EARLY_S / 2 <= on_s <= case.on_most_s
    most_s = max(0.0, clock_s) + UNKNOWN_U_S
    return Delays(on_s=on_s, off_s=off_s, clock_s=clock_s if unlikely else 0.0, clock_most_s=most_s)


def _refined(found: Match, delays: Delays) -> Delays:
    """The delays that the matched events have in the middle."""
    means = {}
    for on in (True, False):
        own = [
            edge.hi_s - due.bare_s for due, edge in found.pairs if due.on is on and edge.exact and due.lo_s == due.hi_s
        ]
        means[on] = median(own) if own else delays.of(on)
    return replace(delays, on_s=means[True], off_s=means[False])


def _is_late(found: Match, delays: Delays, *, timing: Timing) -> bool:
    """Whether off surely came later than a healthy unit's, whatever part of the delay is the clock's."""
    offs = [edge.lo_s - due.bare_s for due, edge in found.pairs if not due.on and due.row and due.lo_s == due.hi_s]
    if not offs:
        return False
    margin_s = MARGIN_S if timing.from_sheet else USUAL_MARGIN_S
    return min(median(offs), delays.off_s) - delays.clock_most_s > timing.off_limit_s + margin_s


def _delay_cost(case: _Case, delays: Delays, *, found: Match, late: bool) -> float:
    """What the delays themselves cost: each that is fitted, those that no healthy unit has, a clock that is out.

    A delay is free to be chosen, so the first event that it explains says little: the wider the choice, the less.
    """
    cost = 0.0
    limit_s = case.timing.off_limit_s
    on_s, off_s = delays.on_s - delays.clock_s, delays.off_s - delays.clock_s
    if any(due.on for due, _ in found.pairs):
        most_s = case.on_most_s
        cost += FITTED + (TOO_SLOW + SLOWER * math.log(on_s / most_s) if on_s > most_s else 0.0)
        cost += TOO_EARLY if on_s < -EARLY_S / 2 else 0.0
    if any(not due.on and due.row for due, _ in found.pairs):
        slow = late or (PatternId.INVERTED in case.wiring.patterns and off_s > limit_s)
        cost += FITTED + (TIMER + math.log(max(1.0, off_s / limit_s)) if slow else 0.0)
        cost += TOO_EARLY if off_s < -EARLY_S / 2 else 0.0
    if delays.clock_s:
        cost += CLOCK_OFF + min(6.0, abs(delays.clock_s) / 30)
    return cost
