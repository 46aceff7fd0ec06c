"""A roster out of a workbook (.xlsx): its first sheet with something in it, row by row, values only.

A workbook is a ZIP file of XML. Before it is read it is looked at from outside: how much it unpacks to, and whether its
XML declares entities of its own; both are refused. Formulas are not worked out: what the spreadsheet stored as their
result is taken, and that is said; one that was never worked out is bad.
"""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from datetime import date, datetime, time
from decimal import Decimal
from itertools import islice
from pathlib import Path
from typing import Protocol

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.roster import Roster
from backprobe.formats.roster_csv import HEADING_WITHIN, MOST_ROWS, roster_of

MOST_FILE_BYTES = 20_000_000
MOST_UNPACKED_BYTES = 100_000_000
MOST_PARTS = 2_000
MOST_COLUMNS = 200
MOST_BLANK_ROWS = 1_000
EXACT = 10**15  # a spreadsheet keeps no more digits
LONGEST = 10**21
EXPECTED = "a workbook (.xlsx) or a table as CSV"
_FORMULA = re.compile(rb"<(?:\w+:)?f[ >/]")
ZIP = b"PK\x03\x04"


def is_workbook(path: Path) -> bool:
    """Whether a file begins as a workbook does."""
    with _plain_words(path), path.open("rb") as file:
        return file.read(len(ZIP)) == ZIP


def read_workbook(path: Path, *, names: Mapping[str, str] | None = None) -> Roster:
    """The roster in a workbook. Raises UnreadableError where there is none that can be taken."""
    with _plain_words(path):
        has_formulas = _looked_at(path)
        seen = _Seen()
        with ExitStack() as stack:
            book = stack.enter_context(_opened(path, values=True))
            sheet = _first_sheet(book, path)
            # formulas stand in a second reading of the same sheet, which costs as much again: only where there are any
            written = _cells(stack.enter_context(_opened(path, values=False)), sheet) if has_formulas else None
            table = list(islice(_rows(_cells(book, sheet), written, seen=seen), MOST_ROWS + HEADING_WITHIN + 1))
    roster = roster_of(table, file=path.name, names=names)
    notes = [f"read from the sheet {sheet!r}"]
    if seen.formulas:
        notes.append(f"{seen.formulas} cells hold formulas: what the spreadsheet last worked out was taken")
    if seen.rounded:
        notes.append(f"{seen.rounded} numbers have more than 15 digits: a spreadsheet keeps no more")
    return replace(roster, notes=(*roster.notes, *notes))


class _Cell(Protocol):
    """A cell as the reader of workbooks gives it."""

    value: object
    number_format: str
    data_type: str


class _Sheet(Protocol):
    title: str
    sheet_state: str

    def iter_rows(self, *, max_row: int | None = None, max_col: int | None = None) -> Iterator[tuple[_Cell, ...]]: ...


class _Book(Protocol):
    worksheets: list[_Sheet]

    def close(self) -> None: ...


@dataclass(slots=True)
class _Seen:
    """What was noticed while cells were turned into text."""

    rounded: int = 0
    formulas: int = 0


def _first_sheet(book: _Book, path: Path) -> str:
    """The name of the first sheet that holds something and is not hidden."""
    for sheet in book.worksheets:
        top = sheet.iter_rows(max_row=MOST_BLANK_ROWS, max_col=MOST_COLUMNS)
        if sheet.sheet_state == "visible" and any(any(cell.value is not None for cell in row) for row in top):
            return sheet.title
    raise UnreadableError(Place(path.name), "a sheet with something in it; all are empty or hidden")


def _cells(book: _Book, title: str) -> Iterator[tuple[_Cell, ...]]:
    sheet = next(each for each in book.worksheets if each.title == title)
    return sheet.iter_rows(max_col=MOST_COLUMNS)


def _rows(
    values: Iterator[tuple[_Cell, ...]], written: Iterator[tuple[_Cell, ...]] | None, *, seen: _Seen
) -> Iterator[tuple[int, list[str]]]:
    """The rows that hold something, as text, each with its number in the sheet; the table ends after a long gap."""
    blank = 0
    for number, row in enumerate(values, 1):
        sources = row if written is None else next(written, row)
        cells = [_text(cell, source, seen=seen) for cell, source in zip(row, sources, strict=False)]
        if any(cells):
            blank = 0
            yield number, cells
        else:
            blank += 1
            if blank > MOST_BLANK_ROWS:
                return


