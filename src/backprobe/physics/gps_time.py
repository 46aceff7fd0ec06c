"""GPS time: seconds since 6 January 1980, without leap seconds; weeks that files count modulo 1024.

GPS time minus UTC grew by one second at each leap second since 1980 (the dates are from memory; they are checked
against the table of IERS Bulletin C that another library carries). None was announced after that of 1 January 2017;
from then on 18 s are taken.
"""

from __future__ import annotations

from bisect import bisect_right

WEEK_S = 604_800
DAY_S = 86_400
ROLLOVER_WEEKS = 1024  # IS-GPS-200: ten bits for the week
EPOCH_UNIX_S = 315_964_800  # 6 January 1980, 0 h UTC

# the beginning of the day [seconds since 1970, UTC] from which GPS time is one second more ahead
LEAPS_UNIX_S = (
    *(362_793_600, 394_329_600, 425_865_600, 489_024_000, 567_993_600, 631_152_000),  # 1981 to 1990
    *(662_688_000, 709_948_800, 741_484_800, 773_020_800, 820_454_400, 867_715_200),  # 1991 to 1997
    *(915_148_800, 1_136_073_600, 1_230_768_000, 1_341_100_800, 1_435_708_800, 1_483_228_800),  # 1999 to 2017
)


def leap_s(unix_s: float) -> int:
    """GPS time minus UTC [s] at a moment given in seconds since 1970, UTC.

    >>> leap_s(1_619_654_400), leap_s(315_964_800)
    (18, 0)
    """
    return bisect_right(LEAPS_UNIX_S, unix_s)


def gps_of(unix_s: float) -> float:
    """GPS seconds of a moment given in seconds since 1970, UTC.

    29 April 2021, 0 h UTC is 18 s past 0 h of Thursday (345600 s) of week 2155:

    >>> gps_of(1_619_654_400) == 2155 * WEEK_S + 345_600 + 18
    True
    """
    return unix_s - EPOCH_UNIX_S + leap_s(unix_s)


def unix_of(gps_s: float) -> float:
    """The moment in seconds since 1970, UTC, of GPS seconds; within a leap second the second after it.

    >>> unix_of(gps_of(1_619_654_400))
    1619654400
    """
    guess = gps_s + EPOCH_UNIX_S
    return guess - leap_s(guess - leap_s(guess))


def full_week(week: int, near_week: int) -> int:
    """The week, counted on from 1980, that a file means by `week` modulo 1024: the one nearest to `near_week`.

    >>> full_week(107, 2155), full_week(2155, 2155), full_week(1023, 2048)
    (2155, 2155, 2047)
    """
    if week >= ROLLOVER_WEEKS:
        return week
    return week + ROLLOVER_WEEKS * max(0, round((near_week - week) / ROLLOVER_WEEKS))
