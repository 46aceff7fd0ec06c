"""A fuse against its wire, its breaking capacity and its load."""

import pytest

from backprobe.findings import Standing, Verdict
from backprobe.physics.span import Span, exactly
from backprobe.stages.join.fuse_findings import breaking, load, wire_over_fuse
from backprobe.stages.join.fuse_opening import fuse_of


def test_the_wire_must_carry_a_third_more_than_its_fuse():
    """10 A × 1.35 = 13.5 A against 15.36 to 15.49 A holds with 1.99 A to spare; common practice decides and says so."""
    finding = wire_over_fuse(fuse_of(10), Span(15.36, 15.49, 15.49), ambient_C=60)
    assert (finding.verdict, finding.margin) == (Verdict.HOLDS, 1.99)
    assert finding.limit.standing is Standing.COMMON_PRACTICE


def test_a_wire_with_little_copper_makes_it_thin():
    """13.5 A against 13.0 to 14.0 A."""
    finding = wire_over_fuse(fuse_of(10), Span(13.0, 14.0, 14.0), ambient_C=60)
    assert finding.verdict is Verdict.THIN
    assert finding.next == "fit a fuse of at most 9.6 A, or thicker wire"


def test_a_fuse_too_large_says_what_happens():
    """15 A on a wire of 10 A: 20.2 A can flow for minutes."""
    finding = wire_over_fuse(fuse_of(15), Span(9.4, 10.1, 10.1), ambient_C=60)
    assert (finding.verdict, finding.what) == (Verdict.FAILS, "is the wire thick enough for its 15 A fuse")
    assert finding.because.endswith("a 15 A fuse can let 20.2 A flow for minutes, and the wire gets too hot")


def test_surroundings_as_hot_as_the_insulation():
    """Nothing is carried; a smaller fuse is no help."""
    finding = wire_over_fuse(fuse_of(3), exactly(0.0), ambient_C=110)
    assert finding.verdict is Verdict.FAILS
    assert "the wire carries nothing" in finding.because
    assert "cooler" in finding.next


@pytest.mark.parametrize(("short_A", "verdict"), [(1000.0, Verdict.HOLDS), (1000.02, Verdict.FAILS)])
def test_what_a_blade_fuse_can_break(short_A, verdict):
    """1000 A and no more."""
    assert breaking(short_A).verdict is verdict


def test_what_a_fuse_carries_in_the_heat():
    """At 65 °C 0.85 × 3 A = 2.55 A are left, 0.75 of that for good: 1.91 A. 1.2 A holds, 2 A does not."""
    assert load(fuse_of(3), exactly(1.2), ambient_C=65).limit.value == pytest.approx(1.91)
    assert load(fuse_of(3), exactly(1.2), ambient_C=65).verdict is Verdict.HOLDS
    assert load(fuse_of(3), exactly(2.0), ambient_C=65).verdict is Verdict.FAILS
