"""Figures of different units are never added, taken from one another or compared; each finding has its limit's unit."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.parked import parked
from tests.samples.wiring import GOOD, ON_RED, TOLD, built

from backprobe.evidence.join_sheet import Drop, SignalLevels
from backprobe.evidence.parked_sheet import Typed
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.stages.join.join import join_findings
from backprobe.stages.parked.findings import parked_findings

UNITS = frozenset(
    [
        *("V", "mV", "A", "mA", "Ah", "ohm", "mohm", "N", "W", "m", "mm", "mm2", "km", "kmh", "rpm", "Hz", "deg"),
        *("s", "ms", "min", "h", "days", "years", "C", "K", "percent", "dB", "dBHz", "dBm"),
    ]
)
# a difference of two °C is a K; a level less a loss in dB stays a level
LIKE = {"C": "temperature", "K": "temperature", "dB": "level", "dBHz": "level", "dBm": "level"}


def unit_of(node: ast.expr) -> str | None:
    """The unit that a name says, as in `length_m` or `joint.drop_mV`; None for one that says none."""
    if isinstance(node, ast.UnaryOp):
        return unit_of(node.operand)
    name = node.id if isinstance(node, ast.Name) else node.attr if isinstance(node, ast.Attribute) else ""
    stem, _, last = name.rpartition("_")
    return LIKE.get(last, last) if stem and last in UNITS else None


def mixed(source: str) -> Iterator[str]:
    """The places at which two units meet in a sum, a difference or a comparison."""
    for node in ast.walk(ast.parse(source)):
        pairs: list[tuple[ast.expr, ast.expr]] = []
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
            pairs = [(node.left, node.right)]
        elif isinstance(node, ast.Compare):
            pairs = list(zip([node.left, *node.comparators[:-1]], node.comparators, strict=True))
        for left, right in pairs:
            units = unit_of(left), unit_of(right)
            if None not in units and units[0] != units[1]:
                yield f"line {node.lineno}: {ast.unparse(left)} and {ast.unparse(right)}"


def test_no_sum_and_no_comparison_mixes_units(sources: dict[str, str]) -> None:
    """Volts are not added to millivolts, nor seconds held against minutes: names say what they hold."""
    faults = [f"{path} {fault}" for path, source in sources.items() for fault in mixed(source)]
    assert not faults, "\n".join(faults)


def test_a_mix_is_seen() -> None:
    """In sums, differences and chains of comparisons; through attributes and minus signs; not in products."""
    assert len(list(mixed("a = drop_V + joint.drop_mV"))) == 1
    assert len(list(mixed("a = -drop_V < 0 <= after_min <= wait_s"))) == 1
    assert len(list(mixed("a = hot_C - cold_K"))) == 0
    assert list(mixed("a = drop_mV / 1000.0 + drop_V; b = load_A * loop_ohm - drop_V; c = low_V < high_V")) == []


@settings(max_examples=60, deadline=None)
@given(st.floats(0.1, 30), st.floats(0, 900), st.floats(0, 14), st.floats(0, 1), st.floats(11.5, 12.9))
def test_every_finding_has_the_unit_of_its_limit(
    length_m: float, drop_mV: float, on_V: float, fall_V: float, rest_V: float
) -> None:
    """Whatever was read: value, range and limit of a finding are one unit, and the margin is their difference."""
    case = built(replace(ON_RED, length_m=length_m, drop_mV=drop_mV, drop_A=2.0, hottest_C=70.0))
    levels = (SignalLevels(lead="door", on_V=on_V, off_V=0.0),)
    told = replace(TOLD, ground=Drop(drop_mV, 2), levels=levels)
    case = replace(
        case, sheet=replace(case.sheet, join=told, supply_pair=SupplyPair(12.6, 12.6 - fall_V, 0.01)), unit=GOOD.unit
    )
    two = parked(system_V=24, rest_V=(Typed(rest_V, 0.01), Typed(12.6, 0.01)))
    found = [each for each in (*join_findings(case), *parked_findings(two)) if each.limit is not None]
    assert len(found) > 8
    for each in found:
        assert each.limit is not None
        assert each.unit == each.limit.unit, each.id
        if each.value is not None:
            assert each.margin == round(each.limit.margin(each.value), each.digits)
