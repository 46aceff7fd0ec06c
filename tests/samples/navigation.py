"""Invented orbits of GPS, and the texts in which files of each kind would hold them."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta

from backprobe.evidence.orbits import Elements

WEEK_S = 604_800
WEEK = 2155
TOE_S = WEEK * WEEK_S + 352_800.0  # Thursday 29 April 2021, 2 h GPS time
EPOCH = datetime(1980, 1, 6, tzinfo=UTC)
START_S = WEEK * WEEK_S + 345_618.0  # 29 April 2021, 0 h UTC


def elements(number: int = 7, *, toe_s: float = TOE_S, healthy: bool = True, plain: bool = False) -> Elements:
    """An invented satellite; `plain` leaves out what an almanac does not hold."""
    plane, slot = number % 6, number // 6
    small = 0.0 if plain else 1.0
    return Elements(
        id=f"G{number:02d}",
        toe_s=toe_s,
        sqrt_a=5153.7 + 0.01 * number,
        e=0.004 + 0.0003 * number,
        i0_rad=0.96 + 0.002 * (number % 5),
        omega0_rad=wrapped(plane * math.pi / 3 + 0.1),
        omega_rad=wrapped(0.7 * number),
        m0_rad=wrapped(slot * 1.2 + plane * 0.35 - 0.7 * number),
        omega_dot_rad_s=-8.0e-9,
        i_dot_rad_s=2.0e-10 * small,
        delta_n_rad_s=4.5e-9 * small,
        cuc_rad=-3.0e-6 * small,
        cus_rad=8.0e-6 * small,
        crc_m=210.0 * small,
        crs_m=-60.0 * small,
        cic_rad=1.1e-7 * small,
        cis_rad=-9.0e-8 * small,
        healthy=healthy,
    )


def constellation(count: int = 31, *, plain: bool = False) -> tuple[Elements, ...]:
    """`count` invented satellites."""
    return tuple(elements(number, plain=plain) for number in range(1, count + 1))


def wrapped(angle: float) -> float:
    """The angle within half a turn of 0 [rad]."""
    return math.remainder(angle, 2 * math.pi)


def rinex2(sets: Iterable[Elements], *, leap_s: int | None = 18) -> list[str]:
    """The lines of a RINEX 2 navigation file."""
    return [*head("     2              NAVIGATION DATA", leap_s), *(line for each in sets for line in _block(each, 2))]


def rinex3(sets: Iterable[Elements], *, others: Sequence[str] = (), leap_s: int | None = 18) -> list[str]:
    """The lines of a RINEX 3 navigation file; `others` are lines of other systems' sets, put before GPS's."""
    first = f"{'     3.04           N: GNSS NAV DATA':<40}M: MIXED"
    return [*head(first, leap_s), *others, *(line for each in sets for line in _block(each, 3))]


def other_set(system: str, *, lines: int) -> list[str]:
    """A set of another system with so many lines below its first one."""
    figures = "".join(d19(0.5 * k) for k in range(1, 5))
    return [f"{system}11 2021 04 29 02 00 00{figures[:57]}", *[f"    {figures}"] * lines]


def head(first: str, leap_s: int | None) -> list[str]:
    """The head of a RINEX file, labels in columns 61 to 80."""
    rows = [
        (first, "RINEX VERSION / TYPE"),
        ("invented                                20210430", "PGM / RUN BY / DATE"),
    ]
    if leap_s is not None:
        rows.append((f"{leap_s:6d}", "LEAP SECONDS"))
    rows.append(("", "END OF HEADER"))
    return [f"{text:<60}{label}" for text, label in rows]


def d19(value: float) -> str:
    """A figure in 19 columns with Fortran's D, its digits behind the point."""
    if value == 0:
        return f"{' 0.000000000000D+00':>19}"
    power = math.floor(math.log10(abs(value))) + 1
    digits = f"{value / 10.0**power:.12f}"
    if digits.lstrip("-").startswith("1"):
        power, digits = power + 1, f"{value / 10.0 ** (power + 1):.12f}"
    return f"{digits}D{power:+03d}".rjust(19)


