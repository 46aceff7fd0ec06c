"""Which vehicles are of the same type, as far as their VINs can say."""

from __future__ import annotations

from backprobe.errors import InputError
from backprobe.stages.walkround.vin_number import is_well_formed, tidied

SMALL_MAKER = "9"  # in position 3: positions 12 to 14 belong to the maker's own number (49 CFR 565.15(a))


def same_type(vin: str) -> str:
    """The pattern that VINs of one type share: maker and description (positions 1 to 8), model year (10), plant (11).

    The check digit (9) and the serial number (12 to 17) are left out; of a maker of few vehicles, whose number goes on
    in positions 12 to 14, these are kept. Raises InputError for what is no well-formed VIN.

    >>> same_type("5ZLDR7HV5KR200417"), same_type("5zldr7hv-x-kr200588")
    ('5ZLDR7HV-KR', '5ZLDR7HV-KR')
    """
    bare, _ = tidied(vin)
    if not is_well_formed(bare):
        raise InputError(f"{vin!r} is no well-formed VIN: which type it is cannot be told")
    small = f"-{bare[11:14]}" if bare[2] == SMALL_MAKER else ""
    return f"{bare[:8]}-{bare[9:11]}{small}"
