"""Letters that paper cannot show."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.paper.glyphs import Code, beyond_plain, has_codes, inline, marked, named_in, parts_of

NONE: frozenset[str] = frozenset()


def test_plain_text_is_left_alone() -> None:
    """What the font holds is one part, unchanged."""
    assert parts_of("Ω, µ and ± at fuse <F12>", NONE) == ["Ω, µ and ± at fuse <F12>"]


def test_missing_letters_become_one_code_a_run() -> None:
    """Letters that stand together share a box; the rest of the text stays in place."""
    assert parts_of("tag 漢字, cab 🚚!", frozenset("漢字🚚")) == [
        "tag ",
        Code("U+6F22 U+5B57"),
        ", cab ",
        Code("U+1F69A"),
        "!",
    ]


@pytest.mark.parametrize("sign", ["\x00", "\x1b", "\u202e", "\u200d", "\ue000", "\ud800", "\ufdd0"])
def test_signs_without_a_look_are_always_coded(sign: str) -> None:
    """Controls, direction marks, private use and half pairs never reach the page."""
    assert parts_of(f"12{sign}4", NONE) == ["12", Code(f"U+{ord(sign):04X}"), "4"]


def test_line_ends_and_tabs_become_spaces() -> None:
    """A name that was pasted over two lines stands on one."""
    assert parts_of("red\n2.5\tmm", NONE) == ["red 2.5 mm"]


def test_letters_are_composed() -> None:
    """An e with a combining accent is the one letter é that the font has."""
    assert parts_of("cafe\u0301", NONE) == ["café"]


@given(st.text(), st.frozensets(st.characters(), max_size=5))
def test_nothing_is_lost(text: str, missing: frozenset[str]) -> None:
    """From the parts the letters come back, each as itself or from its code."""
    letters = ""
    for part in parts_of(text, missing):
        letters += part if isinstance(part, str) else "".join(chr(int(code[2:], 16)) for code in part.text.split())
    whitespace = str.maketrans("\t\n\r\v\f", "     ")
    assert letters == unicodedata.normalize("NFC", text).translate(whitespace)


def test_in_pictures_a_mark_keeps_the_length() -> None:
    """Lettering in a finished picture may not grow."""
    assert marked("<text>漢 7</text>", frozenset("漢")) == "<text>□ 7</text>"
    assert inline("漢 7", frozenset("漢")) == "[U+6F22] 7"


def test_whether_anything_was_replaced() -> None:
    """A note is due only then."""
    assert has_codes("cab 🚚", frozenset("🚚"))
    assert not has_codes("cab", frozenset("🚚"))


def test_the_typesetter_names_what_it_lacks() -> None:
    """Its message holds the letters as themselves or as an escape; plain letters of a cluster are not blamed."""
    message = (
        'error: the text `"漢"` could not be displayed with font `"X"`\n'
        'error: the text `"\\u{e000}"` could not be displayed with a font\n'
        'error: the text `"e\\u{331}"` could not be displayed with a font\n'
        "error: unknown variable"
    )
    assert named_in(message) == {"漢", "\ue000", "\u0331"}


def test_beyond_plain_is_beyond_latin_1() -> None:
    """The last resort replaces everything that is not surely there."""
    assert beyond_plain("é ± – Ж") == {"–", "Ж"}
