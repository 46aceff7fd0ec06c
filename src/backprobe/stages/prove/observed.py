"""What the unit said of its ignition, as changes, in the order of its own stamps.

A change is either an event that the unit sent when it happened, or it lies between two reports whose ignition column
differs. A unit that sends events may show the bare input in that column, before its debounce: a difference that an
event confirms within its possible delay is that event. A report within 2 s of an event that contradicts it was taken
before it and is passed over.
"""

from __future__ import annotations

from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from backprobe.evidence.report import Event, Report

Stamped = tuple[float, Report]  # a report with its stamp after clock shifts were undone [s]

SAME_MOMENT_S = 2.0
CONFIRMED_WITHIN_S = 90.0
RESTART_OFF_S = 5.0  # an off this near a restart is the restart
RESTART_ON_S = 60.0  # and so is the on that ends it
RESTART_SAYS_S = 10.0  # a unit that has just started says how it finds the ignition
RESTARTS = frozenset({Event.BOOT, Event.POWER_LOST, Event.POWER_RESTORED})


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """The unit went on, or off, after `lo_s` and at `hi_s` at the latest; an event has both alike.

    `restated` says that it tells nothing new: the unit was there already, or has just been restarted.
    """

    on: bool
    lo_s: float
    hi_s: float
    report: Report
    restated: bool = False

    @property
    def exact(self) -> bool:
        """Whether the unit stamped the change itself."""
        return self.lo_s == self.hi_s


@dataclass(frozen=True, slots=True)
class Observed:
    """Reports in the order of `times_s`, the edges in them, and when the state was seen on, off, or lost."""

    times_s: array[float]
    edges: tuple[Edge, ...]
    seen_on_s: array[float]
    seen_off_s: array[float]
    restarts_s: array[float]
    has_events: bool

    def alive(self, start_s: float, end_s: float) -> bool:
        """Whether any report is stamped between two moments."""
        return _beside(self.times_s, start_s, end_s=end_s)

    def restarted(self, start_s: float, end_s: float) -> bool:
        """Whether the unit restarted, or lost its supply, between two moments."""
        return _beside(self.restarts_s, start_s, end_s=end_s)

    def seen(self, *, on: bool, start_s: float, end_s: float) -> int:
        """How many reports between two moments show the ignition on, or off."""
        times = self.seen_on_s if on else self.seen_off_s
        return max(0, bisect_right(times, end_s) - bisect_left(times, start_s))

    def state_at(self, time_s: float) -> bool | None:
        """What the unit had last said of its ignition at a moment; None where it had said nothing."""
        last_on, last_off = (bisect_right(times, time_s) - 1 for times in (self.seen_on_s, self.seen_off_s))
        if last_on < 0 and last_off < 0:
            return None
        on_s = self.seen_on_s[last_on] if last_on >= 0 else float("-inf")
        off_s = self.seen_off_s[last_off] if last_off >= 0 else float("-inf")
        return on_s > off_s

    def found_at(self, time_s: float) -> bool | None:
        """The state in which the unit is found by its first report from a moment on.

        None where there is none, where it had said nothing yet, and where that report is itself a change.
        """
        at = bisect_left(self.times_s, time_s)
        if at == len(self.times_s):
            return None
        first_s = self.times_s[at]
        edge = bisect_left(self.edges, first_s, key=lambda each: each.hi_s)
        changed = edge < len(self.edges) and self.edges[edge].exact and self.edges[edge].hi_s == first_s
        return None if changed else self.state_at(first_s)


def observe(stamped: Sequence[Stamped]) -> Observed:
    """What the reports say; `stamped` is in the order of time."""
    events = [(time_s, report, on) for time_s, report in stamped if (on := report.ignition_event) is not None]
    samples = list(_samples(stamped, events))
    restarts = array("d", (time_s for time_s, report in stamped if report.event in RESTARTS))
    edges = [Edge(on=on, lo_s=time_s, hi_s=time_s, report=report) for time_s, report, on in events]
    edges += _between_reports(samples, edges)
    edges.sort(key=lambda edge: edge.hi_s)
    return Observed(
        times_s=array("d", (time_s for time_s, _ in stamped)),
        edges=tuple(_restated(edges, restarts)),
        seen_on_s=array("d", (time_s for time_s, on, _ in samples if on)),
        seen_off_s=array("d", (time_s for time_s, on, _ in samples if not on)),
        restarts_s=restarts,
        has_events=bool(events),
    )


Sample = tuple[float, bool, Report]


def _samples(stamped: Sequence[Stamped], events: Sequence[tuple[float, Report, bool]]) -> Iterator[Sample]:
    """Every statement of the state: by an event, or by the column where no event just beside it says otherwise."""
    moments = [time_s for time_s, _, _ in events]
    for time_s, report in stamped:
        on = report.ignition_event
        if on is None:
            on = report.ignition
            if on is None or report.event is Event.BOOT:  # at boot the column is not yet debounced
                continue
            near = bisect_left(moments, time_s - SAME_MOMENT_S)
            if near < len(moments) and moments[near] <= time_s + SAME_MOMENT_S and events[near][2] is not on:
                continue
        yield time_s, on, report


def _between_reports(samples: Sequence[Sample], events: Sequence[Edge]) -> Iterator[Edge]:
    """The changes that only the column shows."""
    moments = {on: [edge.hi_s for edge in events if edge.on is on] for on in (True, False)}
    for (before_s, was, _), (time_s, on, report) in pairwise(samples):
        if was is on or report.ignition_event is not None:
            continue
        confirming = moments[on]
        at = bisect_left(confirming, before_s - SAME_MOMENT_S)
        if at < len(confirming) and confirming[at] <= time_s + CONFIRMED_WITHIN_S:
            continue
        yield Edge(on=on, lo_s=before_s, hi_s=time_s, report=report)


def _restated(edges: Sequence[Edge], restarts: array[float]) -> Iterator[Edge]:
    """The edges, each marked where it tells nothing new: the state is the same, or a restart took it away and back."""
    state, fell = None, False
    for edge in edges:
        fell = (
            _beside(restarts, edge.lo_s - RESTART_OFF_S, end_s=edge.hi_s + RESTART_OFF_S)
            if not edge.on
            else (fell and _beside(restarts, edge.lo_s - RESTART_ON_S, end_s=edge.hi_s))
        )
        said = state is None and _beside(restarts, edge.lo_s - RESTART_SAYS_S, end_s=edge.hi_s)
        restated = edge.on is state or fell or said
        yield replace(edge, restated=True) if restated else edge
        state = edge.on


def _beside(moments: array[float], start_s: float, *, end_s: float) -> bool:
    return bisect_left(moments, start_s) < bisect_right(moments, end_s)
