"""What a mistyped figure may have been."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.stages.probe.slips import COMMA_SHARE, DROP_SHARE, SWAP_SHARE, originals


def weight_of(volts: float, typed: str) -> float:
    """How much of `typed` may come from `volts`."""
    return sum(weight for was, weight in originals(typed) if was == pytest.approx(volts))


@pytest.mark.parametrize(
    ("was", "typed"),
    [
        (12.3, "1.23"),  # comma moved to the left
        (0.123, "1.23"),  # comma moved to the right
        (12.54, "12.45"),  # two digits swapped
        (10.29, "12.09"),  # swapped across the comma
        (12.45, "2.45"),  # the first digit left out
        (12.45, "1.45"),  # the second one
        (12.4, "124.0"),
        (12.4, "21.40"),
    ],
)
def test_common_slips_are_undone(was: float, typed: str):
    """The figure that was meant is among those that the slip may have come from."""
    assert weight_of(was, typed) > 0.0


def test_weights_follow_from_the_shares():
    """A comma moved left squeezes figures ten times; three digits have two pairs, and four places for a lost one."""
    assert weight_of(12.5, "1.25") == pytest.approx(COMMA_SHARE * 10)
    assert weight_of(0.125, "1.25") == pytest.approx(COMMA_SHARE / 10)
    assert weight_of(2.15, "1.25") == pytest.approx(SWAP_SHARE / 2)
    assert weight_of(31.25, "1.25") == pytest.approx(DROP_SHARE / 4)


@pytest.mark.parametrize("typed", ["350 mV", "-0.02", "12", "", ".", "1.2.3", "¼.5", "na"])
def test_other_texts_have_no_slips(typed: str):
    """Units, signs and whole figures are left alone."""
    assert originals(typed) == ()


def test_a_decimal_comma_is_a_comma():
    """12,3 may be 1,23 or 123 as 12.3 may."""
    assert originals("12,3") == originals("12.3")


@given(st.from_regex(r"[0-9]{1,2}\.[0-9]{1,3}", fullmatch=True))
def test_originals_are_figures_and_few(typed: str):
    """Every original is a figure of at least 0 V with a positive weight, and all slips together stay rare."""
    found = originals(typed)
    assert all(volts >= 0.0 and weight > 0.0 for volts, weight in found)
    assert len(found) < 50


def test_every_slip_is_rare():
    """All slips together are a few per cent at the very most."""
    assert sum(weight for _, weight in originals("12.40")) < 0.05
