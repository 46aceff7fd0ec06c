"""The engine's door for a file that somebody opens at a job: its name as JSON and its bytes in, what it is as JSON out.

In: ``{"file": name, "job.toml": text|null}`` and the bytes. Out: ``{"ok": true, "kind": kind, "file": name in the
journal, "counted": words, "more": {…}, "rows": [{"kind", "body"}, …]}``: an entry of that kind holds ``file``, the
bytes' digest and number, and ``more``; each of ``rows`` is an entry of its own. Or ``{"ok": false, "error": …}``.
"""

from __future__ import annotations

from backprobe.errors import BackprobeError
from backprobe.evidence.report import ReportNames
from backprobe.formats.job_toml import read_job
from backprobe.formats.parts import Parts
from backprobe.job.opened import opened
from backprobe.job.told import told

SHEET = "job.toml"


def opened_text(asked: str, content: bytes) -> str:
    """What a file is and what the journal is to hold of it; errors come back in the same shape as everywhere.

    >>> print(opened_text("{}", b""))
    {"code": "job", "error": "file: a text is expected", "ok": false}
    """
    return told(asked, "the question", answer_to=lambda parts: _answer(parts, content))


def _answer(parts: Parts, content: bytes) -> dict[str, object]:
    found = opened(content, file=parts.text("file"), names=_names(parts.maybe(SHEET)))
    return {
        "ok": True,
        "kind": found.kind,
        "file": found.file,
        "counted": found.counted,
        "more": found.more,
        "rows": [{"kind": row.kind, "body": row.body} for row in found.rows],
    }


def _names(sheet: str | None) -> ReportNames | None:
    """What the unit's server calls the columns; nothing where the sheet cannot be read, which is said elsewhere."""
    try:
        return None if sheet is None else read_job(sheet, SHEET).report_names
    except BackprobeError:
        return None
