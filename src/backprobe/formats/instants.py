"""A moment as servers and people write it: a date and time of day, or a count from 1970."""

from __future__ import annotations

import re
from datetime import UTC, datetime

EXPECTED = "a date and time, 2026-03-31T08:05:00Z, or a count of seconds from 1970"
# below this a count is of seconds, then of milliseconds, microseconds, nanoseconds (each reaches the year 5138)
_EPOCHS = ((10**11, 1), (10**14, 10**3), (10**17, 10**6), (10**20, 10**9))
_FIGURE = re.compile(r"[0-9]{1,20}(?:[.,][0-9]{0,9})?", re.ASCII)
_OF_DAY = r"[T ]+(?P<h>\d{1,2}):(?P<i>\d{2})(?::(?P<s>\d{2})(?:[.,](?P<f>\d{1,9}))?)?"
_ZONE = r"\s*(?P<zone>Z|UTC|GMT|[+-]\d{2}:?\d{2})?"
_FORMS = (
    re.compile(rf"(?P<y>\d{{4}})[-/.](?P<m>\d{{1,2}})[-/.](?P<d>\d{{1,2}}){_OF_DAY}{_ZONE}", re.ASCII | re.IGNORECASE),
    re.compile(rf"(?P<d>\d{{1,2}})\.(?P<m>\d{{1,2}})\.(?P<y>\d{{4}}),?{_OF_DAY}{_ZONE}", re.ASCII | re.IGNORECASE),
)


def read_instant(text: str) -> tuple[float, bool] | None:
    """Seconds since 1970 UTC, and whether the zone was stated; None for anything that is no moment, and before 1970.

    A time without a zone is taken as UTC. Counts of milliseconds, microseconds and nanoseconds are told by their
    size. Of dates with the day first only those with dots are read: slashes mean other things in other countries.

    >>> read_instant("2026-03-31T08:05:00+02:00"), read_instant("31.03.2026 08:05:00,5")
    ((1774937100.0, True), (1774944300.5, False))
    >>> read_instant("1774944300500"), read_instant("03/04/2026 08:05")
    ((1774944300.5, True), None)
    """
    if (
        len(text) > 15 and text[4] == "-" and text[7] == "-" and text[11:13] != "24"
    ):  # 24:00 is read by newer Pythons only
        try:
            moment = datetime.fromisoformat(text)
        except ValueError:
            return _spelt(text)
        return _seconds(moment)
    if _FIGURE.fullmatch(text):
        return _counted(int(text) if text.isdigit() else float(text.replace(",", ".")))
    return _spelt(text)


def _seconds(moment: datetime) -> tuple[float, bool] | None:
    zoned = moment.tzinfo is not None
    seconds = (moment if zoned else moment.replace(tzinfo=UTC)).timestamp()
    return (seconds, zoned) if seconds >= 0 else None


def _counted(value: float) -> tuple[float, bool] | None:
    """A whole count is divided as one: as a float it would lose a part of a microsecond."""
    by = next((rate for below, rate in _EPOCHS if value < below), None)
    return None if by is None else (value / by, True)


def _spelt(text: str) -> tuple[float, bool] | None:
    match = next((found for form in _FORMS if (found := form.fullmatch(text))), None)
    if match is None:
        return None
    second = int(match["s"] or 0)
    zone = (match["zone"] or "").upper()
    try:
        day = datetime(int(match["y"]), int(match["m"]), int(match["d"]), int(match["h"]), int(match["i"]), tzinfo=UTC)
    except ValueError:
        return None
    if second > 60:  # 60 is a leap second
        return None
    fraction = int((match["f"] or "").ljust(6, "0")[:6]) / 1e6
    seconds = day.timestamp() + second + fraction - _zone_s(zone)
    return (seconds, bool(zone)) if seconds >= 0 else None


def _zone_s(zone: str) -> int:
    if not zone or zone[0] not in "+-":
        return 0
    seconds = int(zone[1:3]) * 3600 + int(zone[-2:]) * 60
    return seconds if zone[0] == "+" else -seconds


def written_value(text: str) -> str | int | float:
    """The moment as it was written, for an answer in JSON: a figure as a figure, anything else as its text.

    >>> written_value("1774944300"), written_value("17.8"), written_value("2026-03-31T08:05:00Z")
    (1774944300, 17.8, '2026-03-31T08:05:00Z')
    """
    if text.isascii() and text.isdigit():
        return int(text)
    return float(text.replace(",", ".")) if _FIGURE.fullmatch(text) else text
