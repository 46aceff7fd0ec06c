"""What the unit's own supply says of the whole way: how far it falls from idle to transmitting.

The battery's volts and the unit's own diode cancel in the difference. What is left is the current's known step times
the resistance of tap, fuse, lead, joints and ground: a bad joint shows without a meter at it.
"""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.unit_sheet import Purpose
from backprobe.findings import Finding, Limit, Stage, Verdict, judge
from backprobe.limits.lookup import limit
from backprobe.physics.ground_drop import step_ohm
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.lead_fuse import fuse_at
from backprobe.stages.join.measured import together
from backprobe.stages.join.path import to_unit_ohm
from backprobe.stages.join.policy import tightened
from backprobe.stages.join.wiring_case import WiringCase, tap_ohm
from backprobe.stages.prove.supply import Supply, supply_of

STEP_ID = "join_idle_transmit"
LIMIT_NAME = "supply_loaded_drop"
STEP_SURE_TO = 0.1  # common practice, no source: the currents of a unit's sheet
DIGITS = 3
FIND_IT = "read the drop across tap, fuse, each joint and ground while the unit transmits; make the worst joint again"
AGAIN = "read both again, one right after the other, with the engine off and nothing else switched"
ROSE = "the supply rose while the unit drew more: the vehicle's own volts moved between the two readings"
FINER = "read both again with one more digit at the unit's plug, or read the drop under a load of 1 A or more"


def idle_transmit(case: WiringCase) -> Iterator[Finding | str]:
    """The finding on the supply seen twice; nothing where nobody saw it so, what is missing where the step is."""
    pair = case.sheet.supply_pair
    if pair is None or not list(case.joined(Purpose.SUPPLY)):
        return
    rule = limit(LIMIT_NAME, system_V=case.sheet.vehicle.system_V)
    supply = supply_of((), pair=pair, sheet=case.unit, limit=rule)
    step_A = step_of(case)
    if step_A is None or supply.change_V is None or supply.u_V is None:
        yield "idle_mA and transmit_mA, in the unit's sheet: by how much its current rises when it transmits"
    else:
        yield _by_policy(case, _finding(case, rule, pair=pair, ohm=loop_of(supply, step_A)))


def step_of(case: WiringCase) -> Span | None:
    """By how much the current rises when the unit transmits [A]; None where its sheet does not say."""
    supply = case.unit.supply
    if supply.idle_mA is None or supply.transmit_mA is None or supply.transmit_mA <= supply.idle_mA:
        return None
    step_A = (supply.transmit_mA - supply.idle_mA) / 1000.0
    return Span(step_A * (1.0 - STEP_SURE_TO), step_A, step_A * (1.0 + STEP_SURE_TO))


def loop_of(supply: Supply, step_A: Span) -> Span:
    """The resistance that the change stands for [Ω]: by twice its standard uncertainty and the ends of the step."""
    assert supply.change_V is not None
    assert supply.u_V is not None
    change_V, spread_V = supply.change_V, 2.0 * supply.u_V
    return step_ohm(Span(change_V - spread_V, change_V, change_V + spread_V), step_A=step_A)


def _finding(case: WiringCase, rule: Limit, *, pair: SupplyPair, ohm: Span) -> Finding:
    """At 1 A, as the limit has it, volts and ohms are the same figure."""
    low, value, high = (round(figure, DIGITS) for figure in (ohm.low, ohm.likely, ohm.high))
    known, rose = _known(case), ohm.high <= 0.0
    more = known is not None and ohm.low > known.high
    verdict = Verdict.OPEN if rose else judge(rule, value, low=low, high=high)
    if more and verdict is Verdict.HOLDS:
        verdict = Verdict.THIN
    return Finding(
        id=STEP_ID,
        stage=Stage.JOIN,
        what="The supply from idle to transmitting, taken at 1 A",
        verdict=verdict,
        because=ROSE if rose else _because(pair, ohm, known=known, more=more),
        next=None if verdict is Verdict.HOLDS else AGAIN if rose else FIND_IT if more else _next(verdict),
        value=value,
        low=low,
        high=high,
        unit="V",
        digits=DIGITS,
        limit=rule,
    )


def _next(verdict: Verdict) -> str:
    return FINER if verdict is Verdict.THIN else FIND_IT


def _because(pair: SupplyPair, ohm: Span, *, known: Span | None, more: bool) -> str:
    change_mV = 1000.0 * (pair.idle_V - pair.transmit_V)
    seen = f"{pair.idle_V:g} V idle, {pair.transmit_V:g} V transmitting: {said(change_mV)} mV, which is {_mohm(ohm)}"
    if known is None:
        return seen
    end = ": something on the way resists more than that" if more else ""
    return f"{seen}; by what was read and by the leads it should be {_mohm(known)}{end}"


def _mohm(ohm: Span) -> str:
    low, likely, high = (said(1000.0 * figure) for figure in (ohm.low, ohm.likely, ohm.high))
    return f"{likely} mΩ ({low} to {high})"


def _known(case: WiringCase) -> Span | None:
    """What tap, joints, fuse, leads and ground come to by all that is known of them [Ω]."""
    for lead, joint in case.joined(Purpose.SUPPLY):
        through = to_unit_ohm(case, lead, joint=joint, fuse=fuse_at(joint))
        if through is not None:
            return together(tap_ohm(case), through)
    return None


def _by_policy(case: WiringCase, found: Finding) -> Finding:
    return tightened(found, None if case.policy is None else case.policy.loaded_drop_V, policy=case.policy)
