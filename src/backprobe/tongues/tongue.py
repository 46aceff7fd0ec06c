"""A tongue: sentences of the engine put into other words by a catalogue of templates.

A text is looked up whole; else the template is sought that fits it best, and what fills its holes is put into other
words in its turn; else it is taken apart at ';', '.', ':', ',', 'and', 'or' where its parts are known. What is in no
catalogue stays as it is: names, figures, and a sentence that nobody has translated yet.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from itertools import chain
from typing import NamedTuple

from backprobe.tongues.template import A_FIGURE, AS_IT_IS, WORD, Template

EDGES = " ;,:\n"
JOINTS = re.compile(r"; |\. |: |, | and | or | \(|\n")
WORDS_BETWEEN = frozenset({" and ", " or "})  # of what somebody wrote these are a part
MOST_JOINTS = 12  # a text with more is taken apart at the strong ones only
STRONG = re.compile(r"; |(?<=\.) |\n")
UNLIKE_A_NAME = re.compile(r"[;,:.] | \(")  # a name that holds this may be half a sentence
GAPS = re.compile(r" {2,}")  # where a hole was empty
FOREIGN = re.compile(r"\b[^\W\d_]?[a-zà-ÿ]+\b")  # not what is written in capitals or holds a figure: that is a name


class Said(NamedTuple):
    """A text in other words, and how many of its words were in no catalogue."""

    text: str
    unknown: int


class Tongue:
    """What puts the engine's sentences into other words; `joints` are the words between them."""

    def __init__(self, pairs: Iterable[tuple[str, str]], *, joints: Mapping[str, str]) -> None:
        self._whole: dict[str, str] = {}
        holed: list[Template] = []
        for said, other in pairs:
            if "{" in said:
                holed.append(Template(said, other))
            else:
                self._whole[said] = other
        words = [each.words() for each in holed]
        often = Counter(chain.from_iterable(words))
        self._by_word: dict[str, list[Template]] = {}
        for each, its in zip(holed, words, strict=True):
            rarest = min(sorted(its), key=often.__getitem__, default="")
            self._by_word.setdefault(rarest, []).append(each)
        starts = (WORD.search(said) for said in self._whole)
        self._telling = {*self._by_word, *(start[0] for start in starts if start)}
        self._joints = joints
        self._known: dict[str, Said] = {}

    def say(self, text: str) -> str:
        """The text in other words, as far as the catalogue goes."""
        return self.said(text).text

    def said(self, text: str) -> Said:
        """The same, with how many words were in no catalogue; each text is worked out once."""
        known = self._known.get(text)
        if known is None:
            core = text.strip(EDGES)
            lead, _, tail = text.partition(core) if core else (text, "", "")
            found = self._core(core)
            known = self._known[text] = Said(f"{lead}{found.text}{tail}", found.unknown)
        return known

    def _core(self, text: str) -> Said:
        if text in self._whole:
            return Said(self._whole[text], 0)
        best = Said(text, len(FOREIGN.findall(text)))
        if not best.unknown or not self._may_know(text):
            return best
        ways = (self._by_template, self._in_other_dress, self._taken_apart)
        for way in (self._sentences, *ways) if STRONG.search(text) else ways:
            for found in way(text):
                best = min(best, found, key=lambda each: each.unknown)
                if not best.unknown:
                    return best
        return best

    def _may_know(self, text: str) -> bool:
        """Whether any word of the text is one by which something would be found, with or without its capital."""
        words = WORD.findall(text)
        return "" in self._by_word or any(word in self._telling or word.lower() in self._telling for word in words)

    def _sentences(self, text: str) -> Iterator[Said]:
        """The text sentence by sentence: so no hole swallows what another sentence says."""
        parts = [self.said(part) for part in STRONG.split(text)]
        unknown: int = sum(part.unknown for part in parts)
        yield Said("".join(map(str.__add__, (part.text for part in parts), [*STRONG.findall(text), ""])), unknown)

    def _by_template(self, text: str) -> Iterator[Said]:
        """The text by each template that fits, the heaviest first; where its holes may be cut in two ways, by both."""
        words = {*WORD.findall(text), ""}
        fit = [each for word in words for each in self._by_word.get(word, ())]
        for each in sorted(fit, key=lambda each: (-each.weight, each.said)):
            first, last = each.matched(text), each.matched(text, late=True)
            if first is not None:
                yield self._filled(each, first)
            if last is not None and last != first:
                yield self._filled(each, last)

    def _filled(self, template: Template, filled: Mapping[str, str]) -> Said:
        words, unknown = {}, 0
        for hole, content in filled.items():
            if hole[0] in {AS_IT_IS, A_FIGURE}:
                words[hole[1:]] = content
                if UNLIKE_A_NAME.search(content):
                    unknown += 1 + len(FOREIGN.findall(content))
            else:
                words[hole], more = self.said(content)
                unknown += more
        return Said(GAPS.sub(" ", template.filled(words)).strip(" "), unknown)

    def _in_other_dress(self, text: str) -> Iterator[Said]:
        """The text without its capital, its full stop, its brackets."""
        if text[0].isupper() and text[1:2].islower():
            found = self._core(text[0].lower() + text[1:])
            yield Said(found.text[:1].upper() + found.text[1:], found.unknown)
        if text.endswith("."):
            found = self._core(text[:-1])
            yield Said(f"{found.text}.", found.unknown)
        for dressed in (text[:1].upper() + text[1:], f"{text}.", f"{text[:1].upper()}{text[1:]}."):
            if dressed in self._whole:
                other = self._whole[dressed]
                yield Said(other[:1].lower() + other[1:].rstrip("."), 0)
        if text.startswith("(") and text.endswith(")"):
            found = self.said(text[1:-1])
            yield Said(f"({found.text})", found.unknown)

    def _taken_apart(self, text: str) -> Iterator[Said]:
        """The text as two parts, at each joint in it."""
        joints = list(JOINTS.finditer(text))
        if len(joints) > MOST_JOINTS:
            joints = list(STRONG.finditer(text))[:MOST_JOINTS]
        for joint in joints:
            kept = "(" if joint[0] == " (" else ""
            left, right = self.said(text[: joint.start()]), self.said(kept + text[joint.end() :])
            between = " " if kept else self._joints.get(joint[0], joint[0])
            if joint[0] not in WORDS_BETWEEN or not (left.unknown and right.unknown):
                yield Said(f"{left.text}{between}{right.text}", left.unknown + right.unknown)
