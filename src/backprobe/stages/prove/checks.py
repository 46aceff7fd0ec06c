"""Which patterns an alignment shows, each with its strength."""

from __future__ import annotations

import math
from collections.abc import Iterator

from backprobe.evidence.key_turn import BODY_KEYS
from backprobe.stages.prove.alignment import Aligned, Alignment
from backprobe.stages.prove.matching import spread_s
from backprobe.stages.prove.observed import Edge
from backprobe.stages.prove.patterns import Pattern, PatternId
from backprobe.stages.prove.position import Position
from backprobe.stages.prove.script import Script
from backprobe.stages.prove.setup import Timing
from backprobe.stages.prove.transport import (
    backlog,
    interval_reporting,
    late_attach,
    script_too_short,
    stamps_are_the_servers,
)

WIRED = (
    *(PatternId.NOT_LIVE_IN_CRANK, PatternId.ON_IN_ACCESSORY, PatternId.NEVER_OFF, PatternId.FOLLOWS_DOOR_OR_TIMER),
    *(PatternId.SENSED_NOT_WIRED, PatternId.BODY_WAKE, PatternId.INVERTED),
)
STILL_FLIPS = 2
BOOT_BEFORE_S = 2.0
BOOT_BEHIND_S = 45.0  # a unit is up again by then
ROLLED_SHARE = 0.2
GPS_STRENGTH = 0.9


def patterns_of(alignment: Alignment, script: Script, *, timing: Timing, position: Position) -> list[Pattern]:
    """Every pattern with any strength; where the stamps are the server's, nothing is said of the wires."""
    belief = alignment.best
    found = [*_clock(alignment)]
    late = backlog(belief, script, timing=timing)
    if late is not None:
        found.append(late)
    if stamps_are_the_servers(belief):
        return found
    found += _wires(alignment, script)
    found += [
        pattern
        for check in (late_attach, interval_reporting, script_too_short)
        if (pattern := check(belief, script, timing=timing)) is not None
    ]
    resets = _resets(alignment, script)
    if resets is not None:
        found.append(resets)
    stale = _stale(alignment, position)
    if stale is not None:
        found.append(stale)
    return found


def _wires(alignment: Alignment, script: Script) -> Iterator[Pattern]:
    """What the lead sits on, and whether it makes contact; flips take their share from every other explanation."""
    belief = alignment.best
    found = belief.fits[0].match
    odd = [edge for edge in found.unexplained if not edge.restated]
    flips = len(_still(odd, belief, script=script))
    floating = 1.0 - 0.5 ** (flips / STILL_FLIPS) if flips >= STILL_FLIPS else 0.0
    explained = len(found.pairs) / max(1, len(found.pairs) + (len(odd) if floating else 0))
    for pattern in WIRED:
        yield Pattern(pattern, alignment.strength(pattern) * (explained if floating else 1.0))
    noise = alignment.strength(PatternId.FLOATING) if flips >= STILL_FLIPS else 0.0
    yield Pattern(PatternId.FLOATING, max(noise, floating))


def _still(edges: list[Edge], belief: Aligned, *, script: Script) -> list[Edge]:
    """Those edges that came while nothing had been turned for longer than either delay."""
    delays = belief.fits[0].delays
    turned = [row.time_s for row in script.rows if row.turn.key not in BODY_KEYS]

    def still(edge: Edge) -> bool:
        delay_s = max(0.0, delays.of(edge.on))
        reach_s = delay_s + 3 * spread_s(delay_s)
        return not any(edge.lo_s - reach_s <= time_s <= edge.hi_s + spread_s(0.0) for time_s in turned)

    return [edge for edge in edges if still(edge)]


def _clock(alignment: Alignment) -> Iterator[Pattern]:
    belief = alignment.best
    shift = belief.shift
    rolled = (alignment.rolled_over + alignment.unset) / max(1, len(belief.stamped) + alignment.unplaced)
    if rolled >= ROLLED_SHARE:
        yield Pattern(PatternId.DATE_ROLLOVER, 0.6 + 0.39 * rolled)
    if shift.quarters:
        same = [alignment.share(each) for each in alignment.all if each.shift.quarters == shift.quarters]
        yield Pattern(PatternId.TIME_ZONE, min(0.99, math.fsum(same)))
    if shift.gps:
        yield Pattern(PatternId.GPS_TIME, GPS_STRENGTH)


def _resets(alignment: Alignment, script: Script) -> Pattern | None:
    """Restarts at the crank, less those that came elsewhere in the script."""
    belief = alignment.best
    clock_s = belief.fits[0].delays.clock_s
    heard_s = belief.kept[0][0] if belief.kept else 0.0  # what begins with a restart has just been powered
    restarts = [time_s - clock_s for time_s in belief.span.observed.restarts_s if time_s > heard_s]
    inside = [time_s for time_s in restarts if script.first_key_s <= time_s <= script.last_s + BOOT_BEHIND_S]
    cranks = list(script.cranks())
    hit = [any(begin - BOOT_BEFORE_S <= at <= end + BOOT_BEHIND_S for at in inside) for begin, end in cranks]
    at_crank = [at for at in inside if any(begin - BOOT_BEFORE_S <= at <= end + BOOT_BEHIND_S for begin, end in cranks)]
    if not any(hit):
        return None
    share = sum(1 for each in hit if each) / len(hit)
    return Pattern(PatternId.RESETS_IN_CRANK, (0.65 + 0.34 * share) * len(at_crank) / len(inside))


def _stale(alignment: Alignment, position: Position) -> Pattern | None:
    """Elsewhere beyond doubt, by a unit that reports this script's turns."""
    if not position.beyond or not alignment.fit.match.pairs:
        return None
    return Pattern(PatternId.STALE_POSITION, min(0.98, position.beyond))
