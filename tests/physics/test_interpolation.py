"""Reading between the rows of a table."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.interpolation import linear, log_log

ROWS = [(1.0, 10.0), (2.0, 20.0), (4.0, 80.0)]


def test_half_way_on_a_straight_line():
    """Half way from 20 at 2 to 80 at 4 is 50 at 3."""
    assert linear(3.0, ROWS) == pytest.approx(50.0)


def test_half_way_on_a_log_log_line():
    """From 20 at 2 to 80 at 4 the slope is 2: at √8 it is 20 × (√8 / 2)² = 40."""
    assert log_log(8**0.5, ROWS) == pytest.approx(40.0)


@pytest.mark.parametrize("read", [linear, log_log])
def test_rows_are_met_to_the_last_digit_and_ends_held(read):
    """Each row gives its own figure exactly; beyond the ends the end's figure stays."""
    assert [read(x, ROWS) for x, _ in ROWS] == [y for _, y in ROWS]
    assert (read(0.01, ROWS), read(99.0, ROWS)) == (10.0, 80.0)


@pytest.mark.parametrize("read", [linear, log_log])
@given(st.floats(0.1, 10.0), st.floats(0.1, 10.0))
def test_a_rising_table_reads_rising(read, a, b):
    """More on the left never gives less on the right."""
    low, high = sorted((a, b))
    assert read(low, ROWS) <= read(high, ROWS) * (1 + 1e-12)
