"""What only keeps the evidence from being complete: reports that came together, too late, too seldom or not yet."""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise

from backprobe.evidence.report import Report
from backprobe.stages.prove.alignment import Aligned
from backprobe.stages.prove.delays import reported_turns
from backprobe.stages.prove.observed import RESTARTS
from backprobe.stages.prove.patterns import Pattern, PatternId
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.turns import longest_plausible_s

TOGETHER = 0.5  # of the script's reports in one arrival second
SOME = 3  # two reports that had to wait for a while are normal
KEY_EVENTS_TOGETHER = 4
LEAST_REPORTS = 8
ONE_MOMENT_S = 5.0  # an event beside a heartbeat travels with it
MINUTE_S = 60.0
SAME_STAMPS = 3
SAME_S = 1e-3
ATTACH_S = 900.0  # a modem that has not attached by then has another fault
LATE = 1.5  # times the report interval


def backlog(belief: Aligned, script: Script, *, timing: Timing) -> Pattern | None:
    """Half of the script's reports, or four key events, in one arrival second; or stamps that are the server's."""
    if stamps_are_the_servers(belief):
        return Pattern(PatternId.BACKLOG, 0.98)
    behind_s = script.last_s + timing.off_limit_s
    reports = [report for time_s, report in belief.kept if script.start_s <= time_s <= behind_s]
    most = _most_together(reports)
    few = len(most) < SOME and _span_s(most) <= MINUTE_S
    share = len(most) / len(reports) if most and not few else 0.0
    events = len(_most_together([report for report in reports if report.ignition_event is not None]))
    if share < TOGETHER and events < KEY_EVENTS_TOGETHER:
        return None
    return Pattern(PatternId.BACKLOG, max(0.6 + 0.39 * share, 0.75 if events >= KEY_EVENTS_TOGETHER else 0.0))


def _span_s(reports: Sequence[Report]) -> float:
    """How far apart reports were stamped [s]."""
    times = [report.time_s for report in reports]
    return max(times, default=0.0) - min(times, default=0.0)


def _most_together(reports: Sequence[Report]) -> list[Report]:
    """The most reports that arrived in one second though they were stamped apart; none where no two did."""
    arrived: defaultdict[int, list[Report]] = defaultdict(list)
    for report in reports:
        if report.received_s is not None:
            arrived[math.floor(report.received_s)].append(report)
    apart = (group for group in arrived.values() if _span_s(group) > ONE_MOMENT_S)
    return max(apart, key=len, default=[])


def stamps_are_the_servers(belief: Aligned) -> bool:
    """Whether the stamps were put on by the server: all alike to the arrival, or many events on one second."""
    kept = [report for _, report in belief.kept]
    both = [report for report in kept if report.received_s is not None]
    if len(both) >= SAME_STAMPS:
        return all(abs(report.time_s - report.received_s) < SAME_S for report in both if report.received_s is not None)
    return not both and _on_one_stamp(kept)


def _on_one_stamp(reports: Sequence[Report]) -> bool:
    keyed = Counter(report.time_s for report in reports if report.ignition_event is not None)
    every = Counter(report.time_s for report in reports)
    half = len(reports) >= LEAST_REPORTS and max(every.values(), default=0) >= TOGETHER * len(reports)
    return half or max(keyed.values(), default=0) >= KEY_EVENTS_TOGETHER


def late_attach(belief: Aligned, script: Script, *, timing: Timing) -> Pattern | None:
    """The first key-on came before the unit was heard at all, and a later turn was reported."""
    reported = reported_turns(belief, script)
    first = script.turns[0]
    if first in reported or not script.rows[first].on or not reported:
        return None
    on_s = script.rows[first].time_s
    ordinary = ((time_s, report) for time_s, report in belief.kept if report.event not in RESTARTS)
    heard_s, _ = next(ordinary, (math.inf, None))
    powered_s = belief.power_up.time_s
    if not on_s < heard_s <= on_s + ATTACH_S or (powered_s is not None and powered_s < on_s - ATTACH_S):
        return None
    if not belief.span.observed.has_events and heard_s - (powered_s or on_s) < LATE * timing.interval_s:
        return None
    if heard_s < on_s + min(belief.fits[0].delays.on_s, timing.usual_on_s):
        return None  # it was heard before the on could have been stamped
    attached = any(r.received_s is not None and r.received_s < on_s for _, r in belief.kept[:1])
    return Pattern(PatternId.LATE_ATTACH, 0.7 if attached else 0.9)


def interval_reporting(belief: Aligned, script: Script, *, timing: Timing) -> Pattern | None:
    """The ignition shows by report interval alone, and a state between two turns was too short for that."""
    observed = belief.span.observed
    if observed.has_events or not (observed.seen_on_s or observed.seen_off_s):
        return None
    reported = reported_turns(belief, script)
    short = unseen = False
    for begin, end in pairwise(script.turns):
        start_s, end_s = script.rows[begin].time_s, script.rows[end].time_s
        debounce_s = timing.usual_on_s if script.rows[begin].on else timing.usual_off_s
        lost = begin not in reported or end not in reported
        interval_s = max(timing.interval_s, _widest_gap_s(belief, start_s, end_s=end_s) if lost else 0.0)
        if end_s - start_s < debounce_s + 2 * interval_s:
            short, unseen = True, unseen or lost
    if not short:
        return None
    return Pattern(PatternId.INTERVAL_REPORTING, 0.85 if unseen else 0.65)


def _widest_gap_s(belief: Aligned, start_s: float, *, end_s: float) -> float:
    return max(_gaps(belief, start_s, end_s=end_s), default=0.0)


def _gaps(belief: Aligned, start_s: float, *, end_s: float) -> Iterator[float]:
    for before_s, after_s in pairwise(belief.span.observed.times_s):
        if after_s >= start_s and before_s <= end_s:
            yield after_s - before_s


def script_too_short(belief: Aligned, script: Script, *, timing: Timing) -> Pattern | None:
    """The last report is from before the final off had to be there, by all that is known of the wire."""
    last = script.turns[-1]
    owed = any(due.row == last and not due.on for due in belief.fits[0].match.missing)
    if not owed or not belief.kept:
        return None
    ended_s = belief.kept[-1][0]
    if ended_s >= script.rows[last].time_s + longest_plausible_s(belief, timing, on=False):
        return None
    return Pattern(PatternId.SCRIPT_TOO_SHORT, 0.95)
