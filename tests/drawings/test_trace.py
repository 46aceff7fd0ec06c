"""Traces, their gaps, and their thinning to what a picture can show."""

import math

from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.trace import Trace, is_gap, pieces, thinned

VOLTS = st.floats(0, 30)


def test_a_trace_is_cut_where_values_are_missing() -> None:
    """Two runs come out of a trace with a dropout between them; gaps at its ends leave nothing behind."""
    gap = (0.0, math.nan, math.nan)
    trace = Trace("red", (gap, (0.1, 12.0, 12.1), (0.2, 12.0, 12.0), gap, gap, (0.5, 9.0, 9.2), gap))
    assert [len(run) for run in pieces(trace)] == [2, 1]
    assert pieces(Trace("none", ())) == []


def test_infinity_is_a_gap() -> None:
    """What no picture can hold is not drawn."""
    assert is_gap((0.0, -math.inf, 12.0))
    assert not is_gap((0.0, 11.9, 12.0))


@given(st.lists(st.tuples(VOLTS, VOLTS), min_size=1, max_size=300), st.floats(0.011, 2.0))
def test_thinning_keeps_every_extreme(levels: list[tuple[float, float]], step_s: float) -> None:
    """Each step keeps the lowest low and the highest high of its points, reckoned here point by point."""
    run = [(index * 0.01, min(pair), max(pair)) for index, pair in enumerate(levels)]
    kept = thinned(run, start_s=0.0, step_s=step_s)
    assert min(low for _, low, _ in kept) == min(low for _, low, _ in run)
    assert max(high for _, _, high in kept) == max(high for _, _, high in run)
    for start_s, low, high in kept:
        column = int(start_s // step_s)
        own = [point for point in run if int(point[0] // step_s) == column]
        assert (low, high) == (min(point[1] for point in own), max(point[2] for point in own))


def test_thinning_leaves_few_points() -> None:
    """100,000 rows over 10 s in steps of 10 ms leave 1,000 points, and the dip of a single row is among them."""
    run = [(index / 10_000, 12.0, 12.0) for index in range(100_000)]
    run[54_321] = (5.4321, 7.5, 12.0)
    kept = thinned(run, start_s=0.0, step_s=0.01)
    assert len(kept) == 1000
    assert min(low for _, low, _ in kept) == 7.5


def test_without_a_step_nothing_is_thinned() -> None:
    """A recording without duration is left as it is."""
    run = [(1.0, 2.0, 3.0), (1.0, 2.0, 3.0)]
    assert thinned(run, start_s=1.0, step_s=0.0) == run
