"""Dangerous-goods bodies: is a wire that is to be tapped dead once the battery switch is open?

One that is still live is fed from upstream of the switch, and stays live where the body must be without power. That
needs consent. The limit of a dead wire is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from backprobe.evidence.keys import Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.findings import Finding, Stage, Verdict, judge
from backprobe.limits.lookup import limit
from backprobe.physics.meter import accuracy_V

MEASURE = "measure {wire} with the battery switch open, against the frame"
NO_TAP = "do not tap {wire} without consent: find a wire behind the battery switch, or write who consented"
SURE_DIGITS = 6  # of volts: what floats add behind them must decide nothing


@dataclass(frozen=True, slots=True)
class Tapped:
    """A vehicle wire that is meant for a lead of the unit ('supply', 'ignition')."""

    slot: str
    wire: str


def upstream(
    tapped: Tapped, readings: Sequence[Reading], *, system_V: int, meter: Meter, consent: str | None
) -> Finding:
    """The finding on one wire with key `isolated`; open where it was not measured so.

    Its id begins with the slot, so that no wire is chosen while it fails or is open.
    """
    rule = limit("dead", system_V=system_V)
    bare = Finding(
        id=f"{tapped.slot}_isolated",
        stage=Stage.PROBE,
        what=f"{tapped.wire}: dead with the battery switch open",
        verdict=Verdict.OPEN,
        because="not measured yet with the battery switch open; on a dangerous-goods body it must be dead then",
        next=MEASURE.format(wire=tapped.wire),
        unit=rule.unit,
        limit=rule,
    )
    shown = [r for r in readings if r.wire == tapped.wire and r.key is Key.ISOLATED]
    if not shown:
        return bare
    highest = max(shown, key=lambda reading: reading.volts)
    volts, spread_V = highest.volts, _spread_V(highest, meter)
    low_V, high_V = (round(end, SURE_DIGITS) for end in (volts - spread_V, volts + spread_V))
    verdict = judge(rule, volts, low=low_V, high=high_V)
    measured = replace(bare, verdict=verdict, value=volts, low=low_V, high=high_V, because="dead", next=None)
    if verdict is Verdict.HOLDS:
        return measured
    return _live(measured, tapped.wire, consent=consent)


def _spread_V(reading: Reading, meter: Meter) -> float:
    return accuracy_V(reading.volts, percent=meter.percent, counts=meter.counts, count_V=reading.count_V)


def _live(measured: Finding, wire: str, *, consent: str | None) -> Finding:
    """A wire that is not surely dead: with consent it may be tapped, and then it is held against no limit."""
    if consent:
        said = f"{measured.value:.2f} V with the switch open: upstream of it, by consent of {consent}"
        return replace(measured, verdict=Verdict.HOLDS, because=said, limit=None)
    why = "live with the battery switch open: upstream of it, and nobody is said to have consented"
    then = NO_TAP if measured.verdict is Verdict.FAILS else MEASURE + " again, with a more exact meter"
    return replace(measured, because=why, next=then.format(wire=wire))
