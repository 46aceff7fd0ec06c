"""Does a channel hold through the crank? The lowest value against the limit of a constant supply.

What was sampled fast enough is uncertain by the meter's accuracy alone. At steps up to 100 ms the inrush trough may lie
deeper than the lowest sample, by as much as a model says. Slower still, a shown dip inside the limit is `thin`, and
where no sample fell although the engine was started the answer is `open`. A value outside the limit always disproves.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from backprobe.evidence.recording import Channel
from backprobe.findings import Finding, Limit, Stage, Verdict, judge, worst
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.limits.lookup import limit
from backprobe.physics.meter import accuracy_V
from backprobe.stages.probe.recording.cranks import LIKELY, SURE
from backprobe.stages.probe.recording.in_crank import InCrank
from backprobe.stages.probe.recording.sampling import limit_s
from backprobe.stages.probe.setup import Setup

Hidden = Callable[[float, float], float]
NOTICEABLE_V = 0.8  # 12 V system: a crank that pulls the supply down by less was not sampled
RECORD_AGAIN = "record the start again, {per_s:.0f} rows a second or faster"
RECORD_A_START = "record a start: key off, on, crank, then ten seconds of running"


@dataclass(frozen=True, slots=True)
class Judged:
    """One crank's lowest value, the range of true minima [V], and how that stands to the limit."""

    value_V: float
    low_V: float | None
    high_V: float
    verdict: Verdict
    because: str


def deeper_V(shown_V: float, rest_V: float) -> float:
    """How much deeper than the lowest sample the inrush trough may lie [V], told from the starting profile alone.

    The profile's trough lies up to 1.6 times as deep below rest as its plateau (12 V level I: 4.0 V against 2.5 V);
    the lowest sample is taken for the plateau's. Our own model; a better one can be given to `dip`.

    >>> round(deeper_V(10.4, 12.4), 2)
    1.2
    """
    figures = [row.figures for row in STARTING_PROFILES[12].values()]
    ratio = max((row["rest_V"] - row["trough_V"]) / (row["rest_V"] - row["plateau_V"]) for row in figures)
    return (ratio - 1.0) * max(0.0, rest_V - shown_V)


def dip(channel: Channel, cranks: Sequence[InCrank], *, setup: Setup, hidden_V: Hidden = deeper_V) -> Finding:
    """The finding on a channel over all cranks in which it was recorded; the worst of them counts."""
    rule = limit("supply_in_crank", system_V=setup.system_V)
    found = [_judged(channel, each, rule=rule, setup=setup, hidden_V=hidden_V) for each in cranks]
    seen = [each for each in found if each is not None]
    if not seen:
        why = "the channel held no value in the crank" if cranks else "no crank was found in the recording"
        return _finding(
            channel, rule, shown=Judged(math.nan, None, math.nan, Verdict.OPEN, why), following=RECORD_A_START
        )
    worst_of = worst(each.verdict for each in seen)
    shown = min((each for each in seen if each.verdict is worst_of), key=lambda each: each.value_V)
    again = RECORD_AGAIN.format(per_s=1.0 / limit_s(setup.system_V))
    following = again if shown.verdict in (Verdict.THIN, Verdict.OPEN) else None
    return _finding(channel, rule, shown=shown, following=following)


def _judged(channel: Channel, found: InCrank, *, rule: Limit, setup: Setup, hidden_V: Hidden) -> Judged | None:
    """One crank's lowest value against the limit; None where no row held a value."""
    value_V = found.rest_V if found.dead_before else found.lowest_V
    if value_V is None:
        return None
    meter = setup.meter
    spread_V = accuracy_V(value_V, percent=meter.percent, counts=meter.counts, count_V=10.0**-channel.digits)
    high_V = value_V + spread_V
    if found.dead_before:
        why = f"dead before the crank ({value_V:.2f} V): no constant supply"
        return Judged(
            value_V, value_V - spread_V, high_V, judge(rule, value_V, low=value_V - spread_V, high=high_V), why
        )
    if not rule.allows(value_V):
        why = f"fell to {value_V:.2f} V in the crank; a sample outside the limit disproves at any speed of sampling"
        return Judged(value_V, value_V - spread_V, high_V, Verdict.FAILS, why)
    if found.crank.sure < LIKELY:
        why = f"whether this was a crank is not sure ({found.crank.sure:.2f}); lowest {value_V:.2f} V in it"
        return Judged(value_V, None, high_V, Verdict.OPEN, why)
    if found.sampling.slow or (found.rest_V is None and not found.sampling.fast_enough):
        verdict, why = _slow(found, value_V, noticeable_V=NOTICEABLE_V * setup.system_V / 12)
        return Judged(value_V, None, high_V, verdict, why)
    deeper = 0.0 if found.sampling.fast_enough else max(0.0, hidden_V(value_V, found.rest_V or value_V))
    low_V = max(min(0.0, value_V), value_V - spread_V - deeper)
    verdict, why = judge(rule, value_V, low=low_V, high=high_V), _inside(found, value_V, low_V=low_V)
    if verdict is Verdict.HOLDS and found.crank.sure < SURE:
        verdict, why = Verdict.THIN, f"{why}; whether this was a crank is not sure ({found.crank.sure:.2f})"
    return Judged(value_V, low_V, high_V, verdict, why)


def _inside(found: InCrank, value_V: float, *, low_V: float) -> str:
    """The words for a value inside the limit, sampled at least every 100 ms."""
    step_ms = found.sampling.step_s * 1000
    if found.sampling.fast_enough:
        return f"lowest {value_V:.2f} V in the crank, sampled every {step_ms:.1f} ms: the whole dip was seen"
    return (
        f"lowest {value_V:.2f} V in the crank, sampled every {step_ms:.0f} ms: the inrush trough may have been missed "
        f"and reach down to {low_V:.2f} V (our own model)"
    )


def _slow(found: InCrank, value_V: float, *, noticeable_V: float) -> tuple[Verdict, str]:
    """The verdict on a value inside the limit that was sampled too slowly to prove anything."""
    pace = f"one value every {found.sampling.step_s:.2f} s" if found.sampling.time_known else "its time is not known"
    slow = f"sampled too slowly to prove a dip ({pace})"
    if found.rest_V is not None and found.rest_V - value_V >= noticeable_V:
        return Verdict.THIN, f"{slow}: the lowest value shown, {value_V:.2f} V, is inside the limit"
    return Verdict.OPEN, f"{slow}: the engine was cranked, but no sample fell noticeably (lowest {value_V:.2f} V)"


def _finding(channel: Channel, rule: Limit, *, shown: Judged, following: str | None) -> Finding:
    """The finding with its figures; without a value, they are left out."""
    measured = not math.isnan(shown.value_V)
    return Finding(
        id=f"recording.dip.{channel.name}",
        stage=Stage.PROBE,
        what=f"lowest voltage of {channel.name} while the starter turns",
        verdict=shown.verdict,
        because=shown.because,
        next=following,
        value=shown.value_V if measured else None,
        low=shown.low_V,
        high=shown.high_V if measured else None,
        unit="V",
        limit=rule,
    )
