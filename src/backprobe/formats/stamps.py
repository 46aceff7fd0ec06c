"""The time of a row, as recorders write it: a count of seconds, or a date and time of day."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

DAY_US = 86_400_000_000
_HOUR_MINUTE = r"(?P<h>[0-9]{1,2}):(?P<m>[0-9]{2})"
_SECOND = r":(?P<s>[0-9]{2})(?:[.,](?P<f>[0-9]{1,9}))?"
_HALF = r"\s*(?P<half>[AaPp][Mm])?"
_OF_DAY = rf"{_HOUR_MINUTE}(?:{_SECOND})?{_HALF}"
_ZONE = r"\s*(?P<zone>Z|z|[+-][0-9]{2}:?[0-9]{2})?"
_YEAR_FIRST = re.compile(rf"(?P<a>[0-9]{{4}})[-/.](?P<b>[0-9]{{1,2}})[-/.](?P<c>[0-9]{{1,2}})[T ]+{_OF_DAY}{_ZONE}")
_YEAR_LAST = re.compile(
    rf"(?P<a>[0-9]{{1,2}})[-/.](?P<b>[0-9]{{1,2}})[-/.](?P<c>[0-9]{{4}}|[0-9]{{2}}),?[T ]+{_OF_DAY}"
)
_OF_DAY_ALONE = re.compile(rf"{_HOUR_MINUTE}{_SECOND}{_HALF}")
# first figure of a clock counting from 1970 -> how many of its units make a second (2001 to 5138 for each)
_EPOCHS = ((1e9, 1e11, 1.0), (1e12, 1e14, 1e3), (1e15, 1e17, 1e6), (1e18, 1e20, 1e9))


class NoTimeError(ValueError):
    """A cell that holds no time. Never leaves this package."""


@dataclass(frozen=True, slots=True)
class Stamps:
    """How the time column is read: `seconds(text)` in s from the recording's zero, NoTimeError for what is no time.

    Plain figures (`figures`) are (figure - `zero`) × `times` / `by`, which a reader may work out for many rows at
    once. `midnight` says that the clock starts again each day.
    """

    seconds: Callable[[str], float]
    figures: bool = False
    zero: float = 0.0
    times: float = 1.0
    by: float = 1.0
    midnight: bool = False


def stamps_of(samples: Sequence[str], per_unit: tuple[float, float] | None) -> Stamps | None:
    """How a column with these cells is read as a time; None where none of them is one.

    `per_unit` is the unit of the header (times, by); None takes figures as seconds, or as a count from 1970 where
    they are of that size. Dates, times of day and such counts begin at 0 with the first cell. Where day and month
    could be either, the day is taken to come first, unless a cell says otherwise or the clock has AM and PM.

    >>> clock = stamps_of(["06.06.2020 14:46:55", "06.06.2020 14:47:05"], None)
    >>> clock.seconds("07.06.2020 14:46:55,5")
    86400.5
    """
    cells = [cell.strip() for cell in samples if cell.strip()]
    figures = [figure for cell in cells if (figure := _figure(cell)) is not None]
    dates = {
        pattern: [match for cell in cells if (match := pattern.fullmatch(cell))]
        for pattern in (_YEAR_FIRST, _YEAR_LAST, _OF_DAY_ALONE)
    }
    pattern = max(dates, key=lambda each: len(dates[each]))
    if len(dates[pattern]) > len(figures):
        return _dated(pattern, dates[pattern])
    return _counted(figures[0], per_unit) if figures else None


def _figure(text: str) -> float | None:
    """The figure in a cell, decimal comma allowed; None for anything that is not a finite figure."""
    if "_" in text or not text.isascii():
        return None
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        return None
    return value if abs(value) < 1e300 else None  # NaN compares False


def _counted(first: float, per_unit: tuple[float, float] | None) -> Stamps:
    times, by = per_unit or (1.0, 1.0)
    zero = 0.0
    if per_unit is None:
        by = next((rate for low, high, rate in _EPOCHS if low <= first < high), 1.0)
    if first * times / by >= 1e9:
        zero = first

    def seconds(text: str) -> float:
        value = _figure(text)
        if value is None:
            raise NoTimeError(text)
        return (value - zero) * times / by

    return Stamps(seconds, figures=True, zero=zero, times=times, by=by)


def _dated(pattern: re.Pattern[str], matches: Sequence[re.Match[str]]) -> Stamps:
    order = _day_order(matches) if pattern is _YEAR_LAST else "abc" if pattern is _YEAR_FIRST else ""

    def microseconds(match: re.Match[str]) -> int:
        day = _day(tuple(match[group] for group in order)) if order else 0
        return day * DAY_US + _of_day_us(match) - _zone_us(match.groupdict().get("zone"))

    zero = next((us for match in matches if (us := _or_none(microseconds, match)) is not None), 0)

    def seconds(text: str) -> float:
        match = pattern.fullmatch(text.strip())
        us = None if match is None else _or_none(microseconds, match)
        if us is None:
            raise NoTimeError(text)
        return (us - zero) / 1e6

    return Stamps(seconds, midnight=not order)


def _or_none(read: Callable[[re.Match[str]], int], match: re.Match[str]) -> int | None:
    try:
        return read(match)
    except ValueError:
        return None


def _day_order(matches: Sequence[re.Match[str]]) -> str:
    """Which groups are year, month and day: 'cba' with the day first, 'cab' with the month first."""
    if any(int(match["a"]) > 12 for match in matches):
        return "cba"
    month_first = any(int(match["b"]) > 12 or match["half"] for match in matches)
    return "cab" if month_first else "cba"


@lru_cache(maxsize=64)
def _day(year_month_day: tuple[str, ...]) -> int:
    year, month, day = year_month_day
    return date(int(year) + (2000 if len(year) == 2 else 0), int(month), int(day)).toordinal()


def _of_day_us(match: re.Match[str]) -> int:
    hour, minute, second = int(match["h"]), int(match["m"]), int(match["s"] or 0)
    if match["half"]:
        hour = hour % 12 + (12 if match["half"].lower() == "pm" else 0)
    if hour > 24 or minute > 59 or second > 60:
        raise ValueError(match[0])
    fraction = int((match["f"] or "").ljust(6, "0")[:6])
    return ((hour * 60 + minute) * 60 + second) * 1_000_000 + fraction


def _zone_us(zone: str | None) -> int:
    if not zone or zone in "Zz":
        return 0
    minutes = int(zone[1:3]) * 60 + int(zone[-2:])
    return (minutes if zone[0] == "+" else -minutes) * 60_000_000
