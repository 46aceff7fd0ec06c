"""The envelope, gathered in memory that does not grow."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.recording_buckets import MOST_BUCKETS, Buckets, extremes_of, higher, lower

NAN = math.nan


def gathered(values: list[float], block: int, *, holes: bool = False) -> Buckets:
    buckets = Buckets(1)
    for row in range(0, len(values), block):
        part = values[row : row + block]
        times = [float(row + i) for i in range(len(part))]
        buckets.add(times, row=row, extremes=[extremes_of(part, buckets.size, holes=holes)])
    return buckets


@pytest.mark.parametrize(("a", "b", "low", "high"), [(1.0, 2.0, 1.0, 2.0), (NAN, 2.0, 2.0, 2.0), (1.0, NAN, 1.0, 1.0)])
def test_nan_is_none(a, b, low, high):
    """NaN never wins where there is a value."""
    assert lower(a, b) == low
    assert higher(a, b) == high


def test_few_rows_are_kept_each():
    """Up to 8,192 rows the envelope is the recording."""
    values = [float(i % 7) for i in range(MOST_BUCKETS)]
    buckets = gathered(values, 4096)
    assert buckets.size == 1
    assert list(buckets.lows[0]) == list(buckets.highs[0]) == values


def test_pairs_become_one():
    """One row more: 8,193 rows in buckets of two, the last of one."""
    values = [float(i) for i in range(MOST_BUCKETS + 1)]
    buckets = gathered(values, 4096)
    assert buckets.size == 2
    assert len(buckets.start_s) == 4097
    assert list(buckets.row[:3]) == [0, 2, 4]
    assert (buckets.lows[0][1], buckets.highs[0][1]) == (2.0, 3.0)
    assert (buckets.lows[0][-1], buckets.highs[0][-1]) == (8192.0, 8192.0)


@given(st.integers(1, 60_000), st.integers(500, 5000), st.integers(1, 97))
def test_buckets_cover_every_row_once(rows, block, period):
    """Whatever the blocks: never too many buckets, each with the extremes of exactly the rows up to the next."""
    values = [float(i * 31 % period) for i in range(rows)]
    buckets = gathered(values, block)
    starts = [*buckets.row, rows]
    assert len(buckets.row) <= MOST_BUCKETS
    assert starts[0] == 0
    assert list(buckets.start_s) == [float(row) for row in buckets.row]
    for i in range(0, len(buckets.row), max(1, len(buckets.row) // 50)):
        part = values[starts[i] : starts[i + 1]]
        assert (buckets.lows[0][i], buckets.highs[0][i]) == (min(part), max(part))


def test_holes_are_left_out_where_a_bucket_has_values():
    """A bucket of nothing but holes is NaN; any value in it counts."""
    values = [NAN, 1.0, NAN, NAN] * 5000
    buckets = gathered(values, 1000, holes=True)
    assert buckets.size == 4
    assert set(buckets.lows[0]) == {1.0}
    lows, highs = extremes_of([NAN, NAN, 2.0, NAN, 3.0], 2, holes=True)
    assert math.isnan(lows[0])
    assert math.isnan(highs[0])
    assert (lows[1:], highs[1:]) == ([2.0, 3.0], [2.0, 3.0])
