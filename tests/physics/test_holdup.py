"""The time below a unit's least voltage."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.holdup import dips_below, longest_s
from backprobe.physics.span import Span


def test_one_dip_between_samples():
    """At 10 ms a sample: 12, 12, 6, 6, 12 below 9 V: seen for 10 ms, at most 30 ms, on straight lines 20 ms."""
    [dip] = dips_below([0.00, 0.01, 0.02, 0.03, 0.04], [12, 12, 6, 6, 12], least_V=9)
    assert (dip.start_s, dip.lowest_V) == (0.02, 6)
    assert (dip.length_s.low, dip.length_s.likely, dip.length_s.high) == pytest.approx((0.01, 0.02, 0.03))


def test_one_sample_below_may_be_a_spike_or_two_intervals():
    """Seen for no time at all, yet it may have lasted from the sample before to the one after."""
    [dip] = dips_below([0, 1, 2], [12, 6, 12], least_V=9)
    assert (dip.length_s.low, dip.length_s.high) == (0, 2)


def test_a_dip_at_the_edge_has_no_end():
    """What began before the recording, or went on after it, may have lasted for ever."""
    first, last = dips_below([0, 1, 2, 3], [6, 12, 12, 7], least_V=9)
    assert (first.length_s.high, last.length_s.high) == (math.inf, math.inf)


def test_at_the_least_voltage_the_unit_still_works():
    """9.0 V is not below 9.0 V."""
    assert dips_below([0, 1, 2], [12, 9.0, 12], least_V=9.0) == ()


def test_empty_cells_are_passed_over():
    """A missing sample within a dip does not split it."""
    [dip] = dips_below([0, 1, 2, 3, 4], [12, 6, math.nan, 6, 12], least_V=9)
    assert (dip.length_s.low, dip.length_s.high) == (2, 4)


def test_the_longest_of_several():
    """Dips of 1 and of 2 s: the longest is 2 s; without a dip it is none."""
    dips = dips_below(list(range(8)), [12, 6, 6, 12, 6, 6, 6, 12], least_V=9)
    assert [dip.length_s.low for dip in dips] == [1, 2]
    assert longest_s(dips) == Span(2, 3.0, 4)
    assert longest_s([]) == Span(0.0, 0.0, 0.0)


@given(st.lists(st.floats(0, 16), min_size=3, max_size=40), st.floats(1, 15), st.floats(0, 5))
def test_a_higher_need_never_shortens_a_dip(volts, least_V, more_V):
    """A unit that needs more volts is below for at least as long, by what is surely seen."""
    times = [float(index) for index in range(len(volts))]
    less, more = (longest_s(dips_below(times, volts, least_V=need)) for need in (least_V, least_V + more_V))
    assert more.low >= less.low


@given(st.lists(st.floats(0, 16), min_size=3, max_size=40), st.floats(1, 15))
def test_bounds_stand_in_order(volts, least_V):
    """What is seen, what is likely, what can be."""
    for dip in dips_below([float(index) for index in range(len(volts))], volts, least_V=least_V):
        assert dip.length_s.low <= dip.length_s.likely + 1e-9
        assert dip.length_s.likely <= dip.length_s.high + 1e-9
