"""Which satellite a number means, and which of a satellite's signals is its main one.

Numbers: GPS 1 to 32, SBAS 33 to 64 (broadcast number less 87), GLONASS 65 to 96 (slot plus 64), QZSS 193 to 202;
Galileo, BeiDou and NavIC count from 1 under their own talkers, or from 301, 201 or 401 in one common count (practice of
makers of receivers, from memory). Ids are those of RINEX 3: a letter for the system and two digits. System and signal
numbers of NMEA 0183 version 4.1x: from memory.
"""

from __future__ import annotations

from functools import cache

_BY_TALKER = {"GP": "G", "GL": "R", "GA": "E", "GB": "C", "BD": "C", "GQ": "J", "QZ": "J", "PQ": "J", "GI": "I"}
_BY_SYSTEM = {"1": "G", "2": "R", "3": "E", "4": "C", "5": "J", "6": "I"}
# the civil signal near 1575 or 1602 MHz; an empty or 0 id says that the receiver does not tell signals apart
_MAIN = {"G": "1", "R": "1", "E": "67", "C": "13", "J": "12", "I": "", "S": "1"}
# in one common count: first and last number, letter, what is taken off
_COMMON = (
    (1, 32, "G", 0),
    (33, 64, "S", -87),
    (65, 96, "R", 64),
    (120, 158, "S", 0),
    (193, 202, "J", 192),
    (201, 264, "C", 200),
    (301, 336, "E", 300),
    (401, 437, "C", 400),
)


@cache
def satellite_id(talker: str, number: str, *, system: str = "") -> str | None:
    """The id of a satellite as a sentence of `talker` numbers it; `system` is the system number of version 4.1x.

    None where the text is no number.

    >>> satellite_id("GP", "07"), satellite_id("GL", "70"), satellite_id("GN", "12", system="3")
    ('G07', 'R06', 'E12')
    """
    if not number.isdecimal() or not number.isascii() or not 0 < int(number) < 1000:
        return None
    count = int(number)
    letter = _BY_SYSTEM.get(system) or _BY_TALKER.get(talker)
    if letter is None or letter == "G":
        return _common(count) or f"{letter or 'X'}{count:02d}"
    own = next((n - off for first, last, own, off in _COMMON if own == letter and first <= (n := count) <= last), count)
    return f"{letter}{own:02d}"


def _common(count: int) -> str | None:
    found = ((letter, count - off) for first, last, letter, off in _COMMON if first <= count <= last)
    return next((f"{letter}{number:02d}" for letter, number in found), None)


def is_main_signal(satellite: str, signal: str) -> bool:
    """Whether a signal id is that of the satellite's main signal, or tells none apart.

    >>> is_main_signal("G06", "8"), is_main_signal("E03", "7"), is_main_signal("E03", "")
    (False, True, True)
    """
    return signal in ("", "0") or signal.upper() in _MAIN.get(satellite[0], "1")
