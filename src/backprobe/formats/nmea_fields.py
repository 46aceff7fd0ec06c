"""The fields of the sentences that are read: positions, times, satellites. Fields as in formats/nmea_sentence.py."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from backprobe.evidence.epoch import SatelliteSample
from backprobe.formats.nmea_satellites import is_main_signal, satellite_id
from backprobe.formats.nmea_sentence import Sentence

MPS_PER_KNOT = 1852 / 3600
_PER_GSV = 4
_CENTURY_TURNS = 80  # a year of two digits: 80 to 99 are of the last century (GPS began in 1980)
_NO_SATELLITE_FIX = "NEMS"  # modes: none, estimated, manual, simulated
_SATELLITE_FIX = frozenset("123459")  # of GGA: 0 is none, 6 estimated, 7 manual, 8 simulated; 9 is some makers' own


class FieldError(Exception):
    """A field that cannot be what it should."""


@dataclass(frozen=True, slots=True)
class Said:
    """What a sentence says of the moment it belongs to: None where it says nothing of it.

    `tod_s` is the time of day [s], `day` the date as a day count, `valid` whether there is a fix, `place` its degrees
    north and east.
    """

    tod_s: float | None = None
    day: int | None = None
    valid: bool | None = None
    place: tuple[float, float] | None = None
    used: int | None = None
    hdop: float | None = None
    speed_mps: float | None = None


def number(text: str) -> float | None:
    """The number that a field holds; None where it is empty. Raises FieldError."""
    if not text:
        return None
    try:
        value = float(text)
    except ValueError:
        raise FieldError from None
    if not math.isfinite(value) or "_" in text:
        raise FieldError
    return value


def time_of_day_s(text: str) -> float | None:
    """Seconds since midnight of hhmmss.ss; None where it is empty.

    >>> time_of_day_s("195959.00")
    71999.0
    """
    if not text:
        return None
    if not text[:6].isdecimal() or len(text) < 6:
        raise FieldError
    hour, minute, second = int(text[:2]), int(text[2:4]), number(text[4:])
    if second is None or hour > 23 or minute > 59 or not 0 <= second < 61:
        raise FieldError
    return hour * 3600 + minute * 60 + second


def day_of(day: str, month: str, *, year: str) -> int | None:
    """The day as a count; None where it is empty. Raises FieldError."""
    if not (day and month and year):
        return None
    try:
        full = int(year)
        if full < 100:
            full += 1900 if full >= _CENTURY_TURNS else 2000
        return date(full, int(month), int(day)).toordinal()
    except ValueError:
        raise FieldError from None


def degrees(text: str, side: str) -> float | None:
    """Degrees of dddmm.mmmm with N, S, E or W; None where it is empty.

    >>> round(degrees("1541.31258893", "N"), 9)
    15.688543149
    """
    if not text or not side:
        return None
    value = number(text)
    if value is None or value < 0 or side not in "NSEW" or len(side) != 1:
        raise FieldError
    whole = int(value / 100)
    minutes = value - 100 * whole
    found = whole + minutes / 60
    if minutes >= 60 or found > (90 if side in "NS" else 180):
        raise FieldError
    return -found if side in "SW" else found


def _place(fields: list[str], at: int) -> tuple[float, float] | None:
    north, east = degrees(fields[at], fields[at + 1]), degrees(fields[at + 2], fields[at + 3])
    return None if north is None or east is None else (north, east)


def _count(text: str) -> int | None:
    value = number(text)
    return None if value is None else int(value)


def _rmc(fields: list[str]) -> Said:
    mode = fields[11] if len(fields) > 11 else ""
    knots = number(fields[6])
    stamp = fields[8]
    return Said(
        tod_s=time_of_day_s(fields[0]),
        day=day_of(stamp[:2], stamp[2:4], year=stamp[4:6]),
        valid=fields[1] == "A" and (mode == "" or mode not in _NO_SATELLITE_FIX),
        place=_place(fields, 2),
        speed_mps=None if knots is None else knots * MPS_PER_KNOT,
    )


def _gga(fields: list[str]) -> Said:
    return Said(
        tod_s=time_of_day_s(fields[0]),
        valid=fields[5] in _SATELLITE_FIX,
        place=_place(fields, 1),
        used=_count(fields[6]),
        hdop=number(fields[7]),
    )


def _gns(fields: list[str]) -> Said:
    return Said(
        tod_s=time_of_day_s(fields[0]),
        valid=any(mode not in _NO_SATELLITE_FIX for mode in fields[5]),
        place=_place(fields, 1),
        used=_count(fields[6]),
        hdop=number(fields[7]),
    )


def _gll(fields: list[str]) -> Said:
    mode = fields[6] if len(fields) > 6 else ""
    return Said(
        tod_s=time_of_day_s(fields[4]),
        valid=fields[5] == "A" and (mode == "" or mode not in _NO_SATELLITE_FIX),
        place=_place(fields, 0),
    )


def _zda(fields: list[str]) -> Said:
    return Said(tod_s=time_of_day_s(fields[0]), day=day_of(fields[1], fields[2], year=fields[3]))


MOMENTS: Mapping[str, Callable[[list[str]], Said]] = {"RMC": _rmc, "GGA": _gga, "GNS": _gns, "GLL": _gll, "ZDA": _zda}


def said_of(sentence: Sentence) -> Said:
    """What a sentence of a kind in `MOMENTS` says. Raises FieldError where a field is missing or cannot be."""
    try:
        return MOMENTS[sentence.kind](sentence.fields)
    except IndexError:
        raise FieldError from None


def speed_of(sentence: Sentence) -> float | None:
    """The speed [m/s] of a VTG sentence."""
    fields = sentence.fields
    knots = number(fields[4]) if len(fields) > 5 and fields[5] == "N" else None
    return None if knots is None else knots * MPS_PER_KNOT


def used_in(sentence: Sentence) -> tuple[frozenset[str], float | None]:
    """The satellites that a GSA sentence names as used, and its HDOP. Raises FieldError."""
    fields = sentence.fields
    if len(fields) < 17:
        raise FieldError
    system = fields[17] if len(fields) > 17 else ""
    if fields[1] not in ("2", "3"):
        return frozenset(), None
    ids = (satellite_id(sentence.talker, text, system=system) for text in fields[2:14] if text)
    return frozenset(one for one in ids if one is not None), number(fields[15])


def in_view(sentence: Sentence) -> Iterator[tuple[SatelliteSample, bool]]:
    """The satellites of a GSV sentence, each with whether it is heard on its main signal. Raises FieldError."""
    fields = sentence.fields
    rows, more = divmod(len(fields) - 3, _PER_GSV)
    signal = fields[-1] if more == 1 else ""
    for row in range(rows):
        named, elevation, azimuth, strength = fields[3 + row * _PER_GSV : 7 + row * _PER_GSV]
        satellite = satellite_id(sentence.talker, named)
        if satellite is None:
            continue
        az_deg, el_deg = _direction(azimuth, elevation)
        cn0 = number(strength)
        if cn0 is not None and not 0 <= cn0 < 100:
            raise FieldError
        heard = None if cn0 is None or cn0 == 0 else cn0  # some makers write 00 for a signal that is not there
        yield SatelliteSample(satellite, az_deg, el_deg, heard), is_main_signal(satellite, signal)


def _direction(azimuth: str, elevation: str) -> tuple[int | None, int | None]:
    """Azimuth and elevation [°]; both None where one is missing, or both are 0 as they stand before they are known."""
    az, el = number(azimuth), number(elevation)
    if az is None or el is None or (az == 0 and el == 0):
        return None, None
    if not 0 <= az <= 360 or not -90 <= el <= 90:
        raise FieldError
    return round(az) % 360, round(el)
