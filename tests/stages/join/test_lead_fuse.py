"""The fuse at the tap on its real loop."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import (
    DOOR,
    GROUND,
    ON_RED,
    POWER,
    TOLD,
    UNIT,
    built,
    found,
    told,
    verdicts,
)

from backprobe.evidence.join_sheet import Drop
from backprobe.findings import Verdict
from backprobe.physics.span import Span
from backprobe.stages.join.tap_bound import MEASURE_TAP, OWN_SAG, TapBound
from backprobe.stages.join.wiring_case import WiringCase


def test_an_over_fused_thin_lead_fails():
    """20 A on 0.35 mm²: the wire carries less than 27 A for good, and a short damages it before the fuse opens."""
    thin = replace(UNIT, leads=(replace(POWER, mm2=0.35), GROUND, DOOR))
    findings = verdicts(replace(built(replace(ON_RED, fuse_A=20.0)), unit=thin))
    assert findings["join_supply_wire_over_fuse"] is Verdict.FAILS
    assert findings["join_supply_fuse_clears"] in (Verdict.FAILS, Verdict.THIN)
    assert findings["join_selectivity"] is Verdict.FAILS


def test_a_loop_too_resistive_to_clear_is_said():
    """5 A behind 2 V at 1 A of vehicle wiring: 12 V drive less than 135 % of the fuse."""
    short = found(replace(told(tap=Drop(2000, 1)), unit=UNIT))
    case = built(replace(ON_RED, fuse_A=5.0))
    weak = found(replace(case, sheet=replace(case.sheet, join=replace(TOLD, tap=Drop(2000, 1)))))
    assert short["join_supply_fuse_clears"].verdict in (Verdict.HOLDS, Verdict.THIN)
    assert weak["join_supply_fuse_clears"].verdict is Verdict.FAILS
    assert "too resistive" in weak["join_supply_fuse_clears"].because


def test_the_type_of_the_fuse_is_the_one_that_was_written():
    """30 A on 0.75 mm²: type E opens later than type C, and the same short is worse behind it."""
    by_type = {kind: found(built(replace(ON_RED, fuse_A=30.0, fuse_type=kind))) for kind in ("C", "E")}
    usual = found(built(replace(ON_RED, fuse_A=30.0)))
    name = "join_supply_fuse_clears"
    assert usual[name] == by_type["C"][name]
    assert "type E" in by_type["E"][name].what
    late, soon = by_type["E"][name].high, by_type["C"][name].high
    assert late is not None
    assert soon is not None
    assert late > soon


def test_a_type_that_is_not_made_so_is_asked_for():
    """Miniature fuses end at 30 A."""
    because = found(built(replace(ON_RED, fuse_A=40.0, fuse_type="F")))["join_fuse_told"].because
    assert "the fuse of 40 A at 'power' opens: no blade fuse of type F is made so" in because


def bounded(case: WiringCase, most_ohm: float) -> WiringCase:
    """The case with nothing measured at the tap, and a bound out of two readings in its stead."""
    join = replace(case.sheet.join, tap=None)
    bound = TapBound(ohm=Span(0.005, 0.8 * most_ohm, most_ohm), because=f"from the readings of Red; {OWN_SAG}")
    return replace(case, sheet=replace(case.sheet, join=join), tap_read=bound)


def test_two_readings_stand_for_the_drop_at_the_tap():
    """77 mΩ at most instead of 37 mΩ as measured: the 3 A fuse clears as surely, and nobody is asked again."""
    findings = found(bounded(told(), 0.0774))
    assert "join_fuse_told" not in findings
    assert "join_fuse_told" in found(told(tap=None))
    clears = findings["join_supply_fuse_clears"]
    assert clears.verdict is Verdict.HOLDS
    assert clears.because.endswith(f"from the readings of Red; {OWN_SAG}")
    assert "readings" not in findings["join_supply_wire_over_fuse"].because  # the loop does not matter to it


def test_a_bound_that_is_too_much_fails_nothing():
    """5 A behind 2 Ω by the readings: 12 V / 2 Ω < 135 % of 5 A, but the battery may have sagged by most of that."""
    case = built(replace(ON_RED, fuse_A=5.0))
    clears = found(bounded(case, 2.5))["join_supply_fuse_clears"]
    assert (clears.verdict, clears.next) == (Verdict.OPEN, MEASURE_TAP)


def test_what_fails_at_any_loop_fails_beside_a_bound():
    """20 A on 0.35 mm²: the wire is too thin, whatever lies before the tap."""
    thin = replace(UNIT, leads=(replace(POWER, mm2=0.35), GROUND, DOOR))
    case = replace(built(replace(ON_RED, fuse_A=20.0)), unit=thin)
    assert verdicts(bounded(case, 0.0774))["join_supply_wire_over_fuse"] is Verdict.FAILS
