"""The header of a readings table: which column is which."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.errors import Place, UnreadableError
from backprobe.formats.cells import cells_of, delimiter_of

REQUIRED = ("wire", "key", "volts")
OPTIONAL = ("capture", "after_min", "load_a", "circuit", "marks")


@dataclass(frozen=True, slots=True)
class Columns:
    """The delimiter, how many columns the header names, and at which place each known one stands."""

    delimiter: str
    width: int
    places: dict[str, int]

    @property
    def least(self) -> int:
        """How many cells a row needs so that wire, key and volts are among them."""
        return 1 + max(self.places[name] for name in REQUIRED)

    def cell(self, cells: list[str], name: str) -> str:
        """The cell of column `name`, '' where the table or the row does not have it."""
        place = self.places.get(name, len(cells))
        return cells[place] if place < len(cells) else ""


def columns_of(header: str, *, file: str, line: int) -> Columns:
    """The columns that the header line names; raises UnreadableError where one is missing or stands there twice.

    Order, capital letters and spaces around the names do not matter; names that are not known are passed over.
    """
    delimiter = delimiter_of(header, REQUIRED + OPTIONAL)
    names = [name.lower() for name in cells_of(header, delimiter)]
    place = Place(file, line, header)
    missing = [name for name in REQUIRED if name not in names]
    if missing:
        raise UnreadableError(place, f"a header line with wire,key,volts; missing: {', '.join(missing)}")
    for name in REQUIRED + OPTIONAL:
        if names.count(name) > 1:
            raise UnreadableError(place, f"each column once; {name} stands there {names.count(name)} times")
    known = {name: names.index(name) for name in REQUIRED + OPTIONAL if name in names}
    return Columns(delimiter, len(names), known)
