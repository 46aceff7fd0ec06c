"""Texts, findings and pictures as the page takes them."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from dataclasses import replace

import pytest

from backprobe.findings import Finding, Verdict
from backprobe.paper.content import Picture
from backprobe.paper.setter import Setter, shape, spoken

SETTER = Setter(frozenset("漢"))
Findings = Callable[[int], tuple[Finding, ...]]


def test_words_are_plain_parts_and_codes():
    """What has no glyph becomes a code; None stays None."""
    assert SETTER.words("fuse 漢 5 A") == ["fuse ", {"code": "U+6F22"}, " 5 A"]
    assert SETTER.words_or_none(None) is None


def test_spoken_words_keep_every_letter():
    """Nobody needs a glyph to hear; only signs become codes."""
    assert spoken("漢 \x00") == "漢 [U+0000]"


@pytest.mark.parametrize("verdict", Verdict)
def test_each_verdict_has_a_shape(verdict: Verdict):
    """A picture of its own, named as the verdict."""
    root = ElementTree.fromstring(shape(verdict))
    assert root.findtext("{http://www.w3.org/2000/svg}title") == str(verdict)


def test_a_finding_with_a_value_gets_a_bar(findings: Findings):
    """With its words for those who cannot see it."""
    row = SETTER.finding(findings(1)[0])
    assert str(row["bar"]).startswith("<svg")
    assert "Verdict: holds" in str(row["alt"])


def test_a_finding_without_value_and_limit_gets_its_shape(findings: Findings):
    """There is nothing to scale: why and what next stand beside it."""
    bare = replace(findings(1)[0], value=None, limit=None, because="not said", verdict=Verdict.OPEN)
    row = SETTER.finding(bare)
    assert (row["bar"], row["because"], row["verdict"]) == (None, ["not said"], "open")


def test_pictures_carry_caption_and_words():
    """Letters without a glyph become marks in the drawing and codes in the caption; the words keep them."""
    row = SETTER.picture(Picture(svg="<svg>漢</svg>", caption="漢", alt="漢", title="Sky"))
    assert row == {"svg": "<svg>□</svg>", "caption": [{"code": "U+6F22"}], "alt": "漢", "title": ["Sky"], "half": False}
