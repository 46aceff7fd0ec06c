"""The supply wire beyond its key positions: its drop under load, and the range that the unit's sheet states."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.evidence.keys import Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict, judge
from backprobe.limits.lookup import limit
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import PROOF, Check, SlotName
from backprobe.stages.probe.spread import spread_V
from backprobe.stages.probe.wires import Wire

LOAD_FROM_A, LOAD_TO_A = 0.8, 3.0  # what 'about 1 to 2 A' takes in; common practice, no source
LOAD_IT = (
    "read it without and with a load of about 1 to 2 A (a test lamp) at one key position; write the load as load_A"
)
NAME_FIRST = "name its circuit first: a lamp on a restraint circuit can set it off; then read it without and with load"
RECORD_IT = "record {wire} through a crank with a fast recorder, if one can be had"
SURE_DIGITS = 6  # of a difference of two readings, in V: what floats add behind them must decide nothing
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
    low, high = (None if end is None else round(end, SURE_DIGITS) for end in (seen.low, seen.high))
    value = round(seen.value, SURE_DIGITS)
    verdict = judge(rule, value, low=low, high=high)
    return Finding(
        id=rule.id,
        stage=Stage.PROBE,
        what=what,
        verdict=verdict,
        because=because,
        next=None if verdict is Verdict.HOLDS else then,
        value=value,
        low=low,
        high=high,
        unit=rule.unit,
        limit=rule,
    )


def loaded_drop(wire: Wire, setup: Setup, *, named: bool) -> Finding:
    """How far the supply falls under a load of about 1 to 2 A [V]; open until one loaded reading was given.

    A load is asked for only where the circuit was `named`: a lamp can set off a restraint circuit (common practice, no
    source).
    """
    rule = limit("supply_loaded_drop", system_V=setup.system_V)
    what = f"{wire.name}: drop under load"
    pairs = loaded_pairs(wire)
    if not pairs:
        return _no_drop(rule, what, because=_why_no_drop(wire), named=named)
    bare, loaded = max(pairs, key=lambda pair: pair[0].volts - pair[1].volts)
    drop_V, spread_V = bare.volts - loaded.volts, drop_spread_V(bare, loaded, meter=setup.meter)
    because = f"{bare.typed} V without load, {loaded.typed} V at {loaded.load_A:g} A, key {loaded.key}"
    if drop_V + spread_V < 0.0:  # no load lifts a supply: one of the two is wrong, or the battery was charged between
        return _no_drop(rule, what, because=f"{because}: higher under load, so they are no pair", named=named)
    return against(rule, Range(drop_V, drop_V - spread_V, drop_V + spread_V), what=what, because=because, then=MEND_IT)


def loaded_pairs(wire: Wire) -> list[tuple[Reading, Reading]]:
    """The wire's readings under a load that tells, each behind the one without load that it is compared with."""
    return [(bare, loaded) for loaded in wire.belief.readings if _is_load(loaded) for bare in _unloaded(wire, loaded)]


def drop_spread_V(bare: Reading, loaded: Reading, *, meter: Meter) -> float:
    """How far the difference of two readings may be off either way [V].

    The percentage of a meter's error is the same for two readings of nearly the same volts and cancels in their
    difference; the counts do not.
    """
    return meter.counts * (bare.count_V + loaded.count_V) + abs(bare.volts - loaded.volts) * meter.percent / 100.0


def _no_drop(rule: Limit, what: str, *, because: str, named: bool) -> Finding:
    return Finding(
        id=rule.id,
        stage=Stage.PROBE,
        what=what,
        verdict=Verdict.OPEN,
        because=because,
        next=LOAD_IT if named else NAME_FIRST,
        unit=rule.unit,
        limit=rule,
    )


def _why_no_drop(wire: Wire) -> str:
    """What is missing before the drop can be told."""
    loaded = [reading for reading in wire.belief.readings if reading.load_A]
    if any(_is_load(reading) for reading in loaded):
        return "no reading without load at the key position of the loaded one"
    if loaded:
        return f"read under {loaded[-1].load_A:g} A; about 1 to 2 A are wanted, with the engine not cranking"
    return "no reading under load yet"


def _is_load(reading: Reading) -> bool:
    """Whether a reading was taken under a load that tells; in the crank the starter pulls the level about."""
    return reading.load_A is not None and LOAD_FROM_A <= reading.load_A <= LOAD_TO_A and reading.key is not Key.CRANK


def _unloaded(wire: Wire, loaded: Reading) -> tuple[Reading, ...]:
    """The reading without load to compare with, off the same meter: the last before it in the table, or the first."""
    sound = [reading for reading in wire.belief.readings if reading not in wire.belief.doubtful]
    same = [r for r in sound if not r.load_A and (r.key, r.capture) == (loaded.key, loaded.capture)]
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
    """The lowest level at any position against the unit's lowest: it proves nothing before the crank was measured."""
    fit = wire.fits[SlotName.SUPPLY]
    measured = [check for check in fit.checks if check.value_V is not None]
    if least_V is None or not measured:
        return
    check = min(measured, key=_lowest_V)
    rule = unit_limit("supply_unit_least", least_V, side=Side.AT_LEAST)
    seen = Range(check.value_V or 0.0, check.low_V, check.high_V)
    in_crank = check is fit.crank
    what = f"{wire.name}: the unit's own lowest supply" + (", in the crank" if in_crank else "")
    why = "below it the unit restarts at every start" if in_crank else f"lowest with key {check.key}"
    then = RECORD_IT.format(wire=wire.name) if in_crank and rule.allows(seen.value) else ANOTHER
    found = against(rule, seen, what=what, because=why, then=then)
    waiting = fit.crank is not None and fit.crank.capture not in PROOF
    if found.verdict is Verdict.FAILS or not waiting:
        yield found


def _lowest_V(check: Check) -> float:
    return min((value for value in (check.low_V, check.value_V) if value is not None), default=0.0)


def _most(wire: Wire, setup: Setup, *, most_V: float | None) -> Iterator[Finding]:
    read = [reading for reading in wire.belief.readings if reading not in wire.belief.doubtful]
    if most_V is not None and read:
        highest = max(read, key=lambda reading: reading.volts)
        rule = unit_limit("supply_unit_most", most_V, side=Side.AT_MOST)
        what = f"{wire.name}: the unit's own highest supply"
        yield against(rule, shown(highest, setup), what=what, because=f"highest with key {highest.key}", then=ANOTHER)


def shown(reading: Reading, setup: Setup) -> Range:
    """A reading with the range that the meter's accuracy allows."""
    spread = spread_V(reading, setup.meter)
    return Range(reading.volts, reading.volts - spread, reading.volts + spread)


def unit_limit(name: str, value_V: float, *, side: Side) -> Limit:
    """A limit that the unit's own sheet states [V]."""
    return Limit(name, value_V, "V", side, "the unit's sheet", Standing.PUBLISHED)
