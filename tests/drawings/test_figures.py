"""How figures are written."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.figures import figure_text, nice_step, short_figure_text, step_digits, ticks, with_unit


def test_figures_keep_their_decimals() -> None:
    """12.30 is not 12.3: the decimals asked for are always there."""
    assert [figure_text(12.3, 2), figure_text(0.0, 1), figure_text(-12.345, 1)] == ["12.30", "0.0", "−12.3"]


def test_very_large_figures_have_a_power_of_ten() -> None:
    """From ten million on a figure would not fit any picture."""
    assert [figure_text(9_999_999.0, 0), figure_text(1e7, 0), figure_text(-1.2345e300, 2)] == [
        "9999999",
        "1e7",
        "−1.234e300",
    ]


def test_limits_are_written_without_trailing_zeros() -> None:
    """9 V, not 9.000000 V; but 100 keeps its zeros."""
    assert [short_figure_text(9.0, 6), short_figure_text(0.35, 6), short_figure_text(100.0, 6)] == ["9", "0.35", "100"]


def test_a_figure_without_unit_stands_alone() -> None:
    """No space is left behind where there is no unit."""
    assert [with_unit("9", "V"), with_unit("9", "")] == ["9 V", "9"]


@given(st.floats(1e-300, 1e300))
def test_a_nice_step_is_large_enough_and_not_far_off(least: float) -> None:
    """Steps are 1, 2 or 5 times a power of ten, at least as large as asked, at most 2.5 times as large."""
    step = nice_step(least)
    assert least <= step <= least * 2.5 * (1 + 1e-9)
    assert f"{step:.0e}"[0] in "125"


@pytest.mark.parametrize(("step", "digits"), [(0.05, 2), (0.5, 1), (1.0, 0), (200.0, 0)])
def test_a_step_needs_as_many_decimals_as_it_has(step: float, digits: int) -> None:
    """Ticks every 0.05 need two decimals, every 200 none."""
    assert step_digits(step) == digits


def test_ticks_are_multiples_of_the_step_within_the_range() -> None:
    """From 6.8 to 13.4 in steps of 2: 8, 10, 12."""
    assert ticks(6.8, 13.4, step=2.0) == [8.0, 10.0, 12.0]


def test_no_ticks_where_there_would_be_too_many() -> None:
    """A step that does not suit the range gives none instead of thousands."""
    assert ticks(0.0, 1.0, step=1e-6) == []
    assert ticks(1e12, 1e12 + 1, step=0.5) == []
    assert ticks(0.0, 1e-20, step=2e-21) == []


@given(st.floats(-1e300, 1e300), st.integers(0, 6))
def test_any_figure_can_be_written(value: float, digits: int) -> None:
    """Every finite number comes out short enough to be set."""
    text = figure_text(value, digits)
    assert len(text) <= 16
    assert math.isfinite(float(text.replace("−", "-")))
