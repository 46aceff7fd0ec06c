"""Where and when a sky is asked for, in plain figures and texts, each of them checked."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from backprobe.errors import OptionError
from backprobe.physics.gps_time import EPOCH_UNIX_S, WEEK_S, gps_of
from backprobe.stages.mount.predict import Site

_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)
_TIME = re.compile(r"(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,6}))?)?\s*Z?", re.ASCII)
LAST = date(2100, 1, 1)


@dataclass(frozen=True, slots=True)
class Question:
    """The site with the 24 hours from 0 h UTC of a day on, and a moment of it, None where none was asked for."""

    site: Site
    day: date
    moment_s: float | None = None

    @property
    def week(self) -> int:
        """The GPS week of the day, counted from 1980."""
        return int(self.site.start_s // WEEK_S)


def question(place: tuple[float, float], day: str, *, time: str | None = None) -> Question:
    """The question about a place (degrees north and east), a day YYYY-MM-DD and a time of day HH:MM[:SS], both UTC.

    Raises OptionError, in plain words, for places that are not on earth and for days and times that are none.
    """
    north, east = place
    if not abs(north) <= 90:
        raise OptionError(f"{north:g} is no latitude: -90 to 90 is expected, north first, then east")
    if not abs(east) <= 180:
        raise OptionError(f"{east:g} is no longitude: -180 to 180 is expected, north first, then east")
    found = read_day(day)
    begins = datetime(found.year, found.month, found.day, tzinfo=UTC)
    start_s = gps_of(begins.timestamp())
    moment_s = None if time is None else gps_of((begins + read_time(time)).timestamp())
    return Question(Site(north, east, start_s), found, moment_s)


def read_day(text: str) -> date:
    """A day written YYYY-MM-DD, from the beginning of GPS on."""
    match = _DATE.fullmatch(text.strip())
    try:
        day = None if match is None else date(int(match[1]), int(match[2]), int(match[3]))
    except ValueError:
        day = None
    if day is None:
        raise OptionError(f"{text} is no day: YYYY-MM-DD is expected, such as 2026-03-31")
    first = datetime.fromtimestamp(EPOCH_UNIX_S, UTC).date()
    if not first <= day < LAST:
        raise OptionError(f"{text}: a day from {first} on, before {LAST}, is expected; GPS time begins there")
    return day


def read_time(text: str) -> timedelta:
    """A time of day written HH:MM or HH:MM:SS, in UTC."""
    match = _TIME.fullmatch(text.strip())
    hours, minutes, seconds = (0, 0, 0) if match is None else (int(match[1]), int(match[2]), int(match[3] or 0))
    if match is None or hours > 23 or minutes > 59 or seconds > 59:
        raise OptionError(f"{text} is no time of day: HH:MM or HH:MM:SS in UTC is expected, such as 14:30")
    fraction = int((match[4] or "").ljust(6, "0"))
    return timedelta(hours=hours, minutes=minutes, seconds=seconds, microseconds=fraction)
