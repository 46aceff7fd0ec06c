"""A receiver's log against what a good place shows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.reception import Reception
from backprobe.findings import Finding, Limit, Stage, Standing, Verdict, judge
from backprobe.limits.reception import RECEPTION
from backprobe.stages.mount.reception import figures
from backprobe.stages.mount.reception.sector import Sector, blocked_sectors, satellites_round
from backprobe.stages.mount.reception.words import degrees, direction

LONGER = "park in the open, nothing higher than the cab nearby, and record 20 minutes"
BETTER = "move the unit to where it sees more of the sky, away from metal and coated glass, and record again"
OUTSIDE = "see that the vehicle stands in the open; if it does, " + BETTER
NO_SIGNALS = "let the receiver send GSV and GSA sentences too, and record again"
TURN = (
    "turn the vehicle by half a circle and record again: if the sector turns with it, it is the cab's metal; "
    "move the unit away from that side"
)


def reception_findings(log: Reception, *, heading_deg: float | None = None) -> tuple[Finding, ...]:
    """The findings on one log; with `heading_deg`, where the vehicle's front pointed, sides of the cab are named."""
    if not log.epochs:
        return (_plain("reception_log", log, verdict=Verdict.OPEN, because=_NOTHING, then=LONGER),)
    rest = tuple(each for make in (_kept, _first, _used, _hdop, _cn0, _scatter) for each in make(log))
    return (*_sky(log, rest, heading_deg=heading_deg), *rest)


_NOTHING = "the log holds good sentences, none of them with a position or a time"


def _plain(name: str, log: Reception, *, verdict: Verdict, because: str, then: str | None) -> Finding:
    return Finding(
        id=name,
        stage=Stage.MOUNT,
        what=f"{_WHAT[name]}, {log.file}",
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
    )


_WHAT = {
    "reception_log": "Reception",
    "reception_fix_kept": "Position kept",
    "reception_first_fix": "Time to the first position",
    "reception_used": "Satellites used",
    "reception_hdop": "HDOP at half of all moments",
    "reception_hdop_p95": "HDOP at 95 of 100 moments",
    "reception_cn0": "The four strongest signals",
    "reception_scatter": "Scatter at rest, 95 % radius",
    "reception_blocked": "Blocked part of the sky",
}


def _measured(name: str, log: Reception, *, values: figures.Range, digits: int, because: str, then: str) -> Finding:
    limit: Limit = RECEPTION[name]
    shown, low, high = (round(value, digits) + 0.0 for value in values)
    verdict = judge(limit, shown, low=low, high=high)
    if verdict is Verdict.FAILS and limit.standing is Standing.FROM_MEMORY:
        verdict, because = Verdict.THIN, f"{because}; the limit is from memory and decides nothing alone"
    return Finding(
        id=name,
        stage=Stage.MOUNT,
        what=f"{_WHAT[name]}, {log.file}",
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=shown,
        low=low,
        high=high,
        unit=limit.unit,
        digits=digits,
        limit=limit,
    )


def _kept(log: Reception) -> Iterator[Finding]:
    values = figures.kept_percent(log)
    if values is None:
        because = f"not one position in {log.epochs} moments, {_long(log.duration_ms / 1000)}"
        yield _plain("reception_fix_kept", log, verdict=Verdict.FAILS, because=because, then=OUTSIDE)
        return
    lost = log.since_first - log.fixes
    because = f"{lost} of {log.since_first} moments without a position since the first one"
    thin = f"the log is too short to show it: {LONGER}"
    then = thin if values[0] >= RECEPTION["reception_fix_kept"].value else OUTSIDE
    yield _measured("reception_fix_kept", log, values=values, digits=1, because=because, then=then)


def _first(log: Reception) -> Iterator[Finding]:
    """Nothing where the log begins with a position: then the search was not seen."""
    first_s = figures.first_fix_s(log)
    if first_s is None or figures.begins_fixed(log):
        return
    because = f"from the log's first line to the first position {first_s:.0f} s"
    values = (first_s, first_s, first_s)
    yield _measured("reception_first_fix", log, values=values, digits=0, because=because, then=OUTSIDE)


def _used(log: Reception) -> Iterator[Finding]:
    values = figures.used(log)
    if values is not None:
        because = f"at half of all moments {values[0]:g}, at eight of ten {values[1]:g} to {values[2]:g}"
        yield _measured("reception_used", log, values=values, digits=1, because=because, then=BETTER)


