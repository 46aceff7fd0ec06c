"""What a shown crank value allows of the true minimum."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.keys import Capture
from backprobe.limits.lookup import meter
from backprobe.stages.probe.crank_range import (
    HIDDEN_CONSTANT_V,
    HIDDEN_LEAST_V,
    HIDDEN_SHARE,
    hidden_V,
    minimum_range,
)
from backprobe.stages.probe.setup import Setup

SETUP = Setup(system_V=12, meter=meter("basic"))


def seen(shown_V: float, capture: Capture, setup: Setup = SETUP, *, rest_V: float = 12.4):
    """The range of a value shown with two decimals."""
    return minimum_range(shown_V, capture, rest_V=rest_V, setup=setup, count_V=0.01)


def test_a_min_hold_hides_a_share_of_the_drop():
    """10.20 V from 12.40 V: accuracy 0.5 % of 10.2 + 2 counts, and the inrush that 100 ms average away."""
    accuracy = 0.005 * 10.20 + 0.02
    hidden = HIDDEN_CONSTANT_V + HIDDEN_SHARE * (12.40 - 10.20)
    found = seen(10.20, Capture.MIN)
    assert (found.low_V, found.high_V) == (pytest.approx(10.20 - accuracy - hidden), pytest.approx(10.20 + accuracy))


@pytest.mark.parametrize(("limit_V", "above_V"), [(9.0, 1.2), (10.0, 1.2)])
def test_what_hid_violations_in_trials_is_never_believed(limit_V, above_V):
    """A MIN 1.2 V above the limit hid true violations (twice that at 24 V): its range reaches below the limit."""
    assert seen(limit_V + above_V, Capture.MIN).low_V < limit_V
    lorry = replace(SETUP, system_V=24)
    assert seen(2 * (limit_V + above_V), Capture.MIN, lorry, rest_V=24.8).low_V < 2 * limit_V


def test_a_small_drop_still_allows_for_what_the_trials_hid():
    """The level before the crank is seldom known at the very moment."""
    assert hidden_V(12.3, 12.4, system_V=12, hold_ms=100.0) == HIDDEN_LEAST_V


def test_a_fast_recorder_hides_nothing():
    """Only the accuracy is left: 0.5 % of 10.2 and 2 counts."""
    found = seen(10.20, Capture.LOGGED)
    assert found.low_V == pytest.approx(10.20 - 0.051 - 0.02)


def test_a_peak_hold_of_a_millisecond_sees_the_whole_trough():
    """A service-grade meter's MIN (1 ms) is as good as a recorder."""
    fast = replace(SETUP, meter=meter("service"))
    assert seen(10.20, Capture.MIN, fast).low_V == pytest.approx(seen(10.20, Capture.LOGGED, fast).low_V)


@pytest.mark.parametrize("capture", [Capture.DISPLAY, Capture.MAX])
def test_a_display_proves_no_minimum(capture):
    """It may have missed the dip altogether: anything down to zero is possible."""
    assert seen(12.10, capture).low_V == 0.0


@given(shown_V=st.floats(0.0, 12.6), rest_V=st.floats(11.0, 13.2), hold_ms=st.floats(0.0, 400.0))
def test_a_24_V_vehicle_is_twice_a_12_V_one(shown_V, rest_V, hold_ms):
    """Doubling every volt doubles what is hidden."""
    small = hidden_V(shown_V, rest_V, system_V=12, hold_ms=hold_ms)
    assert hidden_V(2 * shown_V, 2 * rest_V, system_V=24, hold_ms=hold_ms) == pytest.approx(2 * small)


@given(shown_V=st.floats(0.0, 12.6), slower_ms=st.floats(0.0, 200.0), capture=st.sampled_from(list(Capture)))
def test_the_range_holds_the_shown_value_and_a_slower_hold_never_narrows_it(shown_V, slower_ms, capture):
    """Low ≤ shown ≤ high, whatever the capture; more time needed hides at least as much."""
    found = seen(shown_V, capture)
    assert found.low_V <= found.shown_V <= found.high_V
    slow = replace(SETUP, meter=replace(SETUP.meter, min_capture_ms=100.0 + slower_ms))
    assert seen(shown_V, Capture.MIN, slow).low_V <= seen(shown_V, Capture.MIN).low_V
