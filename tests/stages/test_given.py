"""Figures that somebody typed."""

import math

import pytest

from backprobe.errors import OptionError
from backprobe.stages.given import above_nothing, said, within


def test_what_lies_within_is_given_back():
    """Both ends are allowed."""
    assert [within(x, what="a rest", unit="h", least=0, most=9) for x in (0, 4.5, 9)] == [0, 4.5, 9]
    assert above_nothing(9, what="a length", unit="m", most=9) == 9


@pytest.mark.parametrize("value", [-0.1, 9.1, math.nan, math.inf, -math.inf])
def test_what_lies_outside_is_refused(value):
    """With the figure, its unit and what is expected; a NaN lies nowhere."""
    with pytest.raises(OptionError, match=r"a rest of .* h: 0 to 9 h is expected"):
        within(value, what="a rest", unit="h", least=0, most=9)


@pytest.mark.parametrize("value", [0.0, -1.0, math.nan, math.inf])
def test_nothing_is_not_above_nothing(value):
    """Zero is refused as well."""
    with pytest.raises(OptionError, match="more than 0 and at most 9 m is expected"):
        above_nothing(value, what="a length", unit="m", most=9)


@pytest.mark.parametrize(
    ("value", "words"), [(0.034492, "0.0345"), (15.49, "15.5"), (999.4, "999"), (1234.5, "1234"), (123456.0, "123456")]
)
def test_three_digits_and_no_exponent(value, words):
    """Large figures are shown whole."""
    assert said(value) == words
