"""A written figure keeps its value, its unit and the worth of its last digit."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.figures import read_figure


@pytest.mark.parametrize(
    ("text", "value", "count", "unit"),
    [
        ("12.30", 12.3, 0.01, ""),
        ("12", 12.0, 1.0, ""),
        ("12,30", 12.3, 0.01, ""),
        (" 12.3 V ", 12.3, 0.1, "V"),
        ("350mV", 350.0, 1.0, "mV"),
        ("-0.02", -0.02, 0.01, ""),
        ("−0,02", -0.02, 0.01, ""),  # a typographic minus
        ("+5.", 5.0, 1.0, ""),
        (".5", 0.5, 0.1, ""),
        ("1.23e1", 12.3, 0.1, ""),  # 1.23 x 10: the last digit is 0.01 x 10
        ("12 V DC", 12.0, 1.0, "V DC"),
    ],
)
def test_value_count_and_unit(text, value, count, unit):
    """Each way of writing gives the value and one count of the last digit."""
    figure = read_figure(text)
    assert figure is not None
    assert (figure.value(), figure.count(), figure.unit) == (value, count, unit)


@pytest.mark.parametrize(
    "text", ["", " ", "nan", "inf", "-inf", "1.234,5", "12.3.4", "V", "12 13", "0x10", "e5", "١٢", "--1"]
)
def test_no_figure(text):
    """Anything else is None, never a guess."""
    assert read_figure(text) is None


def test_millivolts_are_rounded_once():
    """350 mV is the float nearest to 0.35, not 350 times an inexact 0.001."""
    figure = read_figure("350 mV")
    assert figure is not None
    assert (figure.value(-3), figure.count(-3)) == (0.35, 0.001)


@given(st.floats(-1e6, 1e6), st.integers(0, 9))
def test_what_was_printed_is_read(value, decimals):
    """A printed figure comes back as exactly the float that its text means, with the count of its last decimal."""
    text = f"{value:.{decimals}f}"
    figure = read_figure(text)
    assert figure is not None
    assert figure.value() == float(text)
    assert figure.count() == float(f"1e-{decimals}")


@given(st.text())
def test_any_text(text):
    """No text makes it raise, and what it takes is finite."""
    figure = read_figure(text)
    assert figure is None or abs(figure.value(-3)) < float("inf")
