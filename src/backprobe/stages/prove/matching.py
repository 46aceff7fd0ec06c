"""How well what must be reported and what was reported agree, in nats: the less the better.

The figures are our own estimate, no source: an event that came is worth 2 over chance and loses half the square of
its misfit in standard deviations; an event that must be there and is not costs 4 (one event in fifty gets lost)
where the unit was heard at the time, and next to nothing where it was not; an event that nothing explains costs 5.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from backprobe.stages.prove.debounce import Due
from backprobe.stages.prove.observed import Edge, Observed

HIT = -2.0
HIT_BETWEEN = -1.0  # between two reports: says less
MISSED_HEARD = 4.0
MISSED_QUIET = 2.5  # not heard just then, but before and after, and it keeps its events until it can send them
MISSED_UNHEARD = 0.5
UNEXPLAINED = 5.0
UNEXPLAINED_NOISE = 1.0  # where the lead is taken to make no contact, events come as they like
RESTATED = 0.5
WRONG_LEVEL = 4.0
SOME_WRONG_LEVEL = 1.0
SPREAD_S = 1.5  # hand, stamp and debounce together, one standard deviation
SPREAD_PART = 0.04
REACH = 4.0  # standard deviations within which a report may still be the one that is due
WIDE_S = 10.0
HEARD_WITHIN_S = 900.0
MOST_EDGES = 300  # a lead without contact flips without end; this many tell enough


@dataclass(frozen=True, slots=True)
class Match:
    """The cost [nats], the reports found for what was due, what was due and missing, and what nothing explains."""

    cost: float
    pairs: tuple[tuple[Due, Edge], ...]
    missing: tuple[Due, ...]
    unexplained: tuple[Edge, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """The time within which every report must be explained [s], and what was observed in it and shortly after.

    `by_direction` holds the edges that may answer to the script, with their moments; `cut` is how many more there
    were than are worth comparing.
    """

    start_s: float
    last_s: float
    observed: Observed
    inside: tuple[Edge, ...]
    by_direction: Mapping[bool, tuple[tuple[Edge, ...], tuple[float, ...]]]
    cut: int = 0


def span_of(observed: Observed, *, start_s: float, last_s: float) -> Span:
    """The edges from the first row to the last, and those behind it that the script can still have caused.

    A turn of the key behind the script's last row is no business of the script: the first on there ends it. It is
    kept, as an inverted input answers to the last off with an on.
    """
    inside = [edge for edge in observed.edges if edge.hi_s >= start_s and edge.lo_s <= last_s]
    after: list[Edge] = []
    for edge in observed.edges:
        if edge.lo_s > last_s:
            after.append(edge)
            if edge.on or len(after) == MOST_EDGES:
                break
    kept = tuple(inside[:MOST_EDGES])
    by_direction = {}
    for on in (True, False):
        edges = tuple(edge for edge in (*kept, *after) if edge.on is on)
        by_direction[on] = edges, tuple(edge.hi_s for edge in edges)
    return Span(start_s, last_s, observed, kept, by_direction, len(inside) - len(kept))


def spread_s(delay_s: float) -> float:
    """How far a report may stray from its usual delay, one standard deviation [s]."""
    return SPREAD_S + SPREAD_PART * abs(delay_s)


def match(due: Sequence[Due], span: Span, *, level: bool, noise: bool = False) -> Match:
    """The reports for what is due, the nearest first; `level` is the input's level before the script."""
    pairs = _pairs(due, span)
    found = {id_of: edge for id_of, edge, _ in pairs}
    taken = {(edge.on, edge.lo_s, edge.hi_s) for _, edge, _ in pairs}
    missing = tuple(each for index, each in enumerate(due) if index not in found and not each.optional)
    unexplained = tuple(edge for edge in span.inside if (edge.on, edge.lo_s, edge.hi_s) not in taken)
    costs = [cost for _, _, cost in pairs]
    costs += [_missing_cost(each, due, span=span) for each in missing]
    odd = UNEXPLAINED_NOISE if noise else UNEXPLAINED
    costs += [RESTATED if edge.restated else odd for edge in unexplained]
    if not noise:
        costs += _level_costs(due, span, level=level)
        costs += _fell_after(due, span, level=level, taken=taken)
    return Match(math.fsum(costs), tuple((due[index], edge) for index, edge, _ in pairs), missing, unexplained)


