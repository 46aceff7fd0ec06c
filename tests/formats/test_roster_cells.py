"""The cells of a roster, and what spreadsheets do to them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.formats.roster_cells import BadCellError, day_of, degrees_of, doubt_of, text_of, usual_digits, vin_of


def refused(read, *arguments, **named):
    """What is said of a cell that cannot be taken."""
    with pytest.raises(BadCellError) as bad:
        read(*arguments, **named)
    return bad.value.expected


@pytest.mark.parametrize("column", ["vin", "unit_serial", "plate", "fleet_number", "unit_id"])
@pytest.mark.parametrize("text", ["1.2E+10", "1,23457E+14", "4E+09", "-1.2e+10"])
def test_a_large_number_is_no_name(column, text):
    """The digits are gone: 1.2E+10 may be any of ten thousand million numbers."""
    assert "took it for a large number" in refused(text_of, text, column)


def test_a_figure_is_no_name():
    """417.0 was 417, or 0417, or 417.0."""
    assert "took it for a figure" in refused(text_of, "417.0", "unit_serial")
    assert text_of("417.5", "unit_serial") == "417.5"
    assert text_of("417.0", "type") == "417.0"


@pytest.mark.parametrize("text", ["#REF!", "#N/A", "#NAME?", "#VALUE!", "########"])
def test_a_spreadsheets_errors(text):
    """In any column."""
    assert "spreadsheet's error" in refused(text_of, text, "yard")


def test_texts():
    """Line breaks and runs of spaces as one space; nothing is None; letters lost in a wrong encoding are seen."""
    assert text_of(" Box\n van  4 ", "type") == "Box van 4"
    assert text_of("  ", "type") is None
    assert "another encoding" in refused(text_of, "Gr\ufffdn", "yard")
    assert "printable" in refused(text_of, "a\u200eb", "yard")
    assert "not worked out" in refused(text_of, "=A2&B2", "plate")
    assert "at most 200" in refused(text_of, "x" * 201, "yard")


def test_vins():
    """17 characters without I, O and Q, in capitals."""
    assert vin_of("*1M8GDM9A-XKP042788*") == "1M8GDM9AXKP042788"
    assert vin_of("") is None
    assert "these are 16" in refused(vin_of, "1M8GDM9AXKP04278")
    assert refused(vin_of, "IM8GDM9AXKPO42788").startswith("a VIN without I, O")
    assert "large number" in refused(vin_of, "1.23E+16")


@pytest.mark.parametrize(
    "text", ["2026-03-31", "2026/3/31", "31.3.2026", "31.03.2026", "2026-03-31 00:00:00", "2026-03-31T00:00"]
)
def test_days(text):
    """However a spreadsheet writes the last day of March."""
    assert day_of(text) == "2026-03-31"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("03/04/2026", "with slashes the month may be meant first"),
        ("46112", "how a spreadsheet counts days"),
        ("30.02.2026", "there is no such day"),
        ("soon", "a day"),
        ("2026-03-31 14:30", "a day"),
    ],
)
def test_what_is_no_day(text, said):
    """Slashes mean different days in different countries; 46112 is a spreadsheet's own count."""
    assert said in refused(day_of, text)


def test_degrees():
    """Point or comma, any minus; beyond the pole is refused, and so is what is no figure."""
    assert degrees_of("−33,1", most=90.0) == -33.1
    assert degrees_of("", most=90.0) is None
    for text in ("91", "1e1", "51° 2'", "nan", "1.2.3", "1234"):
        assert "degrees from -90 to 90" in refused(degrees_of, text, most=90.0)


@pytest.mark.parametrize(
    ("value", "column", "asked"),
    [
        ("3-Dec", "fleet_number", "turn it into a day"),
        ("Sep-19", "plate", "turn it into a day"),
        ("12.May", "unit_serial", "turn it into a day"),
        ("1234567890123450000", "unit_serial", "zeros behind the first 15"),
        ("1234567890123451000", "unit_serial", None),
        ("123456789012345", "unit_serial", None),
        ("LY-07", "plate", None),
        ("3-Dec", "type", None),
    ],
)
def test_what_is_asked(value, column, asked):
    """Of names alone; a text of any other column may look as it likes."""
    found = doubt_of(value, column)
    assert found is None if asked is None else asked in found


def test_how_long_the_numbers_of_a_column_are():
    """Told from four rows on, where most have it; letters and digits mixed say nothing."""
    assert usual_digits(["0417"] * 4 + ["41", "418"]) == 4
    assert usual_digits(["0417"] * 3) is None
    assert usual_digits(["0417"] * 4 + ["A1"] * 4) is None
    assert usual_digits([]) is None


@given(st.text(max_size=30), st.sampled_from(["vin", "plate", "unit_serial", "type"]))
def test_any_text_is_read_or_refused(text, column):
    """What is taken is printable and on one line."""
    try:
        found = text_of(text, column)
    except BadCellError as bad:
        found = bad.expected
    assert found is None or (found.isprintable() and found)
