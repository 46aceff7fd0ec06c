"""What the hand did and what the unit reported, laid over one another.

Theory of operation. Three things are unknown at once: the unit's clock, the wire that its ignition lead sits on, and
how late it reports. Each has a short list of beliefs, and all combinations are compared by one figure, a cost in
nats (minus the logarithm of a likelihood and its prior):

* **The clock** (`clock`). Dates that rolled over are recognised by themselves. With `received_at` the stamps that run
  furthest ahead of their arrival give the offset to within the least latency; whole quarter hours of it are a zone,
  18 s are GPS time. Without, the quarter hours are tried by which most rows of the script have an event soon after
  them. A clock that was never set is shifted by arrival, or until its events fall on the script.
* **The wire** (`wirings`). About sixty hypotheses: live in which positions, ended by key, door or timer, woken by the
  body, constant, inverted, without contact. Each turns the script into a level, and a debounce (`debounce`) turns the
  level into what must be reported: a level shorter than the debounce is never reported at all.
* **The delays** (`fitting`). Every distance between a change of the level and an event of the same direction is a
  candidate for the on-delay or the off-delay; the most shared are tried in all combinations.

What must be reported and what was is then matched (`matching`): each event at most once, the nearest first. An event
in its place counts for the belief; one that is missing although the unit was heard, one that nothing explains, and a
report that shows the other state count against it. Late, doubled, disordered and buffered reports do no harm: only
the unit's own stamps are compared, in their own order.

Before matching, the clock's shift is undone, and then everything from before this job's power-up is left out
(`power_up`). The share of all belief that falls on wirings with a pattern is that pattern's strength.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.report import Report
from backprobe.stages.prove.clock import Shift, Unwrapped, shifts, unset_shifts, unwrapped
from backprobe.stages.prove.fitting import COST_DIGITS, Fit, fit
from backprobe.stages.prove.matching import Span, span_of
from backprobe.stages.prove.observed import Edge, Stamped, observe
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.power_up import PowerUp, power_up_of
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.wirings import Wiring, wirings_for

BEFORE_S = 6 * 3600.0
BEHIND_S = 2 * 3600.0
NEAR_S = 600.0
SILENT = 4.0  # nats, our own estimate: a unit is heard while its key is turned
AROUND_S = 16 * 3600.0  # the widest zone and a little


@dataclass(frozen=True, slots=True, kw_only=True)
class Aligned:
    """One belief about the clock with all wirings fitted under it, the best first.

    `stamped` are all of the unit's reports with the shift undone, in the order of time; those from
    `power_up.first` on count. `silent` says that none of them is from the time of the script.
    """

    shift: Shift
    stamped: tuple[Stamped, ...]
    power_up: PowerUp
    span: Span
    silent: bool
    fits: tuple[Fit, ...]

    @property
    def kept(self) -> tuple[Stamped, ...]:
        """The reports since this job's power-up."""
        return self.stamped[self.power_up.first :]

    @property
    def cost(self) -> float:
        """The cost of this belief, whatever the wiring [nats]."""
        least = self.fits[0].cost
        wirings = least - math.log(math.fsum(math.exp(least - each.cost) for each in self.fits))
        return round(self.shift.cost + (SILENT if self.silent else 0.0) + wirings, COST_DIGITS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Alignment:
    """Every belief about the clock, the best first, and what the stamps themselves say of it.

    `unplaced` is how many reports have a clock that was never set and cannot be placed in time.
    """

    all: tuple[Aligned, ...]
    rolled_over: int
    unset: int
    unplaced: int

    @property
    def best(self) -> Aligned:
        """The belief that explains the reports best."""
        return self.all[0]

    @property
    def fit(self) -> Fit:
        """The best wiring under it."""
        return self.best.fits[0]

    def share(self, belief: Aligned) -> float:
        """How much of all belief falls on one belief about the clock."""
        weights = [math.exp(self.best.cost - each.cost) for each in self.all]
        return math.exp(self.best.cost - belief.cost) / math.fsum(weights)

    def strength(self, pattern: PatternId) -> float:
        """How much of the belief in wirings falls on those with a pattern, under the best clock."""
        fits = self.best.fits
        weights = [math.exp(fits[0].cost - each.cost) for each in fits]
        own = [weight for weight, each in zip(weights, fits, strict=True) if pattern in each.patterns]
        return math.fsum(own) / math.fsum(weights)


def align(
    reports: Sequence[Report], script: Script, *, timing: Timing, wirings: tuple[Wiring, ...] | None = None
) -> Alignment:
    """Script and reports of one unit, laid over one another; `wirings` narrows what is compared."""
    flat = unwrapped(reports, script)
    compared = wirings or wirings_for(script)
    found = [
        _aligned(stamped, shift, script=script, timing=timing, wirings=compared)
        for stamped, shift in _beliefs(flat, script)
    ]
    found = [each for each in found if not each.shift.guessed or _is_better(each, found[0])]
    found.sort(key=lambda each: each.cost)
    placed = len(found[0].stamped)
    return Alignment(
        all=tuple(found),
        rolled_over=flat.rolled_over,
        unset=len(flat.unset),
        unplaced=len(flat.stamped) + len(flat.unset) - placed,
    )


def _beliefs(flat: Unwrapped, script: Script) -> Iterator[tuple[tuple[Stamped, ...], Shift]]:
    """Reports with the beliefs about their clock; reports that were never set join the others where they can be."""
    never_set = flat.unset and unset_shifts(flat.unset, _edges(flat.unset), script=script)
    if never_set and not flat.stamped:
        yield from ((flat.unset, shift) for shift in never_set)
        return
    around = _between(flat.stamped, script.start_s - AROUND_S, high_s=script.last_s + AROUND_S)
    joined = never_set[0] if never_set and flat.unset[0][1].received_s is not None else None
    for shift in shifts(flat.stamped, _edges(around), script=script):
        if joined is None:
            yield flat.stamped, shift
            continue
        moved = [(time_s - joined.base_s + shift.base_s, report) for time_s, report in flat.unset]
        yield tuple(sorted((*flat.stamped, *moved), key=lambda each: each[0])), shift


def _is_better(guess: Aligned, plain: Aligned) -> bool:
    """Whether a shift that only the turns of the key speak for brings out enough more of them to be looked at.

    Without this a script could be moved to an hour in which the unit said nothing, and nothing would speak against it.
    """
    own = guess.fits[0].match
    odd = [edge for edge in own.unexplained if not edge.restated]
    found = len(own.pairs)
    if found < 3 * max(len(own.missing), len(odd)):
        return False
    if not guess.shift.quarters:
        return found >= max(2, len(plain.fits[0].match.pairs))
    span = guess.span
    around = sum(1 for e in span.observed.edges if span.start_s - NEAR_S <= e.hi_s <= span.last_s + NEAR_S)
    return 2 * found >= around and found >= max(2, len(plain.fits[0].match.pairs) + 2)


def _edges(stamped: Sequence[Stamped]) -> tuple[Edge, ...]:
    return observe(stamped).edges


def _between(stamped: Sequence[Stamped], low_s: float, *, high_s: float) -> Sequence[Stamped]:
    first = bisect_left(stamped, low_s, key=lambda each: each[0])
    return stamped[first : bisect_right(stamped, high_s, key=lambda each: each[0])]


def _aligned(
    stamped: tuple[Stamped, ...], shift: Shift, *, script: Script, timing: Timing, wirings: tuple[Wiring, ...]
) -> Aligned:
    """All wirings fitted under one belief about the clock."""
    right = tuple((time_s - shift.base_s, report) for time_s, report in stamped) if shift.base_s else stamped
    power_up = power_up_of(right, script.first_key_s)
    near = _between(right[power_up.first :], script.first_key_s - BEFORE_S, high_s=script.last_s + BEHIND_S)
    span = span_of(observe(near), start_s=script.start_s, last_s=script.last_s)
    clock_u_s = shift.u_s or None  # zero: nothing has told the clock
    silent = not span.observed.alive(script.start_s, script.last_s + timing.off_limit_s)
    fits = [fit(wiring, script, span=span, timing=timing, clock_u_s=clock_u_s) for wiring in wirings]
    return Aligned(
        shift=shift,
        stamped=right,
        power_up=power_up,
        span=span,
        silent=silent,
        fits=tuple(sorted(fits, key=lambda each: (each.cost, each.wiring.cost))),
    )