def _text(cell: _Cell, source: _Cell, *, seen: _Seen) -> str:
    """A cell as somebody would write it; a formula as what it came to, or as itself where nobody worked it out."""
    if source.data_type == "f":
        seen.formulas += 1
        if cell.value is None:
            return str(getattr(source.value, "text", source.value))
    return _plain(cell, seen)


def _plain(cell: _Cell, seen: _Seen) -> str:
    """A whole number without a point, a day without its time, zeros in front as the cell shows them."""
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime):
        plain = value.replace(tzinfo=None)
        return plain.date().isoformat() if plain.time() == time() else plain.isoformat(" ")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, int | float):
        return _number(value, cell.number_format, seen=seen)
    return str(value)


def _number(value: float, shown_as: str, *, seen: _Seen) -> str:
    if abs(value) >= EXACT:
        seen.rounded += 1
    if not float(value).is_integer() or abs(value) >= LONGEST:
        return repr(float(value))
    digits = str(int(Decimal(f"{value:.15g}")))  # what a spreadsheet shows of it
    zeros = len(shown_as) if shown_as and not shown_as.strip("0") else 0  # the format 00000000 shows 417 as 00000417
    return digits.zfill(zeros)


@contextmanager
def _opened(path: Path, *, values: bool) -> Iterator[_Book]:
    from openpyxl import load_workbook  # type: ignore[import-untyped]

    with path.open("rb") as file:  # by its content: the reader refuses files by their names
        book: _Book = load_workbook(file, read_only=True, data_only=values, keep_links=False)
        try:
            yield book
        finally:
            book.close()


def _looked_at(path: Path) -> bool:
    """Whether a workbook holds formulas.

    Refuses what is too large, unpacks to too much, or declares entities that grow while they are read.
    """
    has_formulas = False
    if path.stat().st_size > MOST_FILE_BYTES:
        raise UnreadableError(Place(path.name), f"at most {MOST_FILE_BYTES // 1_000_000} MB; this file is larger")
    with zipfile.ZipFile(path) as archive:
        parts = archive.infolist()
        if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_UNPACKED_BYTES:
            expected = f"a workbook that unpacks to at most {MOST_UNPACKED_BYTES // 1_000_000} MB in {MOST_PARTS} parts"
            raise UnreadableError(Place(path.name), expected)
        names = {part.filename for part in parts}
        if "[Content_Types].xml" not in names or not any(name.startswith("xl/") for name in names):
            raise UnreadableError(Place(path.name), f"{EXPECTED}; this is another kind of ZIP file")
        for part in parts:
            if part.filename.endswith((".xml", ".rels")):
                content = archive.read(part)
                if _declares(content):
                    raise UnreadableError(Place(path.name), "a workbook whose XML declares nothing of its own")
                has_formulas = has_formulas or _FORMULA.search(content) is not None
    return has_formulas


def _declares(content: bytes) -> bool:
    """Whether XML declares a document type, in whatever encoding."""
    head = content[:100_000].replace(b"\0", b"").upper()
    return b"<!DOCTYPE" in head or b"<!ENTITY" in head


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    """Turn what the system and the readers say into the technician's words."""
    try:
        yield
    except UnreadableError:
        raise
    except FileNotFoundError:
        raise UnreadableError(Place(path.name), "a file that is there; there is none of this name") from None
    except PermissionError:
        raise UnreadableError(Place(path.name), "a file that may be read; the system does not allow it") from None
    except (OSError, zipfile.BadZipFile) as fault:
        raise UnreadableError(Place(path.name), f"{EXPECTED} that can be read; {fault}") from None
    except Exception as fault:  # noqa: BLE001 - the reader of workbooks raises whatever its XML makes it stumble over
        raise UnreadableError(Place(path.name), f"{EXPECTED} that is whole; its reader says: {fault}") from None
