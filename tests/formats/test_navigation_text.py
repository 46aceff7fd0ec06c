"""Figures as Fortran writes them, orbits that cannot be, and what is passed over."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.navigation import elements

from backprobe.errors import UnreadableError
from backprobe.formats.navigation_text import MOST_SHOWN, Passed, figure, oddity, week_note


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("-.5D-01", -0.05),
        ("0.1E+3", 100.0),
        ("7", 7.0),
        ("", None),
        ("0.1 0.2", None),
        ("nan", None),
        ("1E999", None),
        ("1D", None),
    ],
)
def test_figures(text: str, value: float | None) -> None:
    """D and E both stand before the power of ten; two figures in one place are none."""
    assert figure(text) == value


def test_orbits_that_cannot_be() -> None:
    """Each of these is outside what a GPS orbit can be; the sample is not."""
    good = elements()
    assert oddity(good) is None
    bad = (replace(good, e=0.5), replace(good, sqrt_a=7000.0), replace(good, i0_rad=2.0), replace(good, m0_rad=90.0))
    bad += (
        replace(good, toe_s=1e12),
        replace(good, crc_m=1e9),
        replace(good, cus_rad=1.0),
        replace(good, i_dot_rad_s=1.0),
    )
    assert all(oddity(each) for each in bad)


def test_all_are_counted_and_the_first_are_kept() -> None:
    """Every line counts; twenty are kept with their places; nothing read at all is refused with the first of them."""
    passed = Passed("x")
    for number in range(1, 31):
        passed.over(number, "torn", expected="a whole one")
    assert (passed.count, len(passed.first)) == (30, MOST_SHOWN)
    with pytest.raises(UnreadableError, match="x, line 1: torn\nexpected: a whole one; not one satellite"):
        passed.refuse_empty([], "orbits")


def test_a_week_is_said_only_where_it_was_changed() -> None:
    """A week that is counted from 1980 needs no words."""
    assert week_note({2155: 2155}) == ()
