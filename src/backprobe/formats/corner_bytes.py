"""Corners packed into few bytes: names once, places as the step from the one before.

The names in UTF-8, one a line, then a zero byte, then for each corner whole numbers of seven bits a byte (the high bit
says that more follow): the step north in units of 0.00001°, the step east (2n, or -2n - 1 for a step west), the kind
and the count of streets (kind + 4 × count), and each street's place in the list of names.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from backprobe.evidence.corner import Corner, CornerKind

UNITS_PER_DEG = 100_000
DIGITS = 5
KINDS = tuple(CornerKind)
MOST_BYTES = 40_000_000
MOST_BITS = 35
SOUTHERNMOST = -90 * UNITS_PER_DEG


class TornError(Exception):
    """The bytes end early or say what cannot be; the reader above turns it into words."""


def packed(corners: Sequence[Corner]) -> bytes:
    r"""The bytes of corners; read back they come from south to north, to the nearest 0.00001°.

    90.00002° north of the south pole are 9,000,002 units, 0x895442, in groups of seven bits from the low end: c2 a8 a5
    04.

    >>> packed([Corner(0.00002, 0.00003, ("A", "B"))])
    b'A\nB\x00\xc2\xa8\xa5\x04\x06\x08\x00\x01'
    """
    counts = Counter(street for corner in corners for street in corner.streets)
    names = sorted(counts, key=lambda name: (-counts[name], name))  # the frequent ones take one byte
    number = {name: at for at, name in enumerate(names)}
    rows = sorted((_units(c.lat_deg), _units(c.lon_deg), c.streets, KINDS.index(c.kind)) for c in corners)
    out = bytearray("\n".join(names).encode() + b"\0")
    last_north, last_east = SOUTHERNMOST, 0
    for north, east, streets, kind in rows:
        step = east - last_east
        numbers = [north - last_north, 2 * step if step >= 0 else -2 * step - 1, kind + 4 * len(streets)]
        for value in (*numbers, *(number[street] for street in streets)):
            out += _varint(value)
        last_north, last_east = north, east
    return bytes(out)


def unpacked(content: bytes) -> tuple[Corner, ...]:
    """The corners in the bytes, from south to north. Raises TornError."""
    text, end, rest = content.partition(b"\0")
    if not end:
        raise TornError
    names = text.decode().split("\n") if text else []
    if not all(name and name.isprintable() for name in names):  # they go to terminals and onto paper
        raise TornError
    numbers = iter(_numbers(rest))
    corners: list[Corner] = []
    north, east = SOUTHERNMOST, 0
    for step_north in numbers:
        step_east, kind_and_count = _next(numbers), _next(numbers)
        north += step_north
        east += step_east // 2 if step_east % 2 == 0 else -(step_east + 1) // 2
        streets = tuple(_named(names, _next(numbers)) for _ in range(kind_and_count // 4))
        corners.append(_corner(north, east, streets=streets, kind=kind_and_count % 4))
    return tuple(corners)


def _units(degrees: float) -> int:
    return round(degrees * UNITS_PER_DEG)


def _corner(north: int, east: int, *, streets: tuple[str, ...], kind: int) -> Corner:
    lat_deg, lon_deg = round(north / UNITS_PER_DEG, DIGITS), round(east / UNITS_PER_DEG, DIGITS)
    if len(streets) < 2 or kind >= len(KINDS) or abs(lat_deg) > 90.0 or abs(lon_deg) > 180.0:
        raise TornError
    return Corner(lat_deg, lon_deg, streets, KINDS[kind])


def _named(names: Sequence[str], number: int) -> str:
    if number >= len(names):
        raise TornError
    return names[number]


def _next(numbers: Iterator[int]) -> int:
    value = next(numbers, None)
    if value is None:
        raise TornError
    return value


def _varint(value: int) -> bytes:
    out = bytearray()
    while value > 0x7F:
        out.append(value & 0x7F | 0x80)
        value >>= 7
    out.append(value)
    return bytes(out)


def _numbers(content: bytes) -> Iterator[int]:
    value = shift = 0
    for byte in content:
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            yield value
            value = shift = 0
        elif shift >= MOST_BITS:
            raise TornError
    if shift:
        raise TornError
