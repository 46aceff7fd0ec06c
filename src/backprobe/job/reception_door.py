"""The engine's door for a receiver's log: its text as JSON in, what it comes to as JSON out.

In: ``{"file": name, "log": text, "heading_deg": number|null}``.
Out: the answer as `backprobe reception --json` prints it, with ``figures``, what the journal is to hold of the log, and
``picture``, the sky plot as an SVG string; or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json

from backprobe.drawings.sky_plot import sky_plot
from backprobe.errors import BackprobeError, JobError, error_json
from backprobe.job.receptions import figures_of
from backprobe.stages.mount.reception.answer import answer_of
from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sky import sky_of


def reception_text(asked: str) -> str:
    """Judge a log given as JSON text; errors come back in the same shape as everywhere.

    >>> json.loads(reception_text("{}"))["error"]
    'file and log: two texts are expected'
    """
    try:
        answer = _answer(asked)
    except BackprobeError as error:
        answer = error_json(error)
    return json.dumps(answer, ensure_ascii=False, sort_keys=True)


def _answer(asked: str) -> dict[str, object]:
    file, text, heading_deg = _parts(asked)
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    log = reception_of(lines, file=file)
    answer = answer_of(log, heading_deg=heading_deg)
    picture = sky_plot(sky_of(log, heading_deg=heading_deg))
    return {**answer.as_json(), "figures": figures_of(log), "picture": picture}


def _parts(asked: str) -> tuple[str, str, float | None]:
    try:
        parts = json.loads(asked)
    except (ValueError, RecursionError) as fault:
        raise JobError(f"the log is no JSON: {fault}") from None
    file, text = (parts.get("file"), parts.get("log")) if isinstance(parts, dict) else (None, None)
    if not isinstance(file, str) or not isinstance(text, str):
        raise JobError("file and log: two texts are expected")
    heading = parts.get("heading_deg")
    if heading is not None and (isinstance(heading, bool) or not isinstance(heading, int | float)):
        raise JobError("heading_deg: degrees from north over east are expected, or null")
    return file, text, None if heading is None else float(heading) % 360.0
