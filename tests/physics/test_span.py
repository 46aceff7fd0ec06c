"""Three figures for one thing."""

from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.span import Span, exactly


def test_a_factor_multiplies_each():
    """1, 2 and 3 times 2.5 are 2.5, 5 and 7.5."""
    assert Span(1, 2, 3).times(2.5) == Span(2.5, 5.0, 7.5)


def test_rounding_leaves_no_negative_zero():
    """-0.0004 to three decimals is 0.0, shown without a sign."""
    assert str(Span(-0.0004, 0.0, 0.0004).rounded(3)) == "{'low': 0.0, 'likely': 0.0, 'high': 0.0}"


@given(st.floats(-1e6, 1e6))
def test_an_exact_figure_is_all_three(value):
    """Low, likely and high are the figure itself."""
    assert exactly(value) == Span(value, value, value)
