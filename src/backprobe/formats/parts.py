"""Values out of JSON text: how a browser asks the engine, and how each of its doors begins to read."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.errors import InputError


@dataclass(frozen=True, slots=True)
class Parts:
    """A JSON object's values by name; what is not as it must be raises `refusal`."""

    values: Mapping[str, object]
    refusal: type[InputError] = InputError

    def text(self, name: str) -> str:
        """A text that must be there.

        >>> Parts({"log": "a"}).text("log")
        'a'
        """
        value = self.maybe(name)
        if value is None:
            raise self.refusal(f"{name}: a text is expected")
        return value

    def maybe(self, name: str) -> str | None:
        """A text, or None where there is none."""
        value = self.values.get(name)
        if value is not None and not isinstance(value, str):
            raise self.refusal(f"{name}: a text is expected")
        return value

    def number(self, name: str, *, expected: str = "a number") -> float:
        """A number that must be there."""
        value = self.values.get(name)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.refusal(f"{name}: {expected} is expected")
        return float(value)

    def texts(self, name: str) -> dict[str, str]:
        """Texts by their names; none where there are none."""
        found = self.values.get(name) or {}
        if not isinstance(found, dict) or not all(isinstance(text, str) for text in found.values()):
            raise self.refusal(f"{name}: an object of names and texts is expected")
        return found


def parts_in(text: str, what: str, *, refusal: type[InputError] = InputError) -> Parts:
    """The parts of a JSON object; `what` it is stands in the refusal of anything else.

    >>> parts_in('{"log": "a"}', "the log").values
    {'log': 'a'}
    """
    try:
        values = json.loads(text)
    except (ValueError, RecursionError) as fault:
        raise refusal(f"{what} is no JSON: {fault}") from None
    if not isinstance(values, dict):
        raise refusal(f"{what} is no JSON object")
    return Parts(values, refusal)


def lines_in(text: str) -> list[str]:
    r"""The lines of a text as a file gives them: str.splitlines would also part them at form feeds and their like.

    >>> lines_in("a\r\nb\n")
    ['a', 'b']
    """
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return lines if lines[-1] else lines[:-1]
