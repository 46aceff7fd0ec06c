"""RINEX 2 and 3 navigation files: the broadcast ephemerides of GPS satellites, a block of eight lines for each set.

Columns by the RINEX 2.11 and 3.04 documents (from memory; held to real files in the tests). Sets of other systems are
counted and passed over, a block that is torn or spliced is passed over with its place.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.orbits import Elements, Orbits
from backprobe.formats.navigation_text import Passed, figure, oddity
from backprobe.physics.gps_time import EPOCH_UNIX_S, WEEK_S

MARK = "RINEX VERSION / TYPE"
END = "END OF HEADER"
WHAT = "a RINEX 2 or 3 navigation file of GPS"
GOOD_FOR_S = 2 * 3600.0  # IS-GPS-200: fit interval of four hours around toe
ORBIT_LINES = 7
MOST_BLOCK = 20
_WIDTH = 19
_FIRST = {2: 22, 3: 23}  # column of the first figure of the epoch line
_INDENT = {2: 3, 3: 4}  # and of the lines below it
_EPOCH = {
    2: re.compile(r"[ \d]\d [ \d]\d [ \d]\d [ \d]\d [ \d]\d [ \d]\d[ \d]{3}\.\d", re.ASCII),
    3: re.compile(r"[A-Z][ \d]\d \d{4} [ \d]\d [ \d]\d [ \d]\d [ \d]\d [ \d]\d", re.ASCII),
}
_SYSTEMS = {"R": "GLONASS", "E": "Galileo", "C": "BeiDou", "J": "QZSS", "I": "NavIC", "S": "SBAS"}


@dataclass(slots=True)
class _Reading:
    """What has been read of a file so far."""

    version: int
    passed: Passed
    sets: list[Elements] = field(default_factory=list)
    others: Counter[str] = field(default_factory=Counter)


def is_rinex(first_lines: Sequence[str]) -> bool:
    """Whether a file that begins so is RINEX of any kind."""
    return any(MARK in line for line in first_lines)


def read_rinex_nav(lines: Iterable[str], *, file: str) -> Orbits:
    """The orbits in a navigation file; raises UnreadableError, in plain words, for any other file."""
    numbered = iter(enumerate(lines, 1))
    version: int | None = None
    leap_s: int | None = None
    for number, line in numbered:
        label = line[60:80].strip()
        if version is None:
            version = _version(line, file, number=number)
        elif label == "LEAP SECONDS":
            whole = line[:6].strip()
            leap_s = int(whole) if whole.isascii() and whole.isdigit() else None
        elif label == END:
            break
    else:
        raise UnreadableError(Place(file), f"a line '{END}': the head of this file is torn off, or there is no more")
    reading = _Reading(version or 2, Passed(file))
    block: list[tuple[int, str]] = []
    for number, line in numbered:
        if _EPOCH[reading.version].match(line):
            _close(block, reading)
            block = [(number, line)]
        elif line.strip() and len(block) <= MOST_BLOCK:  # more can be no set, however long the file goes on so
            block.append((number, line))
    _close(block, reading)
    if not reading.sets and reading.others:
        names = ", ".join(reading.others)
        raise UnreadableError(Place(file), f"{WHAT}; this one holds {names} alone")
    reading.passed.refuse_empty(reading.sets, WHAT)
    return Orbits(
        file=file,
        kind=f"RINEX {version} navigation file",
        good_for_s=GOOD_FOR_S,
        sets=tuple(reading.sets),
        skipped=tuple(reading.passed.first),
        skipped_count=reading.passed.count,
        others=dict(reading.others),
        leap_s=leap_s,
    )


def _version(line: str, file: str, *, number: int) -> int:
    place = Place(file, number, line)
    if line[60:80].strip() != MARK:
        raise UnreadableError(place, f"'{MARK}' in columns 61 to 80 of the first line of {WHAT}")
    version, kind, system = figure(line[:9]), line[20:21].upper(), line[40:41].upper()
    if version is None or int(version) not in _FIRST:
        raise UnreadableError(place, f"{WHAT}; versions from 4 on and before 2 are not read")
    if kind == "O":
        raise UnreadableError(place, f"{WHAT}; this is an observation file of a receiver")
    if kind != "N" or (int(version) == 3 and system not in "GM "):
        raise UnreadableError(place, f"{WHAT}; this one is of another kind or system")
    return int(version)


def _close(block: Sequence[tuple[int, str]], reading: _Reading) -> None:
    """Take the block that has ended: the epoch line and what stood below it."""
    if not block:
        return
    number, head = block[0]
    if reading.version == 3 and head[0] != "G":
        system = _SYSTEMS.get(head[0])
        if system is not None and _EPOCH[3].match(head):
            reading.others[system] += 1
        else:
            reading.passed.over(number, head, expected="a set that begins with its satellite, G07, and the time")
        return
    own, rest = block[: 1 + ORBIT_LINES], block[1 + ORBIT_LINES :]
    fault = _take(own, reading)
    if fault is not None:
        reading.passed.over(number, head, expected=fault)
    if rest:  # the line with which the next set began cannot be read
        reading.passed.over(*rest[0], expected="a satellite with its time, at the head of its own lines")


def _take(block: Sequence[tuple[int, str]], reading: _Reading) -> str | None:
    """Add the block's elements; returns what is wrong with it where it cannot be taken."""
    version = reading.version
    if len(block) < 1 + ORBIT_LINES or not _EPOCH[version].match(block[0][1]):
        return f"a satellite with its time, and {ORBIT_LINES} lines below it; there are {len(block) - 1}"
    rows = [_figures(block[0][1], _FIRST[version], count=3)]
    rows += [_figures(line, _INDENT[version], count=4) for _, line in block[1:]]
    needed = [*rows[1:6], rows[6][:2]]  # further on some writers leave figures out
    if any(value is None for row in needed for value in row):
        return "figures of 19 columns each, 0.123456789012D+01"
    toc_s = _epoch_s(block[0][1], version)
    if toc_s is None:
        return "a date and time that there is"
    if not 0 <= (rows[3][0] or 0.0) < WEEK_S:
        return "seconds of the week from 0 to 604799 in the fourth line"
    elements = _elements(_name(block[0][1], version), [[v or 0.0 for v in row] for row in rows], toc_s=toc_s)
    odd = oddity(elements)
    if odd is None:
        reading.sets.append(elements)
    return odd


