"""The few words of SVG that the pictures need, as strings.

Only elements and presentation attributes are written: no style sheet, no ids, no scripts, no references. So the
same string stands in a page beside others and in a PDF, and looks alike. Numbers have a fixed count of decimals,
which makes the string the same on every Python.
"""

from __future__ import annotations

import re
from typing import TypeAlias

Attributes: TypeAlias = dict[str, str | float]  # numbers are written as coordinates

COORDINATE_DIGITS = 2
FAMILY = "Atkinson Hyperlegible, Atkinson Hyperlegible Next, sans-serif"

_MARKUP = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;"})
# all but the characters of XML 1.0, fifth edition, production 2 (Char)
_FORBIDDEN = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_REPLACEMENT = "\ufffd"


def number(value: float, digits: int = COORDINATE_DIGITS) -> str:
    """`value` as a coordinate: at most `digits` decimals, no trailing zeros, never a negative zero.

    >>> number(12.5), number(-0.001), number(3)
    ('12.5', '0', '3')
    """
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".") if digits else f"{value:.0f}"
    return "0" if text == "-0" else text


def escaped(text: str) -> str:
    """`text` for use between tags or in an attribute; characters that XML 1.0 forbids become U+FFFD.

    >>> escaped('fuse <5 A> & "ign"')
    'fuse &lt;5 A&gt; &amp; &quot;ign&quot;'
    """
    return _FORBIDDEN.sub(_REPLACEMENT, text).translate(_MARKUP)


def tag(name: str, attributes: Attributes, *children: str) -> str:
    """One element; `children` are markup already, attribute values are escaped here.

    >>> tag("line", {"x1": 0, "x2": 4.5})
    '<line x1="0" x2="4.5"/>'
    """
    written = "".join(f' {key}="{_attribute(value)}"' for key, value in attributes.items())
    inner = "".join(children)
    return f"<{name}{written}>{inner}</{name}>" if children else f"<{name}{written}/>"


def _attribute(value: str | float) -> str:
    return escaped(value) if isinstance(value, str) else number(value)


def path(points: list[tuple[float, float]], *, closed: bool = False) -> str:
    """The path data of straight lines through `points`.

    >>> path([(0, 0), (4, 2.5)], closed=True)
    'M0 0L4 2.5Z'
    """
    lines = "L".join(f"{number(x)} {number(y)}" for x, y in points)
    return f"M{lines}{'Z' if closed else ''}" if points else ""


def picture(size: tuple[float, float], words: tuple[str, str], *parts: str) -> str:
    """A whole SVG document of `size` (width, height), with `words` (title, description) for screen readers."""
    width, height = size
    title, description = words
    frame: Attributes = {
        "xmlns": "http://www.w3.org/2000/svg",
        "viewBox": f"0 0 {number(width)} {number(height)}",
        "width": width,
        "height": height,
        "role": "img",
        "font-family": FAMILY,
    }
    spoken = (tag("title", {}, escaped(title)), tag("desc", {}, escaped(description)))
    return tag("svg", frame, *spoken, *parts)
