"""TOML text as typed tables, so that every refusal names file, line, what stands there and what was expected."""

from __future__ import annotations

import difflib
import re
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date
from typing import TypeVar

from backprobe.errors import Place, UnreadableError
from backprobe.formats.toml_lines import header_line, key_line, lines_of

T = TypeVar("T")

PLAIN_TOML = "one 'key = value' in a line: text in quotation marks, numbers with a decimal point and without a unit"
_POSITION = re.compile(r"\s*\(at (?:line (\d+), column \d+|end of document)\)\s*$")


def parse_toml(text: str, *, file: str) -> TomlTable:
    """The whole text as one table. Raises UnreadableError, with the line, where it is not TOML."""
    plain = text.removeprefix("\ufeff")
    try:
        return TomlTable(plain, file, tomllib.loads(plain))
    except RecursionError:
        raise UnreadableError(Place(file), "brackets inside brackets a few deep at most") from None
    except ValueError as error:  # also numbers of thousands of digits, which the parser does not catch
        raise _syntax_error(plain, file, fault=str(error)) from None


def _syntax_error(text: str, file: str, *, fault: str) -> UnreadableError:
    lines = lines_of(text.rstrip())
    found = _POSITION.search(fault)
    line = int(found[1]) if found and found[1] else len(lines)
    said = _POSITION.sub("", fault)
    twice = said.startswith("Cannot")
    expected = "each table and each key once; this one stands twice" if twice else f"{PLAIN_TOML} ({said})"
    place = Place(file, line, lines[line - 1]) if line <= len(lines) and found else Place(file)
    return UnreadableError(place, expected)


@dataclass(frozen=True, slots=True)
class TomlTable:
    """One table of a TOML text: its values, and where it stands (name, and for [[name]] its number from 0).

    Every reading method returns None (or nothing) where the key is missing or its text is empty, and raises
    UnreadableError where the value is not what was asked for.
    """

    text: str
    file: str
    values: Mapping[str, object]
    name: str = ""
    index: int | None = None

    @property
    def title(self) -> str:
        """The table as its header is written; 'the sheet' for what stands above all headers."""
        if not self.name:
            return "the sheet"
        return f"[{self.name}]" if self.index is None else f"[[{self.name}]] number {self.index + 1}"

    def refuse(self, key: str | None, expected: str) -> UnreadableError:
        """The error for a key of this table, or for the table itself, with the line in which it stands."""
        line = None if key is None else key_line(self.text, key, table=self.name, index=self.index or 0)
        if line is None and (self.name or key):
            line = header_line(self.text, self.name or key or "", index=self.index or 0)
        if line is None and self.name and key:
            line = header_line(self.text, f"{self.name}.{key}")
        stands = key if line is None else lines_of(self.text)[line - 1]
        return UnreadableError(Place(self.file, line, stands), expected)

    def must(self, key: str, value: T | None, *, expected: str) -> T:
        """`value`, read from `key`; UnreadableError, at the head of the table, where it is missing."""
        if value is None:
            stands = key if key in self.values else None  # an empty text stands there
            raise self.refuse(stands, f"{key} = {expected}, in {self.title}")
        return value

    def only(self, known: Mapping[str, Collection[str]]) -> None:
        """Refuse a key that this table does not have, naming the nearest one, or the table where it belongs.

        `known` holds the keys of every table of the sheet by its name ('' for those above all headers).
        """
        here = known[self.name]
        for key in self.values:
            if key not in here:
                raise self.refuse(key, _nearest(key, self, known=known))

    def text_of(self, key: str, *, choices: Collection[str] = ()) -> str | None:
        """The text of `key` without spaces around it; letter for letter one of `choices` where these are given."""
        value = self.values.get(key, "")
        if not isinstance(value, str):
            raise self.refuse(key, f'text in quotation marks: {key} = "…"')
        if value and choices and value not in choices:
            near = _near(value, choices)
            raise self.refuse(key, f"one of: {', '.join(choices)}{f'; did you mean {near}?' if near else ''}")
        return value.strip() or None

    def texts_of(self, key: str) -> tuple[str, ...]:
        """The texts of `key`, given as one text or as a list of them."""
        value = self.values.get(key, [])
        listed: list[object] = value if isinstance(value, list) else [value]
        texts = [entry.strip() for entry in listed if isinstance(entry, str)]
        if len(texts) < len(listed):
            raise self.refuse(key, f'text in quotation marks, or a list: {key} = ["…", "…"]')
        return tuple(text for text in texts if text)

    def number_of(self, key: str, *, least: float, most: float) -> float | None:
        """The number of `key`, within `least`..`most`."""
        value = self.values.get(key)
        if value is None:
            return None
        # a comparison refuses nan, inf and whole numbers that are too long for a float
        if isinstance(value, bool) or not isinstance(value, int | float) or not least <= value <= most:
            raise self.refuse(key, f"a number from {least:g} to {most:g}, without quotation marks and unit")
        return float(value)

    def whole_of(self, key: str, *, least: int, most: int) -> int | None:
        """The whole number of `key`, within `least`..`most`."""
        value = self.number_of(key, least=least, most=most)
        if value is not None and not value.is_integer():
            raise self.refuse(key, f"a whole number from {least} to {most}")
        return None if value is None else int(value)

    def flag_of(self, key: str) -> bool | None:
        """The true or false of `key`."""
        value = self.values.get(key)
        if value is None or isinstance(value, bool):
            return value
        raise self.refuse(key, "true or false, in small letters and without quotation marks")

    def day_of(self, key: str) -> str | None:
        """The date of `key`: a TOML date as YYYY-MM-DD, or the text as it stands."""
        value = self.values.get(key)
        if isinstance(value, date):
            return value.isoformat()
        if value is None or isinstance(value, str):
            return self.text_of(key)
        raise self.refuse(key, f"a date: {key} = 2026-03-31")

    def table_of(self, key: str) -> TomlTable:
        """The table [key], in a named table [name.key]; an empty one where it is missing."""
        name = f"{self.name}.{key}" if self.name else key
        value = self.values.get(key, {})
        if not isinstance(value, dict):
            raise self.refuse(key, f"a table, headed [{name}]")
        return TomlTable(self.text, self.file, value, name)

    def tables_of(self, key: str) -> tuple[TomlTable, ...]:
        """The tables [[key]], in a named table [[name.key]], in their order; none where there is none."""
        name = f"{self.name}.{key}" if self.name else key
        value = self.values.get(key, [])
        if not isinstance(value, list) or not all(isinstance(entry, dict) for entry in value):
            raise self.refuse(key, f"a table for each, headed [[{name}]] with double brackets")
        return tuple(TomlTable(self.text, self.file, entry, name, number) for number, entry in enumerate(value))


def _nearest(key: str, table: TomlTable, *, known: Mapping[str, Collection[str]]) -> str:
    """What was expected instead of an unknown key."""
    owners = [name for name, keys in known.items() if key in keys and name != table.name]
    if owners:
        return f"{key} under {' or '.join(f'[{name}]' if name else 'no header' for name in owners)}, not here"
    here = ", ".join(known[table.name])
    near = _near(key, known[table.name])
    return f"a key of {table.title}{f'; did you mean {near}?' if near else ''} (there are: {here})"


def _near(word: str, words: Collection[str]) -> str | None:
    """The one of `words` that `word` was most likely meant to be; None where none is near."""
    by_small = {known.lower(): known for known in words}
    near = difflib.get_close_matches(word.lower(), by_small, n=1)
    return by_small[near[0]] if near else None
