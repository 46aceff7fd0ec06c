"""The canonical bytes of an entry's values, against json itself and against JavaScript."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import JournalError
from backprobe.job.canonical import DEEPEST, WIDEST_INT, canonical, parsed

SORTED_IN_JAVASCRIPT = """
const sorted = (value) =>
  Array.isArray(value) ? value.map(sorted)
  : value !== null && typeof value === "object"
    ? Object.fromEntries(Object.keys(value).sort().map((key) => [key, sorted(value[key])]))
    : value;
const lines = require("node:fs").readFileSync(0, "utf8").split("\\n").filter((line) => line !== "");
process.stdout.write(lines.map((line) => JSON.stringify(sorted(JSON.parse(line))) + "\\n").join(""));
"""

keys = st.from_regex(r"[A-Za-z][A-Za-z0-9_]{0,6}", fullmatch=True)
scalars = (
    st.none() | st.booleans() | st.integers(-WIDEST_INT, WIDEST_INT) | st.text(st.characters(exclude_categories=["Cs"]))
)
values = st.recursive(
    scalars, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(keys, inner, max_size=4), max_leaves=12
)
bodies = st.dictionaries(keys, values, max_size=5)

AWKWARD = [
    {"b": 1, "B": 2, "a_1": 3, "a1": 4},
    {"text": 'quote " backslash \\ slash / tab \t line\n feed \f bell \x07 del \x7f nel \x85'},
    {"text": "separators \u2028 and \u2029, ± Ω, a lorry \U0001f69b, zero-width \u200b, BOM \ufeff"},
    {"least": -WIDEST_INT, "most": WIDEST_INT, "none": None, "yes": True, "empty": {}, "list": []},
    {"constructor": 1, "toString": 2, "valueOf": 3},
]


def sorted_plainly(value: object) -> bytes:
    """The same as json writes it, keys sorted by a separate step."""

    def by_name(inner: object) -> object:
        if isinstance(inner, dict):
            return {name: by_name(inner[name]) for name in sorted(inner)}
        return [by_name(item) for item in inner] if isinstance(inner, list) else inner

    return json.dumps(by_name(value), ensure_ascii=False, separators=(",", ":")).encode()


@given(bodies)
def test_the_bytes_are_sorted_json_and_read_back(body):
    """What is written is sorted JSON without spaces, on one line, and says the same when read."""
    raw = canonical(body)
    assert raw == sorted_plainly(body)
    assert b"\n" not in raw
    assert parsed(raw) == body


def test_javascript_writes_the_same_bytes(node: Path):
    """JSON.stringify with sorted keys gives the same bytes for awkward texts, keys and whole numbers."""
    lines = b"".join(json.dumps(body).encode() + b"\n" for body in AWKWARD)
    done = subprocess.run([node, "-e", SORTED_IN_JAVASCRIPT], input=lines, capture_output=True, check=True)
    assert done.stdout.split(b"\n")[:-1] == [canonical(body) for body in AWKWARD]


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ({"volts": 12.3}, r"entry\.volts: 12\.3 is a float"),
        ({"rows": [{"volts": float("nan")}]}, r"entry\.rows\[0\]\.volts: nan is a float"),
        ({"count": WIDEST_INT + 1}, "too large"),
        ({"10": "a"}, "key"),
        ({"__proto__": "a"}, "key"),
        ({"größe": "a"}, "key"),
        ({"": "a"}, "key"),
        ({1: "a"}, "key"),
        ({"text": "\udc80"}, "half a character"),
        ({"time": b"12"}, "bytes is neither"),
        ({"pair": (1, 2)}, "tuple is neither"),
    ],
)
def test_what_two_languages_would_write_differently_is_refused(value, said):
    """Floats, keys JavaScript reorders, numbers it rounds and texts that are no UTF-8 are named with their place."""
    with pytest.raises(JournalError, match=said):
        canonical(value)


def test_deep_nesting_is_refused():
    """Eight levels pass, nine do not."""
    nested: object = "a"
    for _ in range(DEEPEST):
        nested = [nested]
    assert canonical(nested) == b"[" * 8 + b'"a"' + b"]" * 8
    with pytest.raises(JournalError, match="deeper"):
        canonical([nested])


@pytest.mark.parametrize("raw", [b"", b"{", b"\xff", b'{"a":1,"a":1}', b"[" * 60_000, b"\0\0\0", b"1" * 5000])
def test_what_is_no_json_is_refused(raw):
    """Torn, wrongly encoded, doubled and endlessly nested texts raise the project's own error."""
    with pytest.raises(JournalError):
        parsed(raw)