def _fell_after(due: Sequence[Due], span: Span, *, level: bool, taken: set[tuple[bool, float, float]]) -> list[float]:
    """The cost of an off behind the script, the key untouched, where the input should stay live for good."""
    ends_on = due[-1].on if due else level
    after = [edge for edge in span.by_direction[False][0] if edge.lo_s > span.last_s]
    unexplained = after and (after[0].on, after[0].lo_s, after[0].hi_s) not in taken
    return [UNEXPLAINED] if ends_on and unexplained else []


def _pairs(due: Sequence[Due], span: Span) -> list[tuple[int, Edge, float]]:
    """(number of what is due, its report, the cost) with every report used once, the best first."""
    possible: list[tuple[float, int, Edge]] = []
    for index, each in enumerate(due):
        spread = spread_s(each.lo_s - each.bare_s)
        reach_s = REACH * spread
        edges, ends_s = span.by_direction[each.on]
        for edge in edges[bisect_left(ends_s, min(each.lo_s, each.bare_s) - reach_s) :]:
            if edge.exact and edge.lo_s > each.hi_s + reach_s:
                break
            misfit = _apart_s(each, edge) / spread
            if misfit <= REACH:
                free = edge.restated or each.hi_s - each.lo_s > WIDE_S  # nothing new, or bound to be hit
                worth = 0.0 if free else HIT if edge.exact else HIT_BETWEEN
                possible.append((worth + 0.5 * misfit**2, index, edge))
    possible.sort(key=lambda each: (each[0], each[1], each[2].hi_s))
    pairs: list[tuple[int, Edge, float]] = []
    used_due: set[int] = set()
    used: set[tuple[bool, float, float]] = set()
    for cost, index, edge in possible:
        key = (edge.on, edge.lo_s, edge.hi_s)
        if index not in used_due and key not in used:
            used_due.add(index)
            used.add(key)
            pairs.append((index, edge, cost))
    return sorted(pairs, key=lambda pair: pair[0])


def _apart_s(due: Due, edge: Edge) -> float:
    """How far apart the moments are; a difference between two reports may show the bare input, before its debounce."""
    lo_s = due.lo_s if edge.exact else min(due.lo_s, due.bare_s)
    return max(0.0, lo_s - edge.hi_s, edge.lo_s - due.hi_s)


def _missing_cost(each: Due, due: Sequence[Due], *, span: Span) -> float:
    """The cost of a report that is missing: the more, the surer it is that it would be here had it been sent.

    Where the unit is in the right state when it is heard again, the change before it was missed, or nobody looked.
    """
    seen = span.observed
    if not seen.alive(-math.inf, each.hi_s):
        return MISSED_UNHEARD
    if _heard(each, due, span=span):
        return MISSED_UNHEARD if seen.found_at(each.hi_s + SPREAD_S) is each.on else MISSED_HEARD
    return MISSED_QUIET if seen.has_events and seen.alive(each.hi_s + SPREAD_S, math.inf) else MISSED_UNHEARD


def _heard(each: Due, due: Sequence[Due], *, span: Span) -> bool:
    """Whether the unit reported anything while what was due should have been known."""
    until_s = min((other.lo_s for other in due if other.lo_s > each.hi_s), default=math.inf)
    since_s = min(each.hi_s, each.lo_s + HEARD_WITHIN_S)
    return span.observed.alive(since_s + SPREAD_S, min(until_s, since_s + HEARD_WITHIN_S))


def _level_costs(due: Sequence[Due], span: Span, *, level: bool) -> list[float]:
    """The cost of reports that show the other state while nothing was due to change."""
    costs: list[float] = []
    firm = [each for each in due if not each.optional]
    seen = span.observed
    said = seen.state_at(span.start_s)
    if said is not None and said is not level:
        costs.append(WRONG_LEVEL)
    starts = [(span.start_s, level), *((each.hi_s + spread_s(each.hi_s - each.bare_s) * 2, each.on) for each in firm)]
    ends = [*(min(each.bare_s, each.lo_s) - 2 * SPREAD_S for each in firm), span.last_s]
    for (start_s, on), end_s in zip(starts, ends, strict=True):
        if start_s >= span.last_s:  # behind the last row: as long as the key was left alone
            later = next((edge.lo_s for edge in seen.edges if edge.on and edge.lo_s > span.last_s), math.inf)
            end_s = min(start_s + HEARD_WITHIN_S, later - SPREAD_S)
        wrong = seen.seen(on=not on, start_s=start_s, end_s=end_s)
        right = seen.seen(on=on, start_s=start_s, end_s=end_s)
        if wrong:
            costs.append(WRONG_LEVEL if wrong > right else SOME_WRONG_LEVEL)
    return costs
