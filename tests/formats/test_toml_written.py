"""What is written as TOML reads back as what it was."""

from __future__ import annotations

import tomllib
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.toml_written import written_toml, written_value

PLAIN = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_characters="\r")),
    st.booleans(),
    st.integers(-(2**63), 2**63 - 1),
    st.floats(allow_nan=False),
    st.dates(),
)
VALUE = st.one_of(PLAIN, st.lists(PLAIN, max_size=3))
ROW = st.dictionaries(st.text("ab-_ é.", min_size=1, max_size=3), VALUE, min_size=1, max_size=3)
SHEET = st.dictionaries(
    st.text("abc_", min_size=1, max_size=3), st.one_of(VALUE, ROW, st.lists(ROW, min_size=1, max_size=3)), max_size=4
)


@given(SHEET)
def test_it_reads_back(values: dict[str, object]) -> None:
    """Python's own reader of TOML gives every value back, whatever its letters."""
    assert tomllib.loads(written_toml(values)) == values


def test_one_key_a_line_under_its_header() -> None:
    """As sheets are written by hand, so that a phone can change one line."""
    values = {"wire": [{"name": "X12/4 RD", "size": "1 mm2"}], "job": {"date": date(2026, 3, 31), "n": 3, "why": []}}
    assert written_toml(values) == (
        '[job]\ndate = 2026-03-31\nn = 3\nwhy = []\n\n[[wire]]\nname = "X12/4 RD"\nsize = "1 mm2"\n'
    )
    assert written_toml({}) == written_toml({"job": {}}).strip() == ""


@pytest.mark.parametrize(("value", "written"), [({"a": 1}, "{a = 1}"), ("\x7f\t", '"\\u007F\\t"'), (-0.5, "-0.5")])
def test_values(value: object, written: str) -> None:
    """A table inside a list, letters that may not stand bare, a figure."""
    assert written_value(value) == written
