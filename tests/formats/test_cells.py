"""Lines and their cells."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.formats.cells import cells_of, delimiter_of, numbered


def test_numbers_count_every_line():
    """Line numbers are those of the file: lines passed over count as well."""
    lines = ["\ufeffa,b\r\n", "\n", "# note\n", "sep=;", "   ", "1,2"]
    assert list(numbered(lines, file="f")) == [(1, "a,b"), (6, "1,2")]


def test_a_nul_is_no_text():
    """A NUL anywhere is refused with the line's number."""
    with pytest.raises(UnreadableError, match=r"f, line 2\n.*binary"):
        list(numbered(["a,b", "1\0,2"], file="f"))


@pytest.mark.parametrize(
    ("line", "delimiter", "cells"),
    [
        ("a, b ,c", ",", ["a", "b", "c"]),
        ('a,"1,5",c', ",", ["a", "1,5", "c"]),
        ('a, "1,5" ,c', ",", ["a", "1,5", "c"]),
        ('a;"say ""x""";c', ";", ["a", 'say "x"', "c"]),
        ('a,"open,c', ",", ["a", "open,c"]),
        ("a\t1,5\tc", "\t", ["a", "1,5", "c"]),
        ("a,b,", ",", ["a", "b", ""]),
    ],
)
def test_cells(line, delimiter, cells):
    """Quotes and spaces come off; an open quote takes the rest."""
    assert cells_of(line, delimiter) == cells


@pytest.mark.parametrize(
    ("header", "expected"), [("wire,key,volts", ","), ("wire;key;volts", ";"), ("wire\tkey\tvolts", "\t")]
)
def test_delimiter(header, expected):
    """The header shows the delimiter."""
    assert delimiter_of(header, ("wire", "key", "volts")) == expected


def test_wanted_names_win_over_counting():
    """A remark full of commas does not hide the semicolons between the wanted columns."""
    assert delimiter_of("wire;key;volts;note (a,b,c,d,e)", ("wire", "key", "volts")) == ";"


@given(st.text(), st.sampled_from([",", ";", "\t"]))
def test_any_line(line, delimiter):
    """No line makes the splitting raise."""
    assert isinstance(cells_of(line, delimiter), list)
