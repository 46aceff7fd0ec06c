"""A line of a table and the cells in it."""

from __future__ import annotations

import csv
from collections.abc import Collection, Iterable, Iterator

from backprobe.errors import Place, UnreadableError

DELIMITERS = (",", ";", "\t")
BOM = "\ufeff"


def numbered(lines: Iterable[str], *, file: str) -> Iterator[tuple[int, str]]:
    """The lines that say something, numbered from 1, without line ends, byte order mark, blank and # lines.

    A spreadsheet's 'sep=;' line is passed over as well. A line with a NUL raises UnreadableError: that is no text.
    """
    for number, line in enumerate(lines, 1):
        if "\0" in line:
            raise UnreadableError(Place(file, number), "a text table; this looks like a binary file")
        text = line.rstrip("\r\n")
        text = text.removeprefix(BOM) if number == 1 else text
        if says_something(text):
            yield number, text


def says_something(line: str) -> bool:
    """Whether a line of a table holds cells: it is not blank, begins with no # and is no spreadsheet's 'sep=;'.

    >>> says_something("Red,on,12.3"), says_something(" # seen by Ada"), says_something("sep=;")
    (True, False, False)
    """
    plain = line.strip()
    return bool(plain) and not plain.startswith("#") and not (len(plain) == 5 and plain.lower().startswith("sep="))


def cells_of(line: str, delimiter: str) -> list[str]:
    r"""The cells of one line, quotes taken off, spaces around them taken off.

    A quote that is never closed takes the rest of the line.

    >>> cells_of('red, on ,"12,30"', ",")
    ['red', 'on', '12,30']
    """
    if '"' not in line:
        return [cell.strip() for cell in line.split(delimiter)]
    try:
        row = next(csv.reader([line], delimiter=delimiter, skipinitialspace=True), [])
    except csv.Error:
        return [cell.strip() for cell in line.split(delimiter)]
    return [cell.strip() for cell in row]


def delimiter_of(header: str, wanted: Collection[str] = ()) -> str:
    r"""The delimiter of a header line: the one that brings out most of the `wanted` names, then most cells.

    >>> delimiter_of("wire;key;volts")
    ';'
    """

    def merit(delimiter: str) -> tuple[int, int]:
        names = {cell.lower() for cell in cells_of(header, delimiter)}
        return len(names & set(wanted)), header.count(delimiter)

    return max(DELIMITERS, key=merit)
