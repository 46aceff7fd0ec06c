"""Widths of lettering, against the font itself, and what is done with them."""

from pathlib import Path

import fontpkg_atkinson_hyperlegible as fontpkg
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from backprobe.drawings.lettering import cut, figure_letters, figure_width, text_width, wrapped

FILES = Path(fontpkg.__file__).parent / "files"
UNITS = 1000


@pytest.mark.parametrize(
    ("file", "bold"), [("AtkinsonHyperlegible-Regular.ttf", False), ("AtkinsonHyperlegible-Bold.ttf", True)]
)
def test_the_table_is_that_of_the_font(file: str, bold: bool) -> None:
    """Every ASCII letter is as wide in the table as in the TTF file, read by another library (Pillow)."""
    font = ImageFont.truetype(str(FILES / file), UNITS, layout_engine=ImageFont.Layout.BASIC)
    for code in range(32, 127):
        assert text_width(chr(code), UNITS, bold=bold) == pytest.approx(font.getlength(chr(code)), abs=1), chr(code)


@pytest.mark.parametrize("char", "–—±−Ωµ°·…")
def test_other_signs_are_never_reckoned_too_narrow(char: str) -> None:
    """Signs beyond ASCII have the wider of their two widths, so that room is never short."""
    for file in ("AtkinsonHyperlegible-Regular.ttf", "AtkinsonHyperlegible-Bold.ttf"):
        font = ImageFont.truetype(str(FILES / file), UNITS, layout_engine=ImageFont.Layout.BASIC)
        assert text_width(char, UNITS) >= font.getlength(char) - 1


def test_figures_of_equal_length_are_equally_wide() -> None:
    """11.11 and 88.88 take the same room, though the font's own 1 and 8 differ."""
    assert figure_width("11.11", 27) == figure_width("88.88", 27)
    assert text_width("11.11", 27, bold=True) < text_width("88.88", 27, bold=True)


def test_every_letter_of_a_figure_fits_into_its_cell() -> None:
    """No digit, point or sign in bold is wider than the cell it stands in."""
    for char in "0123456789.−e":
        assert text_width(char, 1, bold=True) <= figure_width(char, 1)


def test_a_figure_has_a_place_for_each_letter() -> None:
    """The digits are placed one by one, centred in cells: 0.33, 0.66 + 0.13, … of the size."""
    svg = figure_letters((10, 20), "9.0", size=100, fill="#000000")
    assert 'x="43 89 135"' in svg  # 10 + 33; 10 + 66 + 13; 10 + 66 + 26 + 33


@given(st.text(), st.floats(1, 400))
def test_cut_text_fits(text: str, room: float) -> None:
    """Whatever is cut fits afterwards, and text that fits is left alone."""
    short = cut(text, size=10, room=room)
    assert text_width(short, 10) <= room or short == ""
    if text_width(text, 10) <= room:
        assert short == text


@given(st.text(), st.floats(15, 400))
def test_wrapping_loses_nothing(text: str, room: float) -> None:
    """All letters come through in their order, and every line fits."""
    lines = wrapped(text, size=10, room=room)
    assert "".join("".join(lines).split()) == "".join(text.split())
    assert all(text_width(line, 10) <= room for line in lines)
