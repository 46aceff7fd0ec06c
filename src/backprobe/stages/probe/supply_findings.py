"""The supply wire beyond its key positions: its drop under load, and the range that the unit's sheet states."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.reading import Reading
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.lookup import limit
from backprobe.physics.meter import accuracy_V
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import Wire

LOAD_FROM_A, LOAD_TO_A = 0.8, 3.0  # what 'about 1 to 2 A' takes in; common practice, no source
LOAD_IT = "load the supply wire with about 1 to 2 A (a test lamp) and write that reading with its load_A"
ANOTHER = "fit a unit made for this vehicle's system, or find a better feed"
MEND_IT = "find a better feed, or clean the joint and measure again"


@dataclass(frozen=True, slots=True)
class Range:
    """A shown value and the range of true values that it allows."""

    value: float
    low: float | None
    high: float | None


def against(rule: Limit, seen: Range, *, what: str, because: str, then: str) -> Finding:
    """The finding on a range against a limit; `then` is what to do unless it holds."""
    verdict = judge(rule, seen.value, low=seen.low, high=seen.high)
    return Finding(
        id=rule.id,
        stage=Stage.PROBE,
        what=what,
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=seen.value,
        low=seen.low,
        high=seen.high,
        unit=rule.unit,
        limit=rule,
    )


def loaded_drop(wire: Wire, setup: Setup) -> Finding:
    """How far the supply falls under a load of about 1 to 2 A [V]; open until one loaded reading was given.

    The percentage of a meter's error is the same for two readings of nearly the same volts and cancels in their
    difference; the counts do not.
    """
    rule = limit("supply_loaded_drop", system_V=setup.system_V)
    what = f"{wire.name}: drop under load"
    pairs = [(bare, loaded) for loaded in wire.belief.readings if _is_load(loaded) for bare in _unloaded(wire, loaded)]
    if not pairs:
        because = "no reading under load yet, beside one without load at the same key position"
        return Finding(
            id=rule.id,
            stage=Stage.PROBE,
            what=what,
            verdict=Verdict.OPEN,
            because=because,
            next=LOAD_IT,
            unit=rule.unit,
            limit=rule,
        )
    bare, loaded = max(pairs, key=lambda pair: pair[0].volts - pair[1].volts)
    drop_V = bare.volts - loaded.volts
    spread_V = setup.meter.counts * (bare.count_V + loaded.count_V) + abs(drop_V) * setup.meter.percent / 100.0
    because = f"{bare.typed} V without load, {loaded.typed} V at {loaded.load_A:g} A, key {loaded.key}"
    return against(rule, Range(drop_V, drop_V - spread_V, drop_V + spread_V), what=what, because=because, then=MEND_IT)


def _is_load(reading: Reading) -> bool:
    return reading.load_A is not None and LOAD_FROM_A <= reading.load_A <= LOAD_TO_A


def _unloaded(wire: Wire, loaded: Reading) -> tuple[Reading, ...]:
    """The reading without load to compare with, off the same meter: the last before it in the table, or the first."""
    same = [r for r in wire.belief.readings if not r.load_A and (r.key, r.capture) == (loaded.key, loaded.capture)]
    typed = [reading for reading in same if (reading.line is None) == (loaded.line is None)]
    before = [reading for reading in typed if (reading.line or 0) <= (loaded.line or 0)]
    return tuple(before[-1:] or typed[:1])


def unit_range(wire: Wire, setup: Setup, *, least_V: float | None, most_V: float | None) -> Iterator[Finding]:
    """The supply against the range that the unit's sheet states: the end with less room for its size counts."""
    ends = [*_least(wire, least_V), *_most(wire, setup, most_V=most_V)]
    if ends:
        yield min(ends, key=_relative_room)


def _relative_room(finding: Finding) -> float:
    limit = finding.limit
    values = [value for value in (finding.low, finding.high) if value is not None]
    return 0.0 if limit is None else min(limit.margin(value) for value in values) / limit.value


def _least(wire: Wire, least_V: float | None) -> Iterator[Finding]:
    crank = wire.fits[SlotName.SUPPLY].crank
    if least_V is not None and crank is not None and crank.value_V is not None:
        rule = unit_limit("supply_unit_least", least_V, side=Side.AT_LEAST)
        seen = Range(crank.value_V, crank.low_V, crank.high_V)
        what = f"{wire.name}: the unit's own lowest supply, in the crank"
        yield against(rule, seen, what=what, because="below it the unit restarts at every start", then=ANOTHER)


def _most(wire: Wire, setup: Setup, *, most_V: float | None) -> Iterator[Finding]:
    read = [reading for reading in wire.belief.readings if reading not in wire.belief.doubtful]
    if most_V is not None and read:
        highest = max(read, key=lambda reading: reading.volts)
        rule = unit_limit("supply_unit_most", most_V, side=Side.AT_MOST)
        what = f"{wire.name}: the unit's own highest supply"
        yield against(rule, shown(highest, setup), what=what, because=f"highest with key {highest.key}", then=ANOTHER)


def shown(reading: Reading, setup: Setup) -> Range:
    """A reading with the range that the meter's accuracy allows."""
    meter = setup.meter
    spread = accuracy_V(reading.volts, percent=meter.percent, counts=meter.counts, count_V=reading.count_V)
    return Range(reading.volts, reading.volts - spread, reading.volts + spread)


def unit_limit(name: str, value_V: float, *, side: Side) -> Limit:
    """A limit that the unit's own sheet states [V]."""
    return Limit(name, value_V, "V", side, "the unit's sheet", Standing.PUBLISHED)
