"""A template: a sentence with named holes, and the same sentence in other words.

``{what} was refused by {=by}`` has two holes. A hole is filled again with a sentence or a word, which is said in other
words in its turn; `=` before its name marks what somebody called a thing (a wire, a file), which stays as it is; `#`
marks a figure, which stays too. A hole between single quotes holds no quote.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

HOLE = re.compile(r"\{([=#]?)(\w+)\}")
WORD = re.compile(r"[^\W\d_]+")
FIGURE = re.compile(r"[+\-−]?(?:\d[\d,]*(?:\.\d+)?(?:e[+-]?\d+)?|inf|nan)%?")
AS_IT_IS = "="
A_FIGURE = "#"


@dataclass(frozen=True, slots=True)
class Template:
    """One template: the sentence as the engine writes it, and in other words.

    `certain` is what stands before, between and after the holes, one more than there are holes.
    """

    said: str
    other: str
    certain: tuple[str, ...] = field(init=False, repr=False)
    holes: tuple[str, ...] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        parts = HOLE.split(self.said)
        object.__setattr__(self, "certain", tuple(parts[::3]))
        object.__setattr__(self, "holes", tuple(map(str.__add__, parts[1::3], parts[2::3])))

    @property
    def weight(self) -> int:
        """How many letters of it are certain: of two templates that fit, the heavier one is meant."""
        return sum(map(len, self.certain))

    def words(self) -> set[str]:
        """The words of the sentence that no hole can touch: each stands in every text of it.

        >>> sorted(Template("{count} satellite{s} all round", "").words())
        ['all', 'round']
        """
        return set(WORD.findall(re.sub(r"[^\W\d_]*\{[^{}]*\}[^\W\d_]*", " ", self.said)))

    def matched(self, text: str, *, late: bool = False) -> dict[str, str] | None:
        """What fills each hole (by its name with its mark), if `text` is this sentence; else None.

        Where what stands between two holes is met more than once, the first place is taken, or, if `late`, the last.

        >>> Template("{what} was refused by {=by}", "").matched("the work was refused by N. Ruiz")
        {'what': 'the work', '=by': 'N. Ruiz'}
        """
        first, *between, last = self.certain
        if not (text.startswith(first) and text.endswith(last) and len(text) >= len(first) + len(last)):
            return None
        inside = text[len(first) : len(text) - len(last)]
        found = _from_the_end(inside, between) if late else _from_the_start(inside, between)
        if found is None or not all(map(self._may_hold, range(len(self.holes)), found)):
            return None
        return dict(zip(self.holes, found, strict=True))

    def _may_hold(self, at: int, content: str) -> bool:
        if self.holes[at].startswith(A_FIGURE):
            return FIGURE.fullmatch(content) is not None
        quoted = self.certain[at].endswith("'") and self.certain[at + 1].startswith("'")
        return not (quoted and "'" in content)

    def filled(self, words: dict[str, str]) -> str:
        """The sentence in other words, its holes filled by name.

        >>> Template("{what} was refused by {=by}", "{by} no permitió {what}").filled({"what": "a", "by": "b"})
        'b no permitió a'
        """
        return HOLE.sub(lambda hole: words[hole[2]], self.other)


def _from_the_start(text: str, between: list[str]) -> list[str] | None:
    """What stands before, between and after the parts, each part taken where it is met first."""
    found = []
    for part in between:
        before, met, text = text.partition(part)
        if not met:
            return None
        found.append(before)
    return [*found, text]


def _from_the_end(text: str, between: list[str]) -> list[str] | None:
    """The same, each part taken where it is met last."""
    found = []
    for part in reversed(between):
        text, met, after = text.rpartition(part)
        if not met:
            return None
        found.append(after)
    return [text, *reversed(found)]
