"""Letters that paper cannot show: replaced by their code, never dropped.

An archival PDF must hold every glyph that it shows. A letter for which no font at hand has a glyph, and signs that
have no look of their own or could turn a line round, are shown as their code point in a box, as in U+1F69A. The
journal inside the record keeps the original.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from itertools import groupby

# controls, formatting (direction marks among them), halves of pairs, private use, unassigned
_NEVER_SHOWN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn"})
MARK = "□"
_SPACES = {"\t": " ", "\n": " ", "\r": " ", "\v": " ", "\f": " "}
_LAST_PLAIN = "\u00ff"  # up to here the text font has every printable letter
_NAMED = re.compile(r"the text `\"((?:[^\"\\]|\\.)*)\"` could not be displayed")
_ESCAPE = re.compile(r"\\u\{([0-9a-fA-F]+)\}")


@dataclass(frozen=True, slots=True)
class Code:
    """The code points of letters that cannot be shown, as in 'U+1F69A'."""

    text: str


def parts_of(text: str, missing: frozenset[str]) -> list[str | Code]:
    """`text` in canonical composition, cut into what can be shown and the codes of what cannot.

    >>> parts_of("cab 🚚", frozenset("🚚"))
    ['cab ', Code(text='U+1F69A')]
    """
    if text.isascii() and text.isprintable():
        return [text] if text else []
    letters = [_SPACES.get(char, char) for char in unicodedata.normalize("NFC", text)]
    return [
        "".join(run) if shown else Code(" ".join(f"U+{ord(char):04X}" for char in run))
        for shown, run in groupby(letters, key=lambda char: _is_shown(char, missing))
    ]


def _is_shown(char: str, missing: frozenset[str]) -> bool:
    return char not in missing and unicodedata.category(char) not in _NEVER_SHOWN


def inline(text: str, missing: frozenset[str]) -> str:
    """`text` with codes in brackets, for places where no box can be drawn about a word.

    >>> inline("cab 🚚", frozenset("🚚"))
    'cab [U+1F69A]'
    """
    return "".join(part if isinstance(part, str) else f"[{part.text}]" for part in parts_of(text, missing))


def marked(svg: str, missing: frozenset[str]) -> str:
    """A drawn picture with a mark in place of each letter that cannot be shown: its lettering keeps its length."""
    return "".join(char if _is_shown(char, missing) or char in _SPACES else MARK for char in svg)


def has_codes(text: str, missing: frozenset[str]) -> bool:
    """Whether anything in `text` is shown otherwise than as it is."""
    return any(isinstance(part, Code) for part in parts_of(text, missing))


def named_in(diagnostic: str) -> frozenset[str]:
    """The letters that the typesetter says it has no glyph for, from its message.

    >>> sorted(named_in('error: the text `"漢"` could not be displayed with font `"X"`'))
    ['漢']
    """
    texts = (_unescaped(text) for text in _NAMED.findall(diagnostic))
    return frozenset(char for text in texts for char in text if char > "~" or char < " ")


def _unescaped(text: str) -> str:
    return _ESCAPE.sub(lambda match: chr(int(match[1], 16)), text)


def beyond_plain(text: str) -> frozenset[str]:
    """All letters of `text` that are not surely in the text font."""
    return frozenset(char for char in unicodedata.normalize("NFC", text) if char > _LAST_PLAIN)
