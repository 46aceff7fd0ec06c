"""How late the unit reports on and off, and how far its clock is out, each with its standard uncertainty.

The on-delay is the stamp of an on minus the moment that the hand wrote down, less the clock's offset where the
server's times tell it; without them it is the sum of both. Each distance strays by the hand (0.5 s, common practice,
no source) and by the unit; the offset is known to about the least time that a report was under way, which no stamp
shows. Where only a report interval shows the ignition, the delay lies anywhere between two reports.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median, stdev

from backprobe.stages.prove.alignment import Aligned, Alignment
from backprobe.stages.prove.observed import Edge
from backprobe.stages.prove.script import Row, Script

HAND_U_S = 0.5
ALONE_U_S = 1.0  # of a single event, whose spread nobody has seen
SCATTERED_S = 5.0  # delays that differ by this much have no common value: their spread is the uncertainty
DIGITS = 1


@dataclass(frozen=True, slots=True)
class Estimate:
    """A value with its standard uncertainty [s]."""

    value_s: float
    u_s: float

    def as_json(self) -> dict[str, float]:
        """The estimate, rounded to its declared digits."""
        return {"value": round(self.value_s, DIGITS) + 0.0, "u": round(self.u_s, DIGITS)}


def reported_turns(belief: Aligned, script: Script) -> dict[int, Edge]:
    """The numbers of the script's turns that the unit reported, with the report of each."""
    pairs = belief.fits[0].match.pairs
    return {due.row: edge for due, edge in pairs if script.rows[due.row].on is due.on}


def clock_offset(alignment: Alignment) -> Estimate | None:
    """How far the unit's clock is ahead, without zone, GPS time and rollover; None where nothing tells it."""
    shift = alignment.best.shift
    return None if shift.offset_s is None or shift.unset else Estimate(shift.offset_s, shift.u_s)


def delay(alignment: Alignment, script: Script, *, on: bool) -> Estimate | None:
    """The delay of on, or of off; None where no such turn was reported, or no clock is there to measure it by."""
    belief = alignment.best
    if belief.shift.unset and belief.shift.offset_s is None and not _has_arrivals(belief):
        return None
    turns = [(script.rows[row], edge) for row, edge in reported_turns(belief, script).items() if edge.on is on]
    exact = [edge.hi_s - row.time_s for row, edge in turns if edge.exact]
    if exact:
        value, u = _of_events(exact)
    elif turns:
        value, u = _between_reports(turns)
    else:
        return None
    value += belief.shift.guess_s  # an offset that only the turns speak for is part of the sum
    return Estimate(value, math.sqrt(u**2 + HAND_U_S**2 + belief.shift.u_s**2))


def _has_arrivals(belief: Aligned) -> bool:
    return any(report.received_s is not None for _, report in belief.kept)


def _of_events(delays_s: Sequence[float]) -> tuple[float, float]:
    spread = stdev(delays_s) if len(delays_s) > 1 else ALONE_U_S
    return median(delays_s), spread if spread > SCATTERED_S else spread / math.sqrt(len(delays_s))


def _between_reports(turns: Sequence[tuple[Row, Edge]]) -> tuple[float, float]:
    """The middle of what all turns allow, as likely anywhere: half-width / √3. No delay is below zero."""
    low = max(max(0.0, edge.lo_s - row.time_s) for row, edge in turns)
    high = min(edge.hi_s - row.time_s for row, edge in turns)
    if low > high:  # the delay is not the same each time
        low, high = high, low
    return (low + high) / 2, (high - low) / 2 / math.sqrt(3)
