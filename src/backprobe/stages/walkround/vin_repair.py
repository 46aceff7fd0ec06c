"""Which misread characters would make a VIN right: proposals to look at the plate again, never corrections."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from backprobe.limits.vin import MISREAD, MODEL_YEARS, VALUES
from backprobe.stages.walkround.vin_number import (
    CHECK_AT,
    LENGTH,
    YEAR_AT,
    has_right_check_digit,
    is_north_american,
)

SWAP_RANK = 5  # two neighbours swapped while typing: less likely than any misread character (no source)
ANY_RANK = 6  # a character that looks like none in particular: any one may be meant
ILLEGAL_MOST = 3  # with more unreadable characters than this a proposal is worth nothing


@dataclass(frozen=True, slots=True)
class Repair:
    """A VIN with a right check digit, one misreading away: `read` stands at `positions` (from 1), `meant` would fit.

    `rank` orders by likelihood, the smallest first.
    """

    vin: str
    positions: tuple[int, ...]
    read: str
    meant: str
    rank: int

    @property
    def words(self) -> str:
        """What to look for on the plate: 'position 14 is S, not 5'."""
        where = " and ".join(str(position) for position in self.positions)
        are = "positions {} are" if len(self.positions) > 1 else "position {} is"
        return f"{are.format(where)} {self.meant}, not {self.read}"


def repairs(vin: str) -> tuple[Repair, ...]:
    """All proposals for a tidied VIN of North America that is wrong, the likeliest first; every one checks out.

    A VIN with I, O, Q or other characters that never stand in one gets proposals for exactly those; another
    gets proposals of one misread character or of two neighbours swapped. None where the length is wrong.
    """
    if len(vin) != LENGTH or has_right_check_digit(vin):
        return ()
    wrong = [at for at, c in enumerate(vin) if c not in VALUES]
    proposed = _replaced(vin, wrong) if wrong else (*_misread(vin), *_swapped(vin))
    return tuple(sorted((r for r in proposed if _may_be(r.vin)), key=lambda r: (r.rank, r.positions, r.vin)))


def _may_be(vin: str) -> bool:
    return (
        has_right_check_digit(vin)
        and is_north_american(vin)
        and vin[YEAR_AT] in MODEL_YEARS
        and vin[_digits_from(vin) :].isdigit()
    )


def _digits_from(vin: str) -> int:
    """From which position (counted from 0) on only digits stand: the serial number of the vehicle.

    That is position 14; or 15 for makers of few vehicles, whose 9 in position 3 says that positions 12 to 14
    belong to the maker's own number (565.15(a)). That these are digits only is from memory (565.15(d)): it is
    used to leave proposals out, never to judge.
    """
    return 14 if vin[2] == "9" else 13


def _repair(vin: str, at: tuple[int, ...], *, meant: tuple[str, ...], rank: int) -> Repair:
    characters = list(vin)
    for position, character in zip(at, meant, strict=True):
        characters[position] = character
    read = "".join(vin[position] for position in at)
    return Repair("".join(characters), tuple(position + 1 for position in at), read, "".join(meant), rank)


def _replaced(vin: str, wrong: list[int]) -> Iterator[Repair]:
    """Each way to put likely characters in the place of those that never stand in a VIN."""
    if len(wrong) > ILLEGAL_MOST:
        return
    any_one = dict.fromkeys(VALUES, ANY_RANK) if len(wrong) == 1 else {}
    choices = [[(c, rank) for c, rank in MISREAD.get(vin[at], any_one).items() if c in VALUES] for at in wrong]
    for chosen in product(*choices):
        rank: int = sum(rank for _, rank in chosen)
        yield _repair(vin, tuple(wrong), meant=tuple(c for c, _ in chosen), rank=rank)


def _misread(vin: str) -> Iterator[Repair]:
    for at, read in enumerate(vin):
        for meant, rank in MISREAD.get(read, {}).items():
            yield _repair(vin, (at,), meant=(meant,), rank=rank)


def _swapped(vin: str) -> Iterator[Repair]:
    for at in range(LENGTH - 1):
        here, there = vin[at], vin[at + 1]
        if here != there and CHECK_AT not in (at, at + 1):
            yield _repair(vin, (at, at + 1), meant=(there, here), rank=SWAP_RANK)