def _hdop(log: Reception) -> Iterator[Finding]:
    values, p95 = figures.hdop(log), figures.hdop_p95(log)
    if values is None or p95 is None:
        return
    because = f"at eight of ten moments {values[1]:.2f} to {values[2]:.2f}"
    yield _measured("reception_hdop", log, values=values, digits=2, because=because, then=BETTER)
    because = f"95 of 100 moments are at {p95:.2f} or better"
    yield _measured("reception_hdop_p95", log, values=(p95, p95, p95), digits=2, because=because, then=BETTER)


def _cn0(log: Reception) -> Iterator[Finding]:
    top4 = figures.cn0_top4_dBHz(log)
    if top4 is None:
        if log.told:
            because = "never four signals at once"
            yield _plain("reception_cn0", log, verdict=Verdict.FAILS, because=because, then=OUTSIDE)
        else:
            because = "the receiver says nothing of signals (no GSV sentences)"
            yield _plain("reception_cn0", log, verdict=Verdict.OPEN, because=because, then=NO_SIGNALS)
        return
    doubt = figures.CN0_DOUBT_DB
    share = figures.four_heard_share(log)
    because = (
        f"mean of the four strongest; four are heard at {share:.0%} of the moments; receivers differ by {doubt:g} dB"
    )
    values = (top4, top4 - doubt, top4 + doubt)
    yield _measured("reception_cn0", log, values=values, digits=1, because=because, then=OUTSIDE)


def _scatter(log: Reception) -> Iterator[Finding]:
    """Nothing of a log without a minute of rest: a drive shows no scatter."""
    found = figures.scatter(log)
    if found is None:
        return
    because = (
        f"half within {found.r50_m[0]:.1f} m of their mean, {found.fixes} positions in {_long(found.duration_s)} that "
        f"count as {found.independent:.0f}; how far the mean is off does not show"
    )
    thin = f"the log is too short to show it: {LONGER}"
    then = thin if found.r95_m[0] <= RECEPTION["reception_scatter"].value else OUTSIDE
    yield _measured("reception_scatter", log, values=found.r95_m, digits=1, because=because, then=then)


def _sky(log: Reception, others: Sequence[Finding], *, heading_deg: float | None) -> Iterator[Finding]:
    """The blocked sectors; a log that cannot show one is open, and one of a drive as well."""
    name = "reception_blocked"
    if not log.told:
        because = "the receiver says nothing of signals (no GSV sentences)"
        yield _plain(name, log, verdict=Verdict.OPEN, because=because, then=NO_SIGNALS)
        return
    if figures.moved(log):
        because = "the vehicle was under way, so that the sky's directions are not those of the cab"
        yield _plain(name, log, verdict=Verdict.OPEN, because=because, then=LONGER)
        return
    sectors = blocked_sectors(log.bins)
    weak = any(each.verdict is Verdict.FAILS for each in others)
    yield from (_blocked(log, sector, weak=weak, heading_deg=heading_deg) for sector in sectors)
    if not sectors:
        yield _none_blocked(log)


def _none_blocked(log: Reception) -> Finding:
    count, limit = satellites_round(log.bins), RECEPTION["reception_sky_told"]
    if not limit.allows(count):
        because = f"{count} satellites all round, fewer than the {limit.value:g} that would show a blocked sector"
        return _plain("reception_blocked", log, verdict=Verdict.OPEN, because=because, then=LONGER)
    because = f"no side of the sky is weaker than the others by more than chance, of {count} satellites"
    return _plain("reception_blocked", log, verdict=Verdict.HOLDS, because=because, then=None)


def _blocked(log: Reception, sector: Sector, *, weak: bool, heading_deg: float | None) -> Finding:
    """A blocked sector by itself is thin; it fails where another figure of the log does."""
    unheard = f", {sector.unheard} of them not heard at all" if sector.unheard else ""
    odds = max(1, round(1.0 / max(1.0 - sector.strength, 1e-4)))
    side = direction(sector, heading_deg)
    because = (
        f"{side}, {degrees(sector)}: {sector.satellites} satellites are {sector.loss_dB:g} dB weaker than elsewhere"
        f"{unheard}; by our own model an open sky looks so in less than 1 of {odds:,} logs"
    )
    return Finding(
        id="reception_blocked",
        stage=Stage.MOUNT,
        what=f"Blocked part of the sky: {side}, {log.file}",
        verdict=Verdict.FAILS if weak else Verdict.THIN,
        because=because,
        next=TURN,
    )


def _long(seconds: float) -> str:
    """A length of time in words: '45 s', '12 min', '3.0 h'."""
    if seconds < 120:
        return f"{seconds:.0f} s"
    return f"{seconds / 60:.0f} min" if seconds < 7200 else f"{seconds / 3600:.1f} h"
