"""The JSON Schema of an entry says the same as the code that reads entries."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from tests.samples.journals import GOOD, Phone, histories

from backprobe.errors import JournalError
from backprobe.job.entry import FIELDS, Entry, read_entry
from backprobe.job.kinds import KINDS, misfit

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

SCHEMA = json.loads((Path(__file__).resolve().parents[2] / "schemas" / "entry.schema.json").read_text(encoding="utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
FIRST = Phone().reads("Red", "on", "12.30")
CONTROLS = ("correction", "withdrawn", "erased", "rows_moved", "sign_off")
ODD: list[Any] = [
    *("", "word", "a" * 64, "A" * 64, FIRST.id, FIRST.id.upper().replace("0", "A"), "2026-05-04T09:30:00Z"),
    *(0, 1, -1, 2**53, 12.5, True, None, [], ["a"], ["a", 1], ["a", "a"], ["a" * 64], [["a", 1]], [["a", 1, 2]]),
    *({}, {"10": 1}, {"a": {"b": [1.5]}}, {"a": None}, "a" * 128, "A" * 128),
    *([["phone", 1, "a" * 64]], [["phone", 0, "a" * 64]], [["", 1, "a" * 64]], [["phone", 1, "b"]], [["phone", 1]]),
]


def fits(values: dict[str, Any]) -> bool:
    return bool(VALIDATOR.is_valid(values))


def is_read(values: dict[str, Any]) -> bool:
    """Whether these values, written as entries are, are read and their body, if of a known kind, understood."""
    raw = json.dumps(values, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()
    try:
        entry = read_entry(raw)
    except JournalError:
        return False
    return not entry.version_known or is_understood(entry.kind, entry.body)


def is_understood(kind: str, body: dict[str, Any]) -> bool:
    if kind not in GOOD:
        return True
    if misfit(kind, body) is not None:
        return False
    return kind != "correction" or body["kind"] in CONTROLS or is_understood(body["kind"], body["body"])


def saying(kind: str, body: object) -> dict[str, Any]:
    """The first entry with another kind and body."""
    return FIRST.as_json() | {"kind": kind, "body": body}


def test_the_schema_is_one():
    """It keeps the rules of its own language."""
    meta = jsonschema.Draft202012Validator(jsonschema.Draft202012Validator.META_SCHEMA)
    assert list(meta.iter_errors(SCHEMA)) == []


def test_schema_and_code_name_the_same_fields():
    """The twelve of an entry, and those of every kind's body."""
    version_1 = SCHEMA["$defs"]["version_1"]
    assert set(version_1["required"]) == set(FIELDS) == set(SCHEMA["properties"]) | set(version_1["properties"])
    for kind, known in KINDS.items():
        assert set(SCHEMA["$defs"][kind]["properties"]) == set(known.fields), kind


@given(histories())
def test_whatever_phones_say_fits(said: list[Entry]):
    """Every entry of every history, unknown kinds among them."""
    assert all(fits(json.loads(entry.raw)) for entry in said)


@pytest.mark.parametrize("kind", GOOD)
def test_bodies_fit_as_far_as_they_are_understood(kind: str):
    """A good body of each kind fits; left out or made odd in any field, it fits if and only if the code takes it."""
    good = GOOD[kind] if kind != "correction" else GOOD[kind] | {"body": GOOD["reading"]}
    assert fits(saying(kind, good))
    bodies = [{name: value for name, value in good.items() if name != left_out} for left_out in good]
    bodies += [good | {name: odd} for name in good for odd in ODD]
    wrong = [body for body in bodies if fits(saying(kind, body)) != is_read(saying(kind, body))]
    assert wrong == []


@pytest.mark.parametrize("field", [name for name in FIELDS if name != "v"])
def test_fields_fit_as_far_as_they_are_read(field: str):
    """Left out or made odd, any field of an entry fits if and only if it is read."""
    lacking = {name: value for name, value in FIRST.as_json().items() if name != field}
    entries = [lacking, *(FIRST.as_json() | {field: odd} for odd in ODD), FIRST.as_json() | {"lens": 1}]
    assert [values for values in entries if fits(values) != is_read(values)] == []


def test_a_later_version_needs_only_its_frame():
    """Version 99 with other fields fits; without its frame it does not, and the code agrees."""
    frame = {name: FIRST.as_json()[name] for name in ("id", "job", "kind", "device", "seq", "prev")} | {"v": 99}
    for values in (frame, frame | {"lens": 35.5}, *({k: v for k, v in frame.items() if k != out} for out in frame)):
        assert fits(values) == is_read(values)
    assert fits(frame)
