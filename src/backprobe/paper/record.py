"""The record: one PDF that people read and archives keep, with the journal it was made from inside.

PDF/A-3a (archival, with an attachment) and PDF/UA-1 (accessible) by Typst. Equal content gives equal bytes.
"""

from __future__ import annotations

import hashlib
import json
from datetime import datetime
from functools import lru_cache
from importlib import resources
from typing import TYPE_CHECKING

from backprobe.errors import JobError, JournalError
from backprobe.paper.content import RecordContent
from backprobe.paper.glyphs import beyond_plain, named_in
from backprobe.paper.sheet import sheet

if TYPE_CHECKING:
    import typst

NO_TIME = 0  # the PDF's creation time where none is known: the start of 1970

_STANDARDS: list[typst.PDFStandard] = ["a-3a", "ua-1"]
_TRIES = 4  # with more and more letters replaced by their codes


def write_record(content: RecordContent, *, timestamp: int | None = None) -> bytes:
    """The record of `content` as a PDF; its journal is inside, under its name, and beside it what else is attached.

    `timestamp` is the PDF's creation time in seconds since 1970; without it, `content.made_at` where that names an
    instant, else the start of 1970. The bytes depend on the arguments alone. Letters for which there is no glyph
    are shown by their code, and a note on the page says so.

    Raises JournalError if the digest is not that of the journal, JobError if the page cannot be set.
    """
    digest = hashlib.sha256(content.journal).hexdigest()
    if digest != content.journal_digest:
        raise JournalError(f"the journal's sha256 is {digest}, but the record was to print {content.journal_digest}")
    at = _instant(content.made_at) if timestamp is None else timestamp
    missing: frozenset[str] = frozenset()
    for _ in range(_TRIES):
        data = json.dumps(sheet(content, missing))
        pdf, diagnostic = _set(data, at)
        if pdf is not None:
            return pdf
        named = named_in(diagnostic)
        # a message that names no new letter: then all that are not surely in the font, before giving up
        missing |= named if named - missing else beyond_plain(_all_text(data))
    raise JobError(f"the record cannot be set on paper: {diagnostic.strip()}")


def _instant(made_at: str | None) -> int:
    """Seconds since 1970 of an ISO time that names its offset from UTC; NO_TIME for anything else."""
    try:
        at = datetime.fromisoformat(made_at or "")
    except ValueError:
        return NO_TIME
    return NO_TIME if at.tzinfo is None else max(NO_TIME, int(at.timestamp()))


def _set(data: str, timestamp: int) -> tuple[bytes | None, str]:
    """The PDF, or None with what the typesetter says is wrong."""
    import typst

    compiler = typst.Compiler(_template(), font_paths=_fonts(), ignore_system_fonts=True, sys_inputs={"data": data})
    try:
        pdf = compiler.compile(format="pdf", pdf_standards=_STANDARDS, timestamp=timestamp)
    except typst.TypstError as error:
        return None, error.diagnostic
    return (pdf, "") if isinstance(pdf, bytes) else (None, "no PDF came out")


@lru_cache(maxsize=1)
def _template() -> bytes:
    return resources.files("backprobe.paper").joinpath("record.typ").read_bytes()


@lru_cache(maxsize=1)
def _fonts() -> typst.Fonts:
    """The text font, and behind it those that the typesetter itself carries; never those of the machine."""
    import typst

    files = resources.files("fontpkg_atkinson_hyperlegible").joinpath("files")
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(files)])


def _all_text(data: str) -> str:
    """All words of a sheet, read back from its JSON."""
    values = json.loads(data)
    for unread in ("journal", "attached", "code"):
        values.pop(unread)
    return json.dumps(values, ensure_ascii=False)
