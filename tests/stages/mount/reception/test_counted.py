"""Shares of counted values are those of the values written out."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.stages.mount.reception.counted import share_of


@given(st.lists(st.integers(-50, 500), min_size=1, max_size=60))
def test_the_median_is_the_median(values: list[int]) -> None:
    """Whatever the values, against the standard library's median of the list."""
    counts = {value: values.count(value) for value in values}
    assert share_of(counts, 0.5) == pytest.approx(statistics.median(values))


@given(st.lists(st.integers(0, 100), min_size=2, max_size=60))
def test_ninety_five_of_a_hundred(values: list[int]) -> None:
    """Against the standard library's quantiles that include both ends: the 95th of 100 cuts."""
    counts = {value: values.count(value) for value in values}
    assert share_of(counts, 0.95) == pytest.approx(statistics.quantiles(values, n=100, method="inclusive")[94])


def test_of_nothing_there_is_nothing() -> None:
    """No values, no share."""
    assert share_of({}, 0.5) is None
