"""Values as TOML text: one key a line, tables after plain values, [[tables]] last, as the sheets here are written."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from datetime import date, time

_BARE = re.compile(r"[A-Za-z0-9_-]+", re.ASCII)


def written_toml(values: Mapping[str, object]) -> str:
    r"""The text that reads back as `values`; tables with nothing in them are left out. Remarks are not kept.

    >>> written_toml({"heading": 90, "place": [{"name": "dash", "part": [{"of": "glass"}]}]})
    'heading = 90\n\n[[place]]\nname = "dash"\n\n[[place.part]]\nof = "glass"\n'
    """
    return "\n".join(_lines(values, "")).lstrip("\n") + "\n" if values else ""


def _lines(values: Mapping[str, object], name: str) -> Iterator[str]:
    """The lines of a table's own values, then those of the tables in it; `name` is empty above all headers."""
    yield from (f"{_key(key)} = {written_value(value)}" for key, value in values.items() if not _is_tabled(value))
    titled = [(f"{name}.{_key(key)}" if name else _key(key), value) for key, value in values.items()]
    for title, value in titled:
        if isinstance(value, Mapping) and value:
            yield from ("", f"[{title}]", *_lines(value, title))
    for title, value in titled:
        if isinstance(value, list | tuple) and _is_tabled(value):
            for row in value:
                yield from ("", f"[[{title}]]", *_lines(row, title))


def _is_tabled(value: object) -> bool:
    """Whether a value is written under a header of its own."""
    if isinstance(value, list | tuple):
        return bool(value) and all(isinstance(row, Mapping) for row in value)
    return isinstance(value, Mapping)


def _key(key: str) -> str:
    return key if _BARE.fullmatch(key) else _text(key)


def written_value(value: object) -> str:
    r"""A text, number, flag, day, or list of these as TOML.

    >>> written_value(["a \"b\"", "µ"]), written_value(True), written_value(0.5)
    ('["a \\"b\\"", "µ"]', 'true', '0.5')
    """
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | tuple):
        return f"[{', '.join(written_value(each) for each in value)}]"
    if isinstance(value, Mapping):
        return f"{{{', '.join(f'{_key(key)} = {written_value(each)}' for key, each in value.items())}}}"
    return value.isoformat() if isinstance(value, date | time) else repr(value)


def _text(text: str) -> str:
    """What JSON writes of a text is TOML too, but for the letter DEL."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007F")
