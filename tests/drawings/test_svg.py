"""The words of SVG: what comes out is well formed whatever goes in."""

import xml.etree.ElementTree as ElementTree

from hypothesis import given
from hypothesis import strategies as st

from backprobe.drawings.svg import escaped, number, path, picture, tag


def test_numbers_have_no_trailing_zeros_and_no_negative_zero() -> None:
    """A coordinate is written as short as its two decimals allow."""
    assert [number(value) for value in (12.5, 3.0, -0.004, 0.005 + 0.001, -7.126, 100.0)] == [
        "12.5",
        "3",
        "0",
        "0.01",
        "-7.13",
        "100",
    ]


def test_no_decimals_keeps_the_zeros_of_a_whole_number() -> None:
    """With no decimals asked for, 100 stays 100."""
    assert number(100.4, 0) == "100"


@given(st.text())
def test_any_text_makes_well_formed_xml(text: str) -> None:
    """Whatever a wire is called, the picture can be parsed, and the name comes back where XML can hold it."""
    svg = picture((10, 10), (text, text), tag("text", {"x": 1, "data-name": text}, escaped(text)))
    root = ElementTree.fromstring(svg)
    read = root.findtext("{http://www.w3.org/2000/svg}title")
    if text.isprintable() and text:
        assert read == text


def test_what_xml_forbids_is_replaced_not_dropped() -> None:
    """A control character and half a surrogate pair become U+FFFD, so that something is seen to be missing."""
    assert escaped("a\x00b\ud800c\ufffe") == "a\ufffdb\ufffdc\ufffd"


def test_a_picture_says_what_it_is() -> None:
    """Role, title and description stand in the picture itself; nothing refers to anything outside."""
    svg = picture((20, 10), ("Supply", "12.4 V"), tag("rect", {"width": 20, "height": 10}))
    root = ElementTree.fromstring(svg)
    assert root.get("role") == "img"
    assert [child.tag.split("}")[1] for child in root] == ["title", "desc", "rect"]
    assert not any(word in svg for word in ("href", "style", "<script", "url("))


def test_a_path_of_nothing_is_empty() -> None:
    """No points, no path data."""
    assert path([]) == ""
    assert path([(0, 0), (1, 2)], closed=True) == "M0 0L1 2Z"
