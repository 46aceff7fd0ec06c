"""GPS time, leap seconds, weeks modulo 1024."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.physics.gps_time import LEAPS_UNIX_S, WEEK_S, full_week, gps_of, leap_s, unix_of


def unix(*day: int) -> float:
    """Seconds since 1970 of a day, 0 h UTC."""
    return datetime(*day, tzinfo=UTC).timestamp()


@pytest.mark.parametrize(
    ("day", "seconds"),
    [((1980, 1, 6), 0), ((1981, 7, 1), 1), ((1999, 1, 1), 13), ((2016, 12, 31), 17), ((2017, 1, 1), 18)],
)
def test_leap_seconds(day: tuple[int, ...], seconds: int) -> None:
    """None at the epoch of GPS, 13 from 1999 on, 18 from 2017 on."""
    assert leap_s(unix(*day)) == seconds


def test_the_weeks_of_the_rollovers_begin_on_known_days() -> None:
    """Week 1024 began on 22 August 1999 and week 2048 on 7 April 2019, 13 and 18 s before 0 h UTC."""
    assert gps_of(unix(1999, 8, 22)) - 13 == 1024 * WEEK_S
    assert gps_of(unix(2019, 4, 7)) - 18 == 2048 * WEEK_S


@given(st.integers(min_value=0, max_value=4_000_000_000))
def test_there_and_back(seconds: int) -> None:
    """Every moment since the epoch comes back."""
    moment = 315_964_800 + seconds
    assert unix_of(gps_of(moment)) == moment


def test_around_each_leap_second() -> None:
    """The second before a leap second and the one after are two seconds of GPS time apart."""
    for leap in LEAPS_UNIX_S:
        assert gps_of(leap) - gps_of(leap - 1) == 2
        assert unix_of(gps_of(leap)) == leap


@given(st.integers(min_value=1024, max_value=4000))
def test_a_week_comes_back_from_its_last_ten_bits(week: int) -> None:
    """Modulo 1024 and back, near a week within 500 of it; a week above 1023 is taken as it is."""
    assert full_week(week % 1024, week + 500) == week
    assert full_week(week % 1024, week - 500) == week
    assert full_week(week, 0) == week
