"""The arithmetic of a vehicle identification number: check digit and model year, 49 CFR 565.15."""

from __future__ import annotations

from backprobe.limits.vin import MODEL_YEARS, NORTH_AMERICA, VALUES, WEIGHTS

LENGTH = 17
CHECK_AT = 8  # position 9, counted from 0
YEAR_AT = 9  # position 10
CYCLE_AT = 6  # position 7
CYCLE_YEARS = 30
FILLERS = " \t-*.\u00a0"  # what stands between or around the characters on plates and in lists


def tidied(typed: str) -> tuple[str, tuple[str, ...]]:
    """The VIN in capitals without spaces, hyphens, dots and stars, and in words what was tidied.

    >>> tidied("*1m8gdm9axkp 042788*")
    ('1M8GDM9AXKP042788', ('spaces, hyphens, dots or stars left out', 'small letters read as capitals'))
    """
    bare = "".join(c for c in typed.strip() if c not in FILLERS)
    capital = "".join(c.upper() if c.isascii() else c for c in bare)
    said = []
    if bare != typed:
        said.append("spaces, hyphens, dots or stars left out")
    if capital != bare:
        said.append("small letters read as capitals")
    return capital, tuple(said)


def is_well_formed(vin: str) -> bool:
    """Whether `vin` has 17 characters, each one that may stand in a VIN."""
    return len(vin) == LENGTH and all(c in VALUES for c in vin)


def is_north_american(vin: str) -> bool:
    """Whether the first character is one that is taken as North America: 1 to 5 (from memory, unverified)."""
    return vin[:1] in NORTH_AMERICA


def check_digit(vin: str) -> str:
    """The check digit that a well-formed VIN ought to have in position 9: '0' to '9', or 'X' for ten.

    The CFR's own example, whose weighted values add up to 411 = 37 × 11 + 4:

    >>> check_digit("1G4AH59H45G118341")
    '4'
    """
    remainder: int = sum(VALUES[c] * weight for c, weight in zip(vin, WEIGHTS, strict=True)) % 11
    return "X" if remainder == 10 else str(remainder)


def has_right_check_digit(vin: str) -> bool:
    """Whether `vin` is well formed and its position 9 is what the other characters ask for."""
    return is_well_formed(vin) and vin[CHECK_AT] == check_digit(vin)


def model_years(vin: str, *, heavy: bool | None = None, job_year: int | None = None) -> tuple[int, ...]:
    """The model years that position 10 of a well-formed VIN allows, earliest first; none for a code not in use.

    Each code returns after 30 years. For vehicles of at most 4536 kg (`heavy` False) a letter in position 7
    says the later cycle, a digit the earlier; for heavier ones, or where it is not known, both stand. A vehicle
    fitted in `job_year` is at most of the next model year (common practice, no source).

    >>> model_years("1M8GDM9AXKP042788", heavy=True)
    (1989, 2019)
    """
    first = MODEL_YEARS.get(vin[YEAR_AT])
    if first is None:
        return ()
    later = first + CYCLE_YEARS
    years = (first, later)
    if heavy is False:
        years = (later, later) if vin[CYCLE_AT].isalpha() else (first, first)
    return tuple(sorted({year for year in years if job_year is None or year <= job_year + 1}))