def _block(each: Elements, version: int) -> list[str]:
    at = EPOCH + timedelta(seconds=each.toe_s)
    clock = "".join(d19(value) for value in (1.2e-5, 3.0e-12, 0.0))
    number = int(each.id[1:])
    if version == 2:
        second = f"{at.second:5.1f}"
        first = f"{number:2d} {at:%y} {at.month:2d} {at.day:2d} {at.hour:2d} {at.minute:2d}{second}{clock}"
    else:
        first = f"G{number:02d} {at:%Y %m %d %H %M %S}{clock}"
    rows = (
        (41.0, each.crs_m, each.delta_n_rad_s, each.m0_rad),
        (each.cuc_rad, each.e, each.cus_rad, each.sqrt_a),
        (each.toe_s % WEEK_S, each.cic_rad, each.omega0_rad, each.cis_rad),
        (each.i0_rad, each.crc_m, each.omega_rad, each.omega_dot_rad_s),
        (each.i_dot_rad_s, 1.0, float(each.toe_s // WEEK_S), 0.0),
        (2.0, 0.0 if each.healthy else 63.0, -1.1e-8, 41.0),
        (each.toe_s % WEEK_S - 18.0, 4.0),
    )
    indent = " " * (3 if version == 2 else 4)
    return [first, *(indent + "".join(d19(value) for value in row) for row in rows)]


def yuma(sets: Iterable[Elements], *, modulo: bool = True) -> list[str]:
    """The lines of a YUMA almanac."""
    return [line for each in sets for line in _yuma_block(each, modulo=modulo)]


def _yuma_block(each: Elements, *, modulo: bool) -> list[str]:
    week = int(each.toe_s // WEEK_S)
    week = week % 1024 if modulo else week
    number = int(each.id[1:])
    return [
        f"******** Week {week} almanac for PRN-{number:02d} ********",
        f"ID:                         {number:02d}",
        f"Health:                     {0 if each.healthy else 63:03d}",
        f"Eccentricity:               {each.e:.10E}",
        f"Time of Applicability(s):  {each.toe_s % WEEK_S:.4f}",
        f"Orbital Inclination(rad):   {each.i0_rad:.10f}",
        f"Rate of Right Ascen(r/s):  {each.omega_dot_rad_s:.10E}",
        f"SQRT(A)  (m 1/2):           {each.sqrt_a:.6f}",
        f"Right Ascen at Week(rad):  {each.omega0_rad:.10E}",
        f"Argument of Perigee(rad):   {each.omega_rad:.9f}",
        f"Mean Anom(rad):            {each.m0_rad:.10E}",
        "Af0(s):                     0.4768371582E-003",
        "Af1(s/s):                  -0.1091393642E-010",
        f"week:                        {week}",
        "",
    ]


def sem(sets: Sequence[Elements]) -> list[str]:
    """The lines of a SEM almanac; all sets are of the first one's time."""
    week, second = divmod(sets[0].toe_s, WEEK_S)
    lines = [f"{len(sets)}  CURRENT.ALM", f"  {int(week) % 1024} {int(second)}"]
    for each in sets:
        half = math.pi
        lines += [
            "",
            f"{int(each.id[1:])}",
            "63",
            "0",
            f" {each.e:.14E} {each.i0_rad / half - 0.3:.14E} {each.omega_dot_rad_s / half:.14E}",
            f" {each.sqrt_a:.14E} {each.omega0_rad / half:.14E} {each.omega_rad / half:.14E}",
            f" {each.m0_rad / half:.14E} 4.76837158203125E-04 -1.09139364212751E-11",
            f"{0 if each.healthy else 63}",
            "11",
        ]
    return lines
