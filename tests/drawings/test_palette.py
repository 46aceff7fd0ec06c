"""The colours can be told from their ground: contrast after WCAG 2.

Source of formula and levels: W3C, Web Content Accessibility Guidelines 2.2, definitions 'relative luminance' and
'contrast ratio', success criteria 1.4.3 (AA: 4.5:1), 1.4.6 (AAA: 7:1) and 1.4.11 (graphics: 3:1),
https://www.w3.org/TR/WCAG22/ (the formula as read at https://w3c.github.io/wcag/guidelines/relative-luminance.html).
"""

import pytest

from backprobe.drawings import palette

AA_TEXT, AAA_TEXT, GRAPHICS = 4.5, 7.0, 3.0


def channel(part: str) -> float:
    """One sRGB channel, two hex digits, made linear."""
    share = int(part, 16) / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours written #rrggbb."""
    luminance = [
        0.2126 * channel(colour[1:3]) + 0.7152 * channel(colour[3:5]) + 0.0722 * channel(colour[5:7])
        for colour in (one, other)
    ]
    return (max(luminance) + 0.05) / (min(luminance) + 0.05)


def test_the_formula_gives_the_known_extremes() -> None:
    """Black on white is 21:1, a colour on itself 1:1 (both follow from the definition)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#87370c", "#87370c") == 1.0


@pytest.mark.parametrize("ground", palette.GROUNDS)
@pytest.mark.parametrize("colour", palette.TEXT_COLOURS)
def test_every_text_colour_reaches_aaa(colour: str, ground: str) -> None:
    """Figures and words keep 7:1 on paper and on the tint."""
    assert contrast(colour, ground) >= AAA_TEXT


@pytest.mark.parametrize("ground", palette.GROUNDS)
@pytest.mark.parametrize("colour", palette.LINE_COLOURS)
def test_every_line_that_means_something_reaches_the_level_for_graphics(colour: str, ground: str) -> None:
    """Lines, dots and the hatch keep 3:1 on paper and on the tint."""
    assert contrast(colour, ground) >= GRAPHICS


def test_paper_reads_on_the_whole_block() -> None:
    """Paper-coloured marks on ink keep 7:1 too."""
    assert contrast(palette.PAPER, palette.INK) >= AAA_TEXT
    assert contrast(palette.PAPER, palette.ACCENT) >= AA_TEXT
