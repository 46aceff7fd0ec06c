"""Time that only goes forward."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.recording_clock import Clock, Ordered, in_order

HOUR_S, DAY_S = 3600.0, 86_400.0


def ordered(times: list[float], clock: Clock | None = None, **how: bool) -> Ordered:
    how = {"midnight": False, "more": False} | how
    return in_order(times, clock or Clock(), lines=range(2, 2 + len(times)), **how)


def test_steady_rows_are_all_kept():
    """Nothing is left out, and the steps are those between the rows, 0 before the very first."""
    result = ordered([0.0, 0.5, 1.0])
    assert (result.times, result.steps, result.kept) == ([0.0, 0.5, 1.0], [0.0, 0.5, 0.5], None)
    assert result.clock.last_s == 1.0


def test_the_next_block_goes_on():
    """The first step of a block counts from the last row of the one before."""
    assert ordered([1.5, 2.0], ordered([0.0, 0.5, 1.0]).clock).steps == [0.5, 0.5]


@pytest.mark.parametrize(
    ("times", "kept"),
    [
        ([0.0, 1.0, 0.5, 2.0, 3.0], [0, 1, 3, 4]),  # falls back by half a second
        ([0.0, 1.0, 2.0, 3.0, 900.0, 4.0, 5.0], [0, 1, 2, 3, 5, 6]),  # one row leaps ahead
        ([0.0, 1.0, 2.0, 900.0, 901.0, 3.0, 4.0, 5.0, 6.0], [0, 1, 2, 5, 6, 7, 8]),  # two rows leap ahead
        ([0.0, 1.0, 2.0, -900.0, 3.0, 4.0], [0, 1, 2, 4, 5]),  # one row falls far back
        ([900.0, 0.0, 1.0, 2.0, 3.0], [1, 2, 3, 4]),  # the very first leaps
        ([0.0, 1.0, 2.0, 0.0, 1.0, 2.0, 3.0], [0, 1, 2, 5, 6]),  # begins again: left out until time has caught up
        ([0.0, math.nan, 1.0, math.inf, 2.0, 3.0], [0, 2, 4, 5]),
        ([0.0, 1.0, 1.0, 2.0], None),  # the same time twice is no falling back
    ],
)
def test_rows_that_are_left_out(times, kept):
    """Rows that fall back, or the one that had leapt ahead."""
    result = ordered(times)
    assert result.kept == kept
    assert result.times == sorted(result.times)


def test_set_back_by_an_hour_is_joined_once():
    """The end of summer time: after 10 rows the clock goes on an hour earlier; a usual step lies between."""
    times = [float(i) for i in range(10)] + [10.0 - HOUR_S + i for i in range(10)]
    result = ordered(times)
    assert result.times == [float(i) for i in range(20)]
    assert result.clock.set_back_line == 12  # the header is line 1, the rows begin at line 2
    assert result.clock.set_back_s == HOUR_S - 1  # from 9 s to 10 s - 1 h
    assert result.kept == list(range(20))


def test_a_second_setting_back_is_not_joined():
    """A clock that is set back again and again is not to be trusted: those rows are left out."""
    clock = ordered([float(i) for i in range(10)] + [10.0 - HOUR_S + i for i in range(10)]).clock
    again = ordered([20.0 - 2 * HOUR_S + i for i in range(10)], clock)
    assert again.kept == []


def test_each_midnight_is_joined():
    """A time of day over two midnights goes on for two days."""
    step = DAY_S / 8
    wanted = [i * step for i in range(24)]
    result = ordered([time % DAY_S for time in wanted], midnight=True)
    assert result.times == wanted


def test_the_offset_holds_in_the_next_block():
    """Once joined, later blocks are moved as well."""
    clock = ordered([float(i) for i in range(10)] + [10.0 - HOUR_S + i for i in range(10)]).clock
    result = ordered([20.0 - HOUR_S, 21.0 - HOUR_S], clock)
    assert (result.times, result.kept) == ([20.0, 21.0], None)


def test_a_leap_at_the_end_of_a_block():
    """What follows cannot be seen: the row is left out where more follows, and kept at the end of the file."""
    times = [float(i) for i in range(20)] + [9000.0]
    assert ordered(times, more=True).times == times[:-1]
    assert ordered(times, more=False).times == times


def test_rows_far_apart_are_no_leaps():
    """A recorder that writes every ten minutes: nothing is left out."""
    times = [600.0 * i for i in range(30)]
    assert ordered(times, more=True).kept is None


@given(st.lists(st.floats(allow_nan=True, allow_infinity=True), max_size=30), st.booleans(), st.booleans())
def test_any_times(times, midnight, more):
    """Whatever stands in the column, the result never falls, is finite, and its steps fit."""
    result = ordered(times, midnight=midnight, more=more)
    assert result.times == sorted(result.times)
    assert all(math.isfinite(time) for time in result.times)
    assert len(result.steps) == len(result.times)
    assert all(step >= 0 for step in result.steps)
    assert len(result.times) == len(times if result.kept is None else result.kept)


@given(st.lists(st.integers(1, 9), min_size=8, max_size=60), st.data())
def test_one_bad_row_costs_one_row(steps, data):
    """In a steady recording a single wrong time, forward or back, costs that row and no other."""
    times = [float(sum(steps[:i])) for i in range(len(steps) + 1)]
    bad = data.draw(st.integers(1, len(times) - 2))
    wrong = data.draw(st.sampled_from([times[bad - 1] - 0.5, times[-1] + 5000.0]))
    damaged = [*times[:bad], wrong, *times[bad + 1 :]]
    assert ordered(damaged).times == times[:bad] + times[bad + 1 :]
