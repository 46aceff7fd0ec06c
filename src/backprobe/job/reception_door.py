"""The engine's door for a receiver's log: its text as JSON in, what it comes to as JSON out.

In: ``{"file": name, "log": text, "heading_deg": number|null}``.
Out: the answer as `backprobe reception --json` prints it, with ``figures``, what the journal is to hold of the log, and
``picture``, the sky plot as an SVG string; or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json

from backprobe.drawings.sky_plot import sky_plot
from backprobe.errors import BackprobeError, JobError, error_json
from backprobe.formats.parts import lines_in, parts_in
from backprobe.job.receptions import figures_of
from backprobe.stages.mount.reception.answer import answer_of
from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sky import sky_of

HEADING = "a number of degrees from north over east, or null,"


def reception_text(asked: str) -> str:
    """Judge a log given as JSON text; errors come back in the same shape as everywhere.

    >>> json.loads(reception_text("{}"))["error"]
    'log: a text is expected'
    """
    try:
        answer = _answer(asked)
    except BackprobeError as error:
        answer = error_json(error)
    return json.dumps(answer, ensure_ascii=False, sort_keys=True)


def _answer(asked: str) -> dict[str, object]:
    parts = parts_in(asked, "the log", refusal=JobError)
    heading_deg = (
        None if parts.values.get("heading_deg") is None else parts.number("heading_deg", expected=HEADING) % 360.0
    )
    log = reception_of(lines_in(parts.text("log")), file=parts.text("file"))
    answer = answer_of(log, heading_deg=heading_deg)
    picture = sky_plot(sky_of(log, heading_deg=heading_deg))
    return {**answer.as_json(), "figures": figures_of(log), "picture": picture}
