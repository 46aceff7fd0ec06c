"""The cells of a roster: what each may hold, and what spreadsheets make of numbers that are no numbers.

A spreadsheet takes a serial for a number: it shows 1.2E+10, keeps fifteen digits and fills the rest with zeros, drops
leading zeros; it takes 3-12 for a day in December. What was lost that way cannot be got back from the file, so it is
said, not mended.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from datetime import date

from backprobe.limits.vin import VALUES as VIN_LETTERS

MOST_LETTERS = 200
VIN_LENGTH = 17
KEPT_DIGITS = 15
NAMES = ("plate", "fleet_number", "vin", "unit_serial", "unit_id")
LACUNA = "\ufffd"
_POWER = re.compile(r"[+-]?\d(?:[.,]\d+)?[eE]\+\d{1,3}", re.ASCII)
_POINT_ZERO = re.compile(r"\d+[.,]0+", re.ASCII)
_ERROR = re.compile(r"#(?:REF!|N/A|VALUE!|NAME\?|NUM!|DIV/0!|NULL!|SPILL!|CALC!|##+)", re.ASCII)
_MONTHS = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec"
_AS_DAY = re.compile(rf"(?:\d{{1,2}}[-. ](?:{_MONTHS})|(?:{_MONTHS})[-. ]\d{{2}})\.?", re.IGNORECASE | re.ASCII)
_DAYS = (
    re.compile(r"(?P<y>\d{4})[-/.](?P<m>\d{1,2})[-/.](?P<d>\d{1,2})(?:[T ]00:00(?::00(?:\.0+)?)?)?", re.ASCII),
    re.compile(r"(?P<d>\d{1,2})\.(?P<m>\d{1,2})\.(?P<y>\d{4})", re.ASCII),
)
_DAY_NUMBER = re.compile(r"[34]\d{4}(?:[.,]0+)?", re.ASCII)
_DEGREES = re.compile(r"[+-]?\d{1,3}(?:[.,]\d{1,15})?", re.ASCII)
USUAL_SHARE = 0.6
LEAST_ROWS = 4
DAY_EXPECTED = "a day, 2026-03-31 or 31.03.2026; with slashes the month may be meant first"


class BadCellError(Exception):
    """A cell that cannot be taken; it says what was expected instead."""

    def __init__(self, expected: str) -> None:
        super().__init__(expected)
        self.expected = expected


def text_of(text: str, column: str) -> str | None:
    """The text of a cell on one line; None for an empty one. Raises BadCellError.

    >>> text_of("  Box   van ", "type")
    'Box van'
    """
    plain = " ".join(text.split())
    if not plain:
        return None
    if len(plain) > MOST_LETTERS:
        raise BadCellError(f"at most {MOST_LETTERS} letters")
    if LACUNA in plain:
        raise BadCellError("letters that can be read; the file is in another encoding than it seems: save it as UTF-8")
    if not plain.isprintable():
        raise BadCellError("printable letters")
    if _ERROR.fullmatch(plain):
        raise BadCellError("a value; this is a spreadsheet's error")
    if plain.startswith("="):
        raise BadCellError("a value; this is a formula that was not worked out")
    if column in NAMES:
        _refuse_damage(plain, column)
    return plain


def _refuse_damage(plain: str, column: str) -> None:
    """Refuse what a spreadsheet has certainly made out of something else."""
    what = {"vin": "the VIN", "unit_serial": "the serial", "plate": "the plate"}.get(column, "the number")
    again = f"{what} as it is written on the thing itself: a spreadsheet"
    if _POWER.fullmatch(plain):
        raise BadCellError(f"{again} took it for a large number; set the column to text and fill it in again")
    if _POINT_ZERO.fullmatch(plain):
        raise BadCellError(f"{again} took it for a figure; set the column to text and fill it in again")


def vin_of(text: str) -> str | None:
    """The VIN in a cell, in capitals, without spaces and hyphens; None for an empty one. Raises BadCellError.

    >>> vin_of("1m8gdm9axkp 042788")
    '1M8GDM9AXKP042788'
    """
    plain = text_of(text, "vin")
    if plain is None:
        return None
    vin = "".join(c for c in plain.upper() if c not in " -.*")
    if len(vin) != VIN_LENGTH:
        raise BadCellError(f"a VIN of {VIN_LENGTH} characters; these are {len(vin)}")
    odd = sorted({c for c in vin if c not in VIN_LETTERS})
    if odd:
        raise BadCellError(f"a VIN without {', '.join(odd)}: letters I, O and Q are not used, 1 and 0 are")
    return vin


def day_of(text: str) -> str | None:
    """The day in a cell as 2026-03-31; None for an empty one. Raises BadCellError.

    >>> day_of("31.3.2026")
    '2026-03-31'
    """
    plain = text_of(text, "day")
    if plain is None:
        return None
    if _DAY_NUMBER.fullmatch(plain):
        raise BadCellError(f"{DAY_EXPECTED}; {plain} is how a spreadsheet counts days: set the column to a date")
    match = next((found for form in _DAYS if (found := form.fullmatch(plain))), None)
    if match is None:
        raise BadCellError(DAY_EXPECTED)
    try:
        return date(int(match["y"]), int(match["m"]), int(match["d"])).isoformat()
    except ValueError:
        raise BadCellError(f"{DAY_EXPECTED}; there is no such day") from None


def degrees_of(text: str, *, most: float) -> float | None:
    """The degrees in a cell, with a point or a comma; None for an empty one. Raises BadCellError.

    >>> degrees_of("51,0493", most=90.0)
    51.0493
    """
    plain = "".join(text.split()).replace("−", "-")
    if not plain:
        return None
    value = float(plain.replace(",", ".")) if _DEGREES.fullmatch(plain) else most + 1.0
    if abs(value) > most:
        raise BadCellError(f"degrees from -{most:.0f} to {most:.0f}, south and west negative: 51.0493")
    return value


def doubt_of(value: str, column: str) -> str | None:
    """What is to be asked of a name that can be taken, yet looks like a spreadsheet's work; None for nothing.

    >>> doubt_of("3-Dec", "fleet_number")
    'did a spreadsheet turn it into a day?'
    """
    if column not in NAMES:
        return None
    if _AS_DAY.fullmatch(value):
        return "did a spreadsheet turn it into a day?"
    digits = value if value.isascii() and value.isdigit() else ""
    if len(digits) > KEPT_DIGITS and not digits[KEPT_DIGITS:].strip("0"):
        return f"did a spreadsheet put zeros behind the first {KEPT_DIGITS} digits? it keeps no more"
    return None


def usual_digits(values: Sequence[str]) -> int | None:
    """How many digits the names of a column have, where most are of digits alone and most of these equally long.

    >>> usual_digits(["0417", "0418", "0419", "0420", "421"])
    4
    """
    lengths = Counter(len(value) for value in values if value.isascii() and value.isdigit())
    if not lengths:
        return None
    length, count = max(lengths.items(), key=lambda each: (each[1], each[0]))
    return length if count >= LEAST_ROWS and count >= USUAL_SHARE * len(values) else None
