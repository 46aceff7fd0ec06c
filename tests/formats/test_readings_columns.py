"""The header of a readings table."""

from __future__ import annotations

import pytest

from backprobe.errors import UnreadableError
from backprobe.formats.readings_columns import columns_of


def test_order_case_and_spaces_do_not_matter():
    """Known names are found wherever they stand; unknown ones are passed over."""
    columns = columns_of(" Volts ;connector; KEY;Wire;Load_A", file="f", line=1)
    assert columns.places == {"wire": 3, "key": 2, "volts": 0, "load_a": 4}
    assert (columns.delimiter, columns.width, columns.least) == (";", 5, 4)


def test_missing_columns_are_named():
    """The refusal names what is missing and shows the header."""
    with pytest.raises(UnreadableError) as refusal:
        columns_of("wire,position", file="f", line=3)
    assert refusal.value.place.line == 3
    assert refusal.value.place.text == "wire,position"
    assert refusal.value.expected.endswith("missing: key, volts")


def test_a_column_twice_is_refused():
    """Which of two volts columns counts cannot be known."""
    with pytest.raises(UnreadableError, match="volts stands there 2 times"):
        columns_of("wire,key,volts,Volts", file="f", line=1)


def test_unknown_columns_may_repeat():
    """Empty trailing columns of a spreadsheet do no harm."""
    assert columns_of("wire,key,volts,,,", file="f", line=1).width == 6
