"""All limits as one text, so that a digest says by which limits a job was judged."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum

from backprobe.errors import JournalError


def limits_text(tables: Mapping[str, object]) -> bytes:
    r"""Every value in `tables` on a line of its own with the path that leads to it, the lines sorted; UTF-8.

    Numbers are written as Python writes them, which gives back the same number on every machine. Raises JournalError
    for a value that is no plain data, for then a change to it would not show.

    >>> limits_text({"practice": {"drop": (0.3, "V")}})
    b'practice.drop.0 = 0.3\npractice.drop.1 = "V"\n'
    """
    lines = sorted(line for name in tables for line in _lines(name, tables[name]))
    return "".join(f"{line}\n" for line in lines).encode("utf-8")


def _lines(path: str, value: object) -> Iterator[str]:
    if isinstance(value, Enum):
        yield from _lines(path, value.value)
    elif isinstance(value, str):
        yield f"{path} = {json.dumps(value, ensure_ascii=False)}"
    elif value is None or isinstance(value, bool | int | float):
        yield f"{path} = {value}"
    else:
        for name, part in _parts(path, value):
            yield from _lines(f"{path}.{name}", part)


def _parts(path: str, value: object) -> Iterator[tuple[str, object]]:
    """What a table, a list, a set or a row holds, each with its name."""
    if isinstance(value, Mapping):
        yield from ((_key(key), part) for key, part in value.items())
    elif isinstance(value, tuple | list):
        yield from ((str(number), part) for number, part in enumerate(value))
    elif isinstance(value, set | frozenset):
        yield from (("has", part) for part in _sorted(value))
    elif is_dataclass(value) and not isinstance(value, type):
        yield from ((field.name, getattr(value, field.name)) for field in fields(value))
    else:
        raise JournalError(f"{path}: a {type(value).__name__} is no plain limit; its digest cannot be taken")


def _key(key: object) -> str:
    """A key of a table as text; of a key of several parts, all of them."""
    return "/".join(str(part) for part in key) if isinstance(key, tuple) else str(key)


def _sorted(values: Collection[object]) -> list[object]:
    return sorted(values, key=str)
