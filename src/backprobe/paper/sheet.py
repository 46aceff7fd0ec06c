"""A record's content as the plain values that the page template takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import datetime

from backprobe.drawings.margin_bar import margin_bar
from backprobe.drawings.margin_words import described, finite
from backprobe.drawings.marks import verdict_shape
from backprobe.drawings.palette import INK, RULE, SOFT_INK
from backprobe.drawings.svg import picture
from backprobe.findings import Finding, Verdict
from backprobe.paper.content import ChoiceRow, RecordContent, SignOffBlock
from backprobe.paper.glyphs import has_codes, inline, marked, parts_of
from backprobe.paper.qr import qr_svg

FONTS = ["Atkinson Hyperlegible", "DejaVu Sans Mono", "Libertinus Serif"]
BAR_WIDTH = 545.0

_SHAPE_SIZE = 24.0
_HEARD_ONLY = frozenset({"alt"})  # alternative texts are kept as they are: no glyph is needed for them
_RUNNING_FACTS = 2  # of the identity, in the head of every further page
_SUBSTITUTED = (
    "Letters for which there is no glyph here are shown by their code point, as in U+1F69A, and in pictures as □; "
    "the journal inside this PDF keeps the originals."
)

Words = list[str | dict[str, str]]


@dataclass(frozen=True, slots=True)
class _Setter:
    """Turns texts into words for the page, with codes for the letters that are `missing`."""

    missing: frozenset[str]

    def words(self, text: str) -> Words:
        return [part if isinstance(part, str) else {"code": part.text} for part in parts_of(text, self.missing)]

    def words_or_none(self, text: str | None) -> Words | None:
        return None if text is None else self.words(text)

    def finding(self, finding: Finding) -> dict[str, object]:
        """A finding with its bar; what is missing stands in the bar where there is no value.

        A finding that has neither value nor limit has nothing to scale: it gets its verdict's shape instead.
        """
        if finding.value is None and finding.limit is None:
            return self._plain(finding)
        because = finding.because if finite(finding.value) is not None else None
        return {
            "what": self.words(finding.what),
            "because": self.words_or_none(because),
            "next": self.words_or_none(finding.next),
            "bar": margin_bar(self._drawable(finding), width=BAR_WIDTH),
            "alt": spoken(described(finding)),
        }

    def _plain(self, finding: Finding) -> dict[str, object]:
        return {
            "what": self.words(finding.what),
            "because": self.words(finding.because),
            "next": self.words_or_none(finding.next),
            "bar": None,
            "verdict": str(finding.verdict),
            "shape": _shape(finding.verdict),
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

    def choice(self, row: ChoiceRow) -> dict[str, object]:
        return {
            "lead": self.words(row.lead),
            "wire": self.words_or_none(row.wire),
            "place": self.words_or_none(row.place),
            "note": self.words_or_none(row.note),
        }

    def sign_off(self, block: SignOffBlock) -> dict[str, object]:
        return {
            "end": self.words(block.end),
            "lines": [self.words(line) for line in block.lines],
            "signed": self.words(block.signed),
            "key": self.words(block.key),
        }


def spoken(text: str) -> str:
    """`text` for metadata and for screen readers: every letter that is one is kept, only signs become codes."""
    return inline(text, frozenset())


def sheet(content: RecordContent, missing: frozenset[str]) -> dict[str, object]:
    """What the template takes, ready for JSON; `missing` are the letters for which there is no glyph."""
    setter = _Setter(missing)
    words = setter.words
    substituted = any(has_codes(text, missing) for text in _shown_texts(content))
    notes = (*content.notes, _SUBSTITUTED) if substituted else content.notes
    values: dict[str, object] = {
        "title": words(_title(content)),
        "made": words(made_text(content.made_at)),
        "running": words(" · ".join(row.value for row in content.identity[:_RUNNING_FACTS])),
        "verdict": str(content.verdict),
        "shape": _shape(content.verdict),
        "sentence": words(content.sentence),
        "next": setter.words_or_none(content.next_step),
        "identity": [{"label": words(row.label), "value": words(row.value)} for row in content.identity],
        "choices": [setter.choice(row) for row in content.choices],
        "findings": [setter.finding(finding) for finding in content.findings],
        "pictures": [
            {"svg": marked(shown.svg, missing), "caption": words(shown.caption), "alt": spoken(shown.alt)}
            for shown in content.pictures
        ],
        "notes": [words(note) for note in notes],
        "sign_off": None if content.sign_off is None else setter.sign_off(content.sign_off),
        "engine": words(content.engine_version),
        "shown_journal_name": words(content.journal_name),
    }
    return values | _frame(content)


def _shape(verdict: Verdict) -> str:
    """The shape of a verdict as a picture of its own."""
    drawn = verdict_shape(verdict, (0, 0), size=_SHAPE_SIZE)
    return picture((_SHAPE_SIZE, _SHAPE_SIZE), (str(verdict), ""), drawn)


def _title(content: RecordContent) -> str:
    """The title; a document without one could not be set."""
    return content.title if content.title.strip() else "Record"


def _frame(content: RecordContent) -> dict[str, object]:
    """What the page needs besides words: colours, fonts, metadata, the journal."""
    return {
        "palette": {"ink": INK, "soft": SOFT_INK, "rule": RULE},
        "fonts": FONTS,
        "language": content.language,
        "spoken_title": spoken(_title(content)),
        "spoken_summary": spoken(f"{content.verdict}: {content.sentence}"),
        "journal": _text_or_bytes(content.journal),
        "journal_name": content.journal_name,
        "journal_size": f"{len(content.journal):,} bytes",
        "journal_digest": content.journal_digest,
        "code": None if content.sign_off is None else qr_svg(code_text(content.journal_digest)),
        "code_alt": f"QR code of {code_text(content.journal_digest)}",
        "attached": [
            {"name": each.name, "content": _text_or_bytes(each.content), "description": each.description}
            for each in content.attached
        ],
    }


def code_text(journal_digest: str) -> str:
    """What the code on a record says: the digest as it is printed in words.

    >>> code_text("9ac3")
    'sha256:9ac3'
    """
    return f"sha256:{journal_digest}"


def _text_or_bytes(data: bytes) -> str | list[int]:
    """The template makes bytes of a text or of numbers; a text is quicker, but only UTF-8 comes back unchanged."""
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return list(data)


def _shown_texts(value: object) -> Iterator[str]:
    """Every text that a record shows, from its content."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _shown_texts(part)
    elif is_dataclass(value):
        for field in fields(value):
            if field.name not in _HEARD_ONLY:
                yield from _shown_texts(getattr(value, field.name))


def made_text(made_at: str | None) -> str:
    """When the record was made, as it is printed.

    >>> made_text("2026-03-04T11:20:00+02:00"), made_text(None)
    ('made 2026-03-04 11:20 +02:00', 'made at a time not known')
    """
    if made_at is None:
        return "made at a time not known"
    try:
        at = datetime.fromisoformat(made_at)
    except ValueError:
        return f"made {made_at}"
    if len(made_at) == len("2026-03-04"):
        return f"made {made_at}"
    zone = at.strftime("%z")
    return f"made {at:%Y-%m-%d %H:%M}" + (f" {zone[:3]}:{zone[3:5]}" if zone else "")
