"""A record's content as the plain values that the page template takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from datetime import datetime

from backprobe.drawings.palette import INK, RULE, SOFT_INK
from backprobe.paper.content import RecordContent
from backprobe.paper.glyphs import has_codes
from backprobe.paper.qr import qr_svg
from backprobe.paper.sections import sections
from backprobe.paper.setter import Setter, shape, spoken

FONTS = ["Atkinson Hyperlegible", "DejaVu Sans Mono", "Libertinus Serif"]
_HEARD_ONLY = frozenset({"alt"})  # alternative texts are kept as they are: no glyph is needed for them
_RUNNING_FACTS = 2  # of the identity, in the head of every further page
_SUBSTITUTED = (
    "Letters for which there is no glyph here are shown by their code point, as in U+1F69A, and in pictures as □; "
    "the journal inside this PDF keeps the originals."
)


def sheet(content: RecordContent, missing: frozenset[str]) -> dict[str, object]:
    """What the template takes, ready for JSON; `missing` are the letters for which there is no glyph."""
    setter = Setter(missing)
    words = setter.words
    substituted = any(has_codes(text, missing) for text in _shown_texts(content))
    notes = (*content.notes, _SUBSTITUTED) if substituted else content.notes
    values: dict[str, object] = {
        "title": words(_title(content)),
        "made": words(made_text(content.made_at)),
        "running": words(" · ".join(row.value for row in content.identity[:_RUNNING_FACTS])),
        "verdict": str(content.verdict),
        "shape": shape(content.verdict),
        "sentence": words(content.sentence),
        "next": setter.words_or_none(content.next_step),
        "identity": [{"label": words(row.label), "value": words(row.value)} for row in content.identity],
        "findings": [setter.finding(finding) for finding in content.findings],
        "notes": [words(note) for note in notes],
        "engine": words(content.engine_version),
        "shown_journal_name": words(content.journal_name),
    }
    return values | sections(content, setter) | _frame(content)


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
