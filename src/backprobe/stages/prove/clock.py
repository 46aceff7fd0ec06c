"""What the unit's clock may be out by, before any turn of the key is looked at.

A stamp can be wrong by 1,024 weeks or more (a GNSS date that rolled over), stand in 1980 or 1970 (a clock that was
never set), be in a local zone (whole quarter hours), or in GPS time, which runs 18 s ahead of UTC since 2017 (the
table of leap seconds, IERS Bulletin C; from memory). What remains is an ordinary offset.

The server's `received_at` tells all of this but for the time that a report was under way: no report arrives before
it is sent, so the stamps that lie furthest ahead of their arrival show the clock, less the least latency. Without
`received_at` only the turns of the key can tell a zone, and offset and delay show as their sum.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from backprobe.evidence.key_turn import ScriptKey
from backprobe.evidence.report import Report
from backprobe.stages.prove.observed import Edge, Stamped
from backprobe.stages.prove.script import Row, Script
from backprobe.stages.prove.setup import USUAL_ON_S

WEEK_S = 604_800.0
ROLLOVER_S = 1024 * WEEK_S
QUARTER_S = 900.0
MOST_QUARTERS = 56  # zones reach from -12 to +14 hours
GPS_AHEAD_S = 18.0
UNSET_YEARS_S = ((0.0, 365 * 86_400.0), (315_532_800.0, 347_155_200.0))  # all of 1970 and of 1980
NEAR_S = 60 * 86_400.0  # a stamp this near to a rolled-over date is one
UNSET_AWAY_S = 400 * 86_400.0
AROUND_S = 3600.0  # reports received this near to the script show the clock of that time
USUAL_LATENCY_S = 0.6  # the least over many reports; our own estimate
LATENCY_U_S = 2.0
FEW_U_S = 8.0  # what a single report leaves open
ZONE_NEAR_S = 30.0
USED_ZONE_NEAR_S = 120.0
ODD_ZONES = frozenset({23, 35, 51, 55})  # 5:45, 8:45, 12:45, 13:45: the quarter hours in use (from memory)
GPS_LATE_U, GPS_EARLY_S = 1.6, 0.9  # times the clock's uncertainty below 18 s, and seconds above
CLOSE_S = 2.0
EDGES_TRIED = 400
BASES_TRIED = 5
UNSET_TRIED = 12
LEAST_OFFSET_S = 20.0  # less than this is fitted with the delays
TURN_VOTES = 2  # of an event in the direction of a turn; of any other event at any other row, 1
VOTE_EARLY_S, VOTE_LATE_S, VOTE_VERY_LATE_S = 10.0, 75.0, 600.0
# costs [nats], our own estimate
ZONE = 3.0
ODD_ZONE = 1.0  # not a whole hour
BOTH_SHIFTED = 1.5
OFF_CLOCK = 1.0
OFFSET_PER_NAT_S = 60.0
MOST_OFFSET = 8.0


@dataclass(frozen=True, slots=True)
class Unwrapped:
    """Reports with stamps brought into the script's years: how many were rolled over, and those never set.

    `unset` have no date of their own; their stamps are as they came.
    """

    stamped: tuple[Stamped, ...]
    rolled_over: int
    unset: tuple[Stamped, ...]


def unwrapped(reports: Iterable[Report], script: Script) -> Unwrapped:
    """The reports with rolled-over dates undone, in the order of time."""
    middle_s = (script.start_s + script.last_s) / 2
    stamped: list[Stamped] = []
    unset: list[Stamped] = []
    rolled = 0
    for report in reports:
        away_s = (middle_s if report.received_s is None else report.received_s) - report.time_s
        if abs(away_s) > UNSET_AWAY_S:
            weeks_s = round(away_s / ROLLOVER_S) * ROLLOVER_S
            if weeks_s and abs(away_s - weeks_s) <= NEAR_S:
                rolled += 1
                stamped.append((report.time_s + weeks_s, report))
                continue
            if any(low <= report.time_s < high for low, high in UNSET_YEARS_S):
                unset.append((report.time_s, report))
                continue
        stamped.append((report.time_s, report))
    stamped.sort(key=_time_of)
    unset.sort(key=_time_of)
    return Unwrapped(tuple(stamped), rolled, tuple(unset))


def _time_of(stamped: Stamped) -> float:
    return stamped[0]


@dataclass(frozen=True, slots=True)
class Lead:
    """How far stamps run ahead of their arrival at the most [s], and the standard uncertainty of the clock by that."""

    ahead_s: float
    u_s: float


def lead_of(stamped: Iterable[Stamped], script: Script) -> Lead | None:
    """How far the stamps run ahead of the reports' arrival, less the least latency; None without `received_at`.

    Of the reports received around the script, or of all where there are none; three that agree within 2 s, so that
    one wild stamp cannot speak for all. The fewer there are, the less is known of the least latency.
    """
    pairs = [(time_s - report.received_s, report.received_s) for time_s, report in stamped if report.received_s]
    around = [ahead for ahead, at_s in pairs if script.start_s - AROUND_S <= at_s <= script.last_s + AROUND_S]
    leads = sorted(around or [ahead for ahead, _ in pairs], reverse=True)
    if not leads:
        return None
    ahead = next((a for a, b in zip(leads, leads[2:], strict=False) if a - b <= CLOSE_S), leads[0])
    return Lead(ahead, math.hypot(LATENCY_U_S, FEW_U_S / len(leads)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """One belief about the clock: `base_s` is taken off every stamp; `cost` [nats] says how unusual it is.

    `quarters` of an hour and `gps` are what of it is a zone and GPS time; `offset_s` is the rest with its standard
    uncertainty `u_s`, where the server's times show it. `both` says that the server's own times are taken to be in
    that zone too, `unset` that the clock had never been set. `guess_s` is an offset for which only the turns of the
    key speak: it cannot be told from the delays.
    """

    base_s: float
    cost: float = 0.0
    quarters: int = 0
    gps: bool = False
    offset_s: float | None = None
    u_s: float = 0.0
    both: bool = False
    unset: bool = False
    guess_s: float = 0.0

    @property
    def guessed(self) -> bool:
        """Whether nothing but the turns of the key speaks for this zone or offset."""
        return bool(self.quarters or self.guess_s) and self.offset_s is None


def shifts(stamped: Sequence[Stamped], edges: Sequence[Edge], *, script: Script) -> tuple[Shift, ...]:
    """The beliefs about the clock that are worth comparing; the plain one is always among them, and the first."""
    lead = lead_of(stamped, script)
    plain = (Shift(base_s=0.0),) if lead is None else tuple(_by_arrival(lead))
    guesses: dict[tuple[int, float], Shift] = {}
    for base_s in _bases(edges, script):
        quarters = _zone_of(base_s)
        rests = {0.0, base_s - quarters * QUARTER_S} if quarters else {base_s}
        for rest_s in rests if lead is None else {0.0}:
            if quarters or (lead is None and abs(rest_s) >= LEAST_OFFSET_S):
                guesses.setdefault((quarters, rest_s), _guess(quarters, rest_s, both=lead is not None))
    known = {each.quarters for each in plain if each.offset_s is not None and each.quarters}
    return (*plain, *(each for (quarters, _), each in guesses.items() if quarters not in known))


def _guess(quarters: int, rest_s: float, *, both: bool) -> Shift:
    """A shift for which only the turns of the key speak."""
    cost = _zone_cost(quarters) if quarters else 0.0
    cost += BOTH_SHIFTED if both else 0.0
    cost += OFF_CLOCK + min(MOST_OFFSET, abs(rest_s) / OFFSET_PER_NAT_S) if rest_s else 0.0
    return Shift(base_s=quarters * QUARTER_S + rest_s, cost=cost, quarters=quarters, guess_s=rest_s, both=both)


def _by_arrival(lead: Lead) -> Iterator[Shift]:
    offset_s = lead.ahead_s + USUAL_LATENCY_S
    quarters = _zone_of(offset_s)
    rest_s = offset_s - quarters * QUARTER_S
    gps = -GPS_LATE_U * lead.u_s <= rest_s - GPS_AHEAD_S <= GPS_EARLY_S
    cost = _zone_cost(quarters) if quarters else OFF_CLOCK if abs(rest_s) > ZONE_NEAR_S else 0.0
    rest_s -= GPS_AHEAD_S if gps else 0.0
    yield Shift(base_s=offset_s, cost=cost, quarters=quarters, gps=gps, offset_s=rest_s, u_s=lead.u_s)
    if offset_s < -ZONE_NEAR_S:  # or nothing arrived while it was fresh
        yield Shift(base_s=0.0, cost=OFF_CLOCK)


def _zone_of(offset_s: float) -> int:
    """The quarter hours that an offset is a zone of; 0 where it is none. Zones in use may stand further off."""
    quarters = round(offset_s / QUARTER_S)
    near_s = USED_ZONE_NEAR_S if quarters % 2 == 0 or abs(quarters) in ODD_ZONES else ZONE_NEAR_S
    return quarters if abs(offset_s - quarters * QUARTER_S) <= near_s and abs(quarters) <= MOST_QUARTERS else 0


def _zone_cost(quarters: int) -> float:
    return ZONE + (ODD_ZONE if quarters % 4 else 0.0)


def _bases(edges: Sequence[Edge], script: Script) -> Iterator[float]:
    """The shifts by which most turns of the script have an event soon after them, the likeliest first.

    An event in the direction of the turn counts twice; one in the other direction, one at a start, or a late off
    counts once: faults make these.
    """
    rows = [row for row in script.rows if row.on is not None or row.turn.key is ScriptKey.RUNNING]
    near = edges[:EDGES_TRIED]
    times = {on: sorted(edge.hi_s for edge in near if edge.on is on) for on in (True, False)}
    apart = {round((edge.hi_s - row.time_s - USUAL_ON_S) / CLOSE_S) for row in rows for edge in near}
    votes: dict[float, int] = {}
    for each in apart:
        base_s = each * CLOSE_S
        if abs(base_s) <= MOST_QUARTERS * QUARTER_S:
            votes[base_s] = _votes(base_s, rows, times=times)
    best = sorted((base_s for base_s in votes if votes[base_s] > TURN_VOTES), key=lambda b: (-votes[b], abs(b)))
    chosen: list[float] = []
    for base_s in best:
        if all(abs(base_s - other) > VOTE_EARLY_S for other in chosen):
            chosen.append(base_s)
        if len(chosen) == BASES_TRIED:
            break
    yield from chosen


def _votes(base_s: float, rows: Sequence[Row], *, times: dict[bool, list[float]]) -> int:
    return sum(int(_vote(row.time_s + base_s, row.on, times=times)) for row in rows)


def _vote(at_s: float, on: bool | None, *, times: dict[bool, list[float]]) -> int:
    """What the events soon after a row are worth; `on` is the row's direction, None for a start."""
    start_s, end_s = at_s - VOTE_EARLY_S, at_s + VOTE_LATE_S
    if _any_between(times[on is not False], start_s, end_s=end_s):
        return 1 if on is None else TURN_VOTES
    if on is None:
        return 0
    late = on is False and _any_between(times[False], end_s, end_s=at_s + VOTE_VERY_LATE_S)
    return 1 if late or _any_between(times[not on], start_s, end_s=end_s) else 0


def _any_between(times: Sequence[float], start_s: float, *, end_s: float) -> bool:
    return bisect_left(times, start_s) < bisect_right(times, end_s)


def unset_shifts(unset: Sequence[Stamped], edges: Sequence[Edge], *, script: Script) -> tuple[Shift, ...]:
    """The beliefs about a clock that was never set: by arrival, or such that an event falls on a row of the script."""
    lead = lead_of(unset, script)
    if lead is not None:
        return (Shift(base_s=lead.ahead_s + USUAL_LATENCY_S, u_s=lead.u_s, unset=True),)
    votes: Counter[int] = Counter()
    for edge in edges[:400]:
        near = ((round((edge.hi_s - row.time_s) / CLOSE_S), row.on is edge.on) for row in script.rows)
        votes.update({each: TURN_VOTES if turn else 1 for each, turn in near})
    wide = {each: votes[each - 1] + votes[each] + votes[each + 1] for each in votes}
    best = sorted(wide, key=lambda each: (-wide[each], each))
    return tuple(Shift(base_s=each * CLOSE_S, unset=True) for each in best[:UNSET_TRIED])
