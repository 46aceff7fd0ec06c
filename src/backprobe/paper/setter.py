"""Texts, findings and pictures as the page template takes them, with codes for letters that have no glyph."""

from __future__ import annotations

from dataclasses import dataclass, replace

from backprobe.drawings.figures import figure_text, with_unit
from backprobe.drawings.margin_bar import margin_bar
from backprobe.drawings.margin_words import described, finite
from backprobe.drawings.marks import verdict_shape
from backprobe.drawings.svg import picture
from backprobe.findings import Finding, Verdict
from backprobe.paper.content import Picture
from backprobe.paper.glyphs import inline, marked, parts_of

BAR_WIDTH = 495.0
HALF_WIDTH = 420.0  # of what holds: two stand side by side, and are a little smaller than the others
SHAPE_SIZE = 24.0

Words = list[str | dict[str, str]]


def spoken(text: str) -> str:
    """`text` for metadata and for screen readers: every letter that is one is kept, only signs become codes."""
    return inline(text, frozenset())


def shape(verdict: Verdict) -> str:
    """The shape of a verdict as a picture of its own."""
    drawn = verdict_shape(verdict, (0, 0), size=SHAPE_SIZE)
    return picture((SHAPE_SIZE, SHAPE_SIZE), (str(verdict), ""), drawn)


@dataclass(frozen=True, slots=True)
class Setter:
    """Turns texts into words for the page, with codes for the letters that are `missing`."""

    missing: frozenset[str]

    def words(self, text: str) -> Words:
        """`text` as a list of plain parts and of codes."""
        return [part if isinstance(part, str) else {"code": part.text} for part in parts_of(text, self.missing)]

    def words_or_none(self, text: str | None) -> Words | None:
        """The same, None for None."""
        return None if text is None else self.words(text)

    def picture(self, shown: Picture) -> dict[str, object]:
        """A picture with its caption and its words."""
        return {
            "svg": marked(shown.svg, self.missing),
            "caption": self.words(shown.caption),
            "alt": spoken(shown.alt),
            "title": self.words(shown.title),
            "half": shown.half,
        }

    def finding(self, finding: Finding) -> dict[str, object]:
        """A finding with its bar; what is missing stands in the bar where there is no value.

        A finding without a limit has nothing to be held against: it gets its verdict's shape instead.
        """
        if finding.limit is None:
            return self._plain(finding)
        because = finding.because if finite(finding.value) is not None else None
        holds = finding.verdict is Verdict.HOLDS
        return {
            "what": self.words(finding.what),
            "because": self.words_or_none(because),
            "next": self.words_or_none(finding.next),
            "bar": margin_bar(self._drawable(finding), width=HALF_WIDTH if holds else BAR_WIDTH),
            "half": holds,
            "alt": spoken(described(finding)),
        }

    def _plain(self, finding: Finding) -> dict[str, object]:
        value = finite(finding.value)
        figure = "" if value is None else f"{with_unit(figure_text(value, finding.digits), finding.unit)} "
        return {
            "what": self.words(finding.what),
            "because": self.words(figure + finding.because),
            "next": self.words_or_none(finding.next),
            "bar": None,
            "verdict": str(finding.verdict),
            "shape": shape(finding.verdict),
        }

    def _drawable(self, finding: Finding) -> Finding:
        """The finding with codes in its texts before it is drawn, so that the widths are reckoned with them."""
        limit = finding.limit
        return replace(
            finding,
            because=inline(finding.because, self.missing),
            unit=inline(finding.unit, self.missing),
            limit=None if limit is None else replace(limit, basis=inline(limit.basis, self.missing)),
        )
