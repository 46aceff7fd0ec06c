"""NMEA 0183 sentences with their checksums, for tests."""

from __future__ import annotations

from collections.abc import Sequence


def sentence(body: str) -> str:
    """`body` ('GPGGA,…') as a whole sentence; the checksum is reckoned here, letter by letter."""
    check = 0
    for letter in body:
        check ^= ord(letter)
    return f"${body}*{check:02X}"


def rmc(time: str, *, date: str = "140226", valid: bool = True, place: str = "4807.0380,N,01131.0000,E") -> str:
    """A position with date and no speed: '120000.00'."""
    return sentence(f"GPRMC,{time},{'A' if valid else 'V'},{place},0.0,,{date},,,{'A' if valid else 'N'}")


def gga(
    time: str, *, quality: int = 1, used: int = 8, hdop: str = "0.9", place: str = "4807.0380,N,01131.0000,E"
) -> str:
    """A position with the count of satellites and HDOP."""
    return sentence(f"GPGGA,{time},{place},{quality},{used:02d},{hdop},500.0,M,47.0,M,,")


def gsv(rows: Sequence[tuple[int, int, int, int | None]], *, talker: str = "GP") -> list[str]:
    """Satellites in view: (number, elevation, azimuth, C/N0), four to a sentence."""
    groups = [rows[start : start + 4] for start in range(0, len(rows), 4)]
    return [
        sentence(
            f"{talker}GSV,{len(groups)},{index},{len(rows):02d}"
            + "".join(f",{n:02d},{el:02d},{az:03d},{'' if cn0 is None else cn0}" for n, el, az, cn0 in group)
        )
        for index, group in enumerate(groups, start=1)
    ]
