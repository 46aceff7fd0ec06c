"""What a bus log came to as plain values that a journal can hold: whole numbers and texts, and back.

A log is too large for a phone and python-can is not in a browser: what was heard is written down once, where the log
was read, and judged from that ever after.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from types import NoneType, UnionType
from typing import Any, TypeAlias, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from backprobe.stages.bus.heard import Heard

Kind = TypeVar("Kind")
Value: TypeAlias = "bool | int | str | list[Value] | dict[str, Value] | None"

VERSION = 1
PER_UNIT = 1_000_000  # a figure is written in millionths of its unit
MOST_ITEMS = 64  # of a list: an entry holds at most 64 kB
MOST_TEXT = 200


def summary(heard: Heard) -> dict[str, Value]:
    """The plain values of what was heard; lists longer than 64 are cut.

    >>> said = summary(Heard(file="a.log", format="candump", frames=2, length_s=1.25))
    >>> said["length_s"], heard_from(said) == Heard(file="a.log", format="candump", frames=2, length_s=1.25)
    (1250000, True)
    """
    return {"v": VERSION, **_table(heard)}


def heard_from(said: Mapping[str, Value]) -> Heard | None:
    """What such values say; None where they are of a later version, or are none."""
    if said.get("v") != VERSION:
        return None
    try:
        found = _made(Heard, dict(said))
    except (TypeError, ValueError, KeyError):
        return None
    return found if isinstance(found, Heard) else None


def _table(thing: object) -> dict[str, Value]:
    """The fields of a dataclass that are not as they are by default."""
    values = {each.name: (getattr(thing, each.name), _default(each)) for each in fields(cast("Any", thing))}
    return {name: _plain(value) for name, (value, usual) in values.items() if value != usual}


def _default(each: Field[object]) -> object:
    if each.default is not MISSING:
        return each.default
    return each.default_factory() if each.default_factory is not MISSING else MISSING


def _plain(value: object) -> Value:
    if value is None or isinstance(value, bool | int):
        return value
    if isinstance(value, str):
        return value[:MOST_TEXT]
    if isinstance(value, float):
        return round(value * PER_UNIT)
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items()}
    if isinstance(value, tuple):
        return [_plain(item) for item in value[:MOST_ITEMS]]
    return _table(value)


def _made(kind: object, value: object) -> object:
    """A value of `kind` out of a plain one; TypeError or ValueError where it is none."""
    origin, inner = get_origin(kind), get_args(kind)
    if origin in (Union, UnionType):
        return None if value is None else _made(next(each for each in inner if each is not NoneType), value)
    if origin is tuple:
        return _made_tuple(inner, _checked(list, value))
    if origin is not None:  # a mapping of texts to whole numbers
        return {str(key): _whole(item) for key, item in _checked(dict, value).items()}
    if kind is float:
        return _whole(value) / PER_UNIT
    if kind is int:
        return _whole(value)
    if not isinstance(kind, type) or not is_dataclass(kind):
        return _checked(cast("type[object]", kind), value)
    table, hints = _checked(dict, value), get_type_hints(kind)
    return kind(**{each.name: _made(hints[each.name], table[each.name]) for each in fields(kind) if each.name in table})


def _made_tuple(inner: tuple[object, ...], items: list[object]) -> tuple[object, ...]:
    if len(inner) == 2 and inner[1] is ...:
        return tuple(_made(inner[0], item) for item in items)
    return tuple(_made(each, item) for each, item in zip(inner, items, strict=True))


def _whole(value: object) -> int:
    if isinstance(value, bool):
        raise TypeError(value)
    return _checked(int, value)


def _checked(kind: type[Kind], value: object) -> Kind:
    if not isinstance(value, kind):
        raise TypeError(value)
    return value
