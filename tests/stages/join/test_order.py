"""Where and how the vehicle was tapped."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import GOOD, ON_RED, built, found, told

from backprobe.evidence.job_sheet import NamedWire
from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.joint import Method
from backprobe.findings import Verdict


def test_a_leased_vehicle_is_not_cut():
    """A butt connector in a wire that must be given back as it was; a fuse tap leaves it whole."""
    assert found(told(reversible=True))["join_supply_order"].verdict is Verdict.FAILS
    tap = built(replace(ON_RED, method=Method.FUSE_TAP))
    tap = replace(tap, sheet=replace(tap.sheet, join=replace(tap.sheet.join, reversible=True)))
    assert found(tap)["join_supply_order"].verdict is Verdict.HOLDS
    untold = replace(tap, sheet=replace(tap.sheet, joints=(replace(tap.sheet.joints[0], undo=None),)))
    assert "undo of 'power'" in found(untold)["join_order_told"].because


def test_the_body_builder_connector_comes_first():
    """It needs no reason, and may be cut even in a leased vehicle: it is there for that."""
    wire = NamedWire(name="Red", circuits=("body-builder connector X12, permanent supply",))
    case = told(reversible=True, why_spliced=None)
    case = replace(case, sheet=replace(case.sheet, wires=(wire,)))
    order = found(case)["join_supply_order"]
    assert (order.verdict, order.because.startswith("the body-builder connector")) == (Verdict.HOLDS, True)


def test_a_splice_needs_a_reason_and_a_place():
    """Near the module that the wire feeds; far from it is thin."""
    assert found(GOOD)["join_supply_order"].because.startswith("a splice near the module: no free way")
    assert "why_spliced" in found(told(why_spliced=None))["join_order_told"].because
    assert "near_module of 'power'" in found(built(replace(ON_RED, near_module=None)))["join_order_told"].because
    assert found(built(replace(ON_RED, near_module=False)))["join_supply_order"].verdict is Verdict.THIN


@pytest.mark.parametrize(("key", "words"), [("pierced", "insulation was pierced"), ("spread", "cavity was spread")])
def test_probing_leaves_wires_and_connectors_whole(key: str, words: str):
    """Back-probe; never pierce, never spread."""
    hurt = found(told(**{key: True}))["join_pierced"]
    assert (hurt.verdict, words in hurt.because) == (Verdict.FAILS, True)
    assert "join_pierced" not in found(told(**{key: False}))


def test_two_circuits_are_never_bridged():
    """By what was said of an input's sources; by two known wires in one joint as well."""
    level = SignalLevels(lead="door", sources=("Violet", "Green"), isolation="none")
    assert found(told(levels=(level,)))["join_bridged"].verdict is Verdict.FAILS
    apart = replace(level, isolation="diode")
    assert found(told(levels=(apart,)))["join_bridged"].verdict is Verdict.HOLDS
    both = built(replace(ON_RED, wire="Red + Blue"))
    both = replace(both, sheet=replace(both.sheet, wires=(NamedWire(name="Red"), NamedWire(name="Blue"))))
    assert found(both)["join_bridged"].verdict is Verdict.FAILS
