"""In which line of a TOML text a table or a key stands. The parser keeps no places for what it has read."""

from __future__ import annotations

import re
from collections.abc import Iterator

_HEADER = re.compile(r"""\s*(\[\[?)\s*["']?([^\]"']*?)["']?\s*\]""")
_QUOTES = ('"' * 3, "'" * 3)


def lines_of(text: str) -> list[str]:
    """The lines of a TOML text, which ends them with a line feed only, perhaps after a carriage return."""
    return [line.removesuffix("\r") for line in text.split("\n")]


def header_line(text: str, table: str, *, index: int = 0) -> int | None:
    r"""The line (from 1) of the header [table], or of the [[table]] that is number `index` (from 0) of its kind.

    >>> header_line("[job]\n[[wire]]\n[[wire]]", "wire", index=1)
    3
    """
    found = [number for number, line in _outside_long_texts(text) if _names(line, table)]
    return found[index] if index < len(found) else None


def key_line(text: str, key: str, *, table: str = "", index: int = 0) -> int | None:
    r"""The line (from 1) in which `key` of a table is given a value; None where it cannot be told.

    `table` is empty for keys above all headers; for `[[table]]` the `index` says which of them, from 0. Keys
    written as `table.key = …` or inside `table = {…}` are found as well.

    >>> key_line("[vehicle]\nvin = 'x'\n[unit]\nvin = 'y'", "vin", table="unit")
    4
    """
    plain = re.compile(rf"""\s*["']?{re.escape(key)}["']?\s*[=.]""")
    inline = re.compile(rf"""\s*["']?{re.escape(table)}["']?\s*[.=](?:.*[\s{{.,"'])?{re.escape(key)}["']?\s*=""")
    start = header_line(text, table, index=index) if table else 0
    within = start == 0
    for number, line in _outside_long_texts(text):
        if _HEADER.match(line):
            within = number == start
        elif (within and plain.match(line)) or (table and inline.match(line)):
            return number
    return None


def _names(line: str, table: str) -> bool:
    header = _HEADER.match(line)
    return header is not None and header[2] == table


def _outside_long_texts(text: str) -> Iterator[tuple[int, str]]:
    """The numbered lines that do not begin inside a text in triple quotes."""
    closing = ""
    for number, line in enumerate(lines_of(text), 1):
        if not closing:
            yield number, line
        closing = _left_open(line, closing)


def _left_open(line: str, closing: str) -> str:
    """The triple quotes that stand open after `line`, which began with `closing` open (empty for none)."""
    at = 0
    while True:
        if closing:
            end = line.find(closing, at)
            if end < 0:
                return closing
            closing, at = "", end + len(closing)
        starts = [(line.find(quotes, at), quotes) for quotes in _QUOTES if line.find(quotes, at) >= 0]
        if not starts:
            return ""
        begin, closing = min(starts)
        at = begin + len(closing)
