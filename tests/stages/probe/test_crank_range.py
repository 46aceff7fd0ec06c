"""How deep the crank may have gone."""

import random
from dataclasses import replace
from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.samples.awkward_vehicles import crank_drops
from tests.samples.probe_tables import AT_24_V, SETUP

from backprobe.evidence.keys import Capture
from backprobe.stages.probe.crank_range import (
    HIDDEN_CONSTANT_V,
    HIDDEN_LEAST_V,
    HIDDEN_SHARE,
    WHOLE_TROUGH_MS,
    hidden_V,
    minimum_range,
)


def test_the_hidden_part_is_a_share_of_the_shown_drop():
    """12.4 → 10.2 V by a hold of 100 ms hides 0.23 + 0.68 × 2.2 = 1.73 V."""
    hidden = hidden_V(10.2, 12.4, system_V=12, hold_ms=100.0)
    assert hidden == pytest.approx(HIDDEN_CONSTANT_V + HIDDEN_SHARE * (12.4 - 10.2))


def test_a_small_drop_hides_what_hid_in_the_trials():
    """12.4 → 11.6 V: 0.23 + 0.68 × 0.8 = 0.77 V is less than the 1.25 V that hid violations."""
    assert hidden_V(11.6, 12.4, system_V=12, hold_ms=100.0) == HIDDEN_LEAST_V


def test_a_24_v_system_hides_twice_as_much():
    """24.8 → 20.4 V hides twice what 12.4 → 10.2 V hides."""
    twice = hidden_V(20.4, 24.8, system_V=24, hold_ms=100.0)
    assert twice == pytest.approx(2.0 * hidden_V(10.2, 12.4, system_V=12, hold_ms=100.0))


def test_a_quick_hold_hides_nothing():
    """5 ms sees the whole trough, half-way between 5 and 100 ms half is hidden."""
    assert hidden_V(10.2, 12.4, system_V=12, hold_ms=WHOLE_TROUGH_MS) == 0.0
    half = hidden_V(10.2, 12.4, system_V=12, hold_ms=(100.0 + WHOLE_TROUGH_MS) / 2)
    assert half == pytest.approx(hidden_V(10.2, 12.4, system_V=12, hold_ms=100.0) / 2)


def test_a_min_hold_allows_a_range():
    """10.20 V ±(0.5 % + 2 counts) = ±0.071 V, and 1.73 V deeper: 8.40 to 10.27 V."""
    found = minimum_range(10.2, Capture.MIN, rest_V=12.4, setup=SETUP, count_V=0.01)
    assert found.high_V == pytest.approx(10.2 + 0.071)
    assert found.low_V == pytest.approx(10.2 - 0.071 - (0.23 + 0.68 * 2.2))


@pytest.mark.parametrize("capture", [Capture.DISPLAY, Capture.MAX])
def test_a_display_proves_no_minimum(capture: Capture):
    """The true minimum may be anything down to 0 V."""
    assert minimum_range(11.8, capture, rest_V=12.4, setup=SETUP, count_V=0.01).low_V == 0.0


def test_a_fast_recorder_is_uncertain_by_the_meter_alone():
    """10.20 ± 0.071 V, whatever the meter's own hold."""
    slow = replace(SETUP, meter=replace(SETUP.meter, min_capture_ms=400.0))
    found = minimum_range(10.2, Capture.LOGGED, rest_V=12.4, setup=slow, count_V=0.01)
    assert (found.low_V, found.high_V) == pytest.approx((10.2 - 0.071, 10.2 + 0.071))


@given(shown_V=st.floats(0.0, 13.0), rest_V=st.floats(11.0, 13.0))
def test_the_shown_value_lies_in_its_range(shown_V: float, rest_V: float):
    """The range holds the shown value, and its low end is no voltage below zero."""
    found = minimum_range(shown_V, Capture.MIN, rest_V=rest_V, setup=SETUP, count_V=0.01)
    assert 0.0 <= found.low_V <= found.shown_V <= found.high_V


def test_true_cranks_stay_in_the_range():
    """Of 4,000 cranks of quicker starters than the model's at most 1 in 200 goes deeper, and none by 0.8 V."""
    rng = random.Random(16750)
    deeper = []
    for _ in range(4000):
        rest_V, drops = rng.uniform(11.8, 12.9), crank_drops(rng, scale=1.0)
        wave = [rest_V] * rng.randrange(100, 201) + [rest_V - drop for drop in drops]
        sums = [0.0, *accumulate(wave)]
        shown_V = min((sums[i + 100] - sums[i]) / 100 for i in range(0, len(wave) - 99, 100))
        allowed = minimum_range(shown_V, Capture.MIN, rest_V=rest_V, setup=SETUP, count_V=0.01)
        deeper.append(allowed.low_V - min(wave))
    assert sum(1 for excess in deeper if excess > 0.0) <= len(deeper) // 200
    assert max(deeper) < 0.8


def test_the_range_scales_with_the_system():
    """24 V: 20.4 V ±(0.5 % + 2 counts) = ±0.122 V, and 2 × 1.726 V deeper."""
    found = minimum_range(20.4, Capture.MIN, rest_V=24.8, setup=AT_24_V, count_V=0.01)
    assert found.low_V == pytest.approx(20.4 - 0.122 - 2 * (0.23 + 0.68 * 2.2))


@pytest.mark.parametrize("limit_V", [9.0, 10.0])
def test_what_hid_violations_in_trials_is_never_believed(limit_V: float):
    """A MIN 1.2 V above the limit hid true violations (twice that at 24 V): its range reaches below the limit."""
    small = minimum_range(limit_V + 1.2, Capture.MIN, rest_V=12.4, setup=SETUP, count_V=0.01)
    large = minimum_range(2 * (limit_V + 1.2), Capture.MIN, rest_V=24.8, setup=AT_24_V, count_V=0.01)
    assert small.low_V < limit_V
    assert large.low_V < 2 * limit_V


@given(shown_V=st.floats(0.0, 12.6), rest_V=st.floats(11.0, 13.2), hold_ms=st.floats(0.0, 400.0))
def test_a_24_V_vehicle_is_twice_a_12_V_one(shown_V: float, rest_V: float, hold_ms: float):
    """Doubling every volt doubles what is hidden."""
    small = hidden_V(shown_V, rest_V, system_V=12, hold_ms=hold_ms)
    assert hidden_V(2 * shown_V, 2 * rest_V, system_V=24, hold_ms=hold_ms) == pytest.approx(2 * small)


@given(shown_V=st.floats(0.0, 12.6), slower_ms=st.floats(0.0, 200.0))
def test_a_slower_hold_never_narrows_the_range(shown_V: float, slower_ms: float):
    """More time needed hides at least as much."""
    slow = replace(SETUP, meter=replace(SETUP.meter, min_capture_ms=100.0 + slower_ms))
    ends = [minimum_range(shown_V, Capture.MIN, rest_V=12.4, setup=each, count_V=0.01).low_V for each in (slow, SETUP)]
    assert ends[0] <= ends[1]
