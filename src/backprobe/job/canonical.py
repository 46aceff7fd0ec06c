"""The one way to write an entry's values as bytes, the same in Python and in JavaScript.

Plain JSON with sorted keys and no spaces, UTF-8. Two things would make two languages disagree, and both are refused
instead of patched over: floats (they print differently) and keys that JavaScript reorders or swallows (`"10"`,
`"__proto__"`). Figures are therefore text as typed or whole numbers, and keys start with a letter.
"""

from __future__ import annotations

import json
import re
from typing import TypeAlias

from backprobe.errors import JournalError, shortened

Json: TypeAlias = "bool | int | str | list[Json] | dict[str, Json] | None"
Body: TypeAlias = "dict[str, Json]"

DEEPEST = 8  # levels of lists and tables in one another; what people record is flat
WIDEST_INT = 2**53 - 1  # whole numbers beyond this are rounded by JavaScript

_KEY = re.compile(r"[A-Za-z][A-Za-z0-9_]*", re.ASCII)


def canonical(value: object) -> bytes:
    """The bytes of `value`, the same whoever writes them.

    Raises JournalError, naming the place, for anything two languages could write differently.

    >>> canonical({"volts": "12.30", "line": 4, "marks": ["a b"]})
    b'{"line":4,"marks":["a b"],"volts":"12.30"}'
    >>> canonical({"volts": 12.3})
    Traceback (most recent call last):
    backprobe.errors.JournalError: entry.volts: 12.3 is a float; figures are text as typed ("12.30") or whole numbers
    """
    _refuse_unfit(value, "entry", depth=0)
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode("utf-8")


def parsed(raw: bytes) -> object:
    """What `raw` says as JSON. Raises JournalError where it is no JSON or gives one key twice."""
    try:
        return json.loads(raw.decode("utf-8"), object_pairs_hook=_keys_once)
    except (ValueError, RecursionError) as problem:
        raise JournalError(f"not readable as an entry: {problem}") from problem


def _keys_once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    table = dict(pairs)
    if len(table) != len(pairs):
        raise ValueError("one key is given twice")
    return table


def _refuse_unfit(value: object, where: str, *, depth: int) -> None:
    if depth > DEEPEST:
        raise JournalError(f"{where}: nested deeper than {DEEPEST} levels")
    if isinstance(value, dict):
        for key, item in value.items():
            _refuse_key(key, where)
            _refuse_unfit(item, f"{where}.{key}", depth=depth + 1)
    elif isinstance(value, list):
        for index, item in enumerate(value):
            _refuse_unfit(item, f"{where}[{index}]", depth=depth + 1)
    else:
        _refuse_unfit_scalar(value, where)


def _refuse_unfit_scalar(value: object, where: str) -> None:
    if isinstance(value, float):
        raise JournalError(f'{where}: {value} is a float; figures are text as typed ("12.30") or whole numbers')
    if isinstance(value, int):
        if abs(value) > WIDEST_INT:
            raise JournalError(f"{where}: {value} is too large a whole number; write it as text")
    elif isinstance(value, str):
        if any("\ud800" <= character <= "\udfff" for character in value):
            raise JournalError(f"{where}: {shortened(repr(value))} holds half a character; UTF-8 has no such")
    elif value is not None:
        raise JournalError(f"{where}: a {type(value).__name__} is neither text, a whole number, a list nor a table")


def _refuse_key(key: object, where: str) -> None:
    if not isinstance(key, str) or not _KEY.fullmatch(key):
        raise JournalError(f"{where}: the key {shortened(repr(key))} is not made of ASCII letters, digits and _")
