"""A dead short against the wire's insulation."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.findings import Verdict
from backprobe.stages.join.ampacity import ampacity_A, insulation_of
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.short_circuit import rounded_down, short_at, short_finding, worst_short

PVC = insulation_of("pvc-105")


def judged(rating_A, short_A, fuse_type=None, ambient_C=60, **size):
    """The worst short and the finding on it, for a fuse on a wire of 105 °C PVC."""
    wire, fuse = conductor_of(**size), fuse_of(rating_A, fuse_type)
    carries_A = ampacity_A(wire, PVC, ambient_C=ambient_C)
    short = worst_short(short_A, fuse, conductor=wire, k=PVC.k, carries_A=carries_A)
    return short, short_finding(short, fuse, at_end_A=short_A, insulation=PVC)


def test_a_fuse_in_time():
    """10 A on 18 AWG at 40 A: 0.5 × (3.5 / 4)² = 0.383 s at the latest; (87 × 0.8148 / 40)² = 3.14 s are stood."""
    short, finding = judged(10, 40.0, awg=18)
    assert finding.verdict is Verdict.HOLDS
    assert short.opening.most_s == pytest.approx(0.383, abs=0.001)
    assert finding.limit.value == pytest.approx((87 * 0.81478 / 40) ** 2, abs=0.01)
    assert finding.next is None


def test_a_loop_too_resistive():
    """6 A never open a 10 A fuse: found and said, with what to do."""
    _, finding = judged(10, 6.0, awg=18)
    assert finding.verdict is Verdict.FAILS
    assert finding.because == ("the loop is too resistive: 6 A flow, the fuse is sure to open from 13.5 A only")
    assert "shorten the loop" in finding.next
    assert (finding.value, finding.low, finding.high, finding.limit) == (None, None, None, None)


def test_it_fails_even_where_the_wire_would_carry_it():
    """6 A are nothing to 18 AWG; yet a short that no fuse clears is a fire elsewhere."""
    short, finding = judged(10, 6.0, awg=18)
    assert short.for_good
    assert finding.verdict is Verdict.FAILS


def test_a_slow_fuse_is_thin_and_a_usual_one_too_late_fails():
    """16 A on 18 AWG: 0.25 to 50 s against 19.6 s is thin. 20 A of a 20 A type E fuse never opens it at all."""
    assert judged(10, 16.0, awg=18)[1].verdict is Verdict.THIN
    assert judged(20, 40.0, fuse_type="E", awg=18)[1].verdict is Verdict.FAILS


def test_beyond_five_seconds_what_the_wire_carries_for_good_counts():
    """At 14 A a 10 A fuse may take minutes; 18 AWG carries 15.4 A for good and stands that.

    But a short nearer the fuse draws more than it carries, and there a slow fuse is too late: thin.
    """
    wire, fuse = conductor_of(awg=18), fuse_of(10)
    carries_A = ampacity_A(wire, PVC, ambient_C=60)
    at_end = short_at(14.0, fuse, conductor=wire, k=PVC.k, carries_A=carries_A)
    assert at_end.opening.most_s > 300
    assert at_end.verdict is Verdict.HOLDS
    short, finding = judged(10, 14.0, awg=18)
    assert short.current_A == pytest.approx(carries_A.low, rel=2e-4)
    assert finding.verdict is Verdict.THIN
    assert "nearer the fuse" in finding.because
    assert "beyond 5 s" in finding.because


def test_no_times_were_read_for_the_largest():
    """A 100 A fuse on thick wire is open, not held; on thin wire it fails by what 80 A already does."""
    assert judged(100, 900.0, mm2=50)[1].verdict is Verdict.OPEN
    assert judged(100, 900.0, mm2=50)[1].next == "look up when this fuse opens in its maker's data sheet"
    _, thin = judged(100, 120.0, mm2=0.5)
    assert thin.verdict is Verdict.FAILS
    assert "one of 80 A opens within" in thin.because


def test_the_finding_says_what_its_limit_rests_on():
    """Calculated k: our own model."""
    _, finding = judged(10, 40.0, awg=18)
    assert finding.limit.warrant.startswith("PVC rated 105 °C, k 87: IEC 60364-5-54 Annex A")
    assert finding.limit.warrant.endswith("(our own model)")


@given(st.floats(1e-4, 1e5))
def test_what_the_wire_stands_is_never_rounded_up(time_s):
    """Three digits that count, at most a hundredth less."""
    down = rounded_down(time_s)
    assert down <= time_s * (1 + 1e-9)
    assert down > time_s * 0.99
    assert float(f"{down:.3g}") == pytest.approx(down, rel=1e-9)