def _figures(line: str, first: int, *, count: int) -> list[float | None]:
    return [figure(line[first + k * _WIDTH : first + (k + 1) * _WIDTH]) for k in range(count)]


def _name(head: str, version: int) -> str:
    return f"G{int(head[:2]):02d}" if version == 2 else f"G{int(head[1:3]):02d}"


def _epoch_s(head: str, version: int) -> float | None:
    """The epoch line's time as GPS seconds: these files count in GPS time, without leap seconds."""
    fields = [int(text) for text in (head[2:18] if version == 2 else head[4:21]).split()[:5]]
    second = figure(head[17:22] if version == 2 else head[21:23])
    year = fields[0] + (0 if version == 3 else 1900 if fields[0] >= 80 else 2000)
    _, month, day, hour, minute = fields
    try:
        moment = datetime(year, month, day, hour, minute, tzinfo=UTC)
    except ValueError:
        return None
    return moment.timestamp() - EPOCH_UNIX_S + (second or 0.0)


def _elements(name: str, rows: Sequence[Sequence[float]], *, toc_s: float) -> Elements:
    """The elements by the rows of figures; the week is that in which toe is nearest to the clock's own time.

    So it does not matter whether a writer counted the week from 1980 or modulo 1024.
    """
    _, (_, crs, delta_n, m0), (cuc, e, cus, sqrt_a), (toe, cic, omega0, cis), (i0, crc, omega, omega_dot) = rows[:5]
    i_dot, health = rows[5][0], rows[6][1]
    week_start_s = WEEK_S * round((toc_s - toe) / WEEK_S)
    return Elements(
        id=name,
        toe_s=week_start_s + toe,
        sqrt_a=sqrt_a,
        e=e,
        i0_rad=i0,
        omega0_rad=omega0,
        omega_rad=omega,
        m0_rad=m0,
        omega_dot_rad_s=omega_dot,
        i_dot_rad_s=i_dot,
        delta_n_rad_s=delta_n,
        cuc_rad=cuc,
        cus_rad=cus,
        crc_m=crc,
        crs_m=crs,
        cic_rad=cic,
        cis_rad=cis,
        healthy=health == 0,
    )
