"""The prove stage's door: script, reports and sheets as JSON text in, the answer as JSON text out.

What runs in a browser's Python and what runs in a terminal meet here, so that both give the same bytes.

In: ``{"script": text, "reports": text, "job.toml": text|null, "unit": text|null, "unit_id": text|null,
"columns": text|null, "corners": text|null}``, the column map as it is typed, the corners as an index. Out: the answer
as `backprobe prove --json` prints it, or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json
from dataclasses import replace

from backprobe.errors import BackprobeError, error_json
from backprobe.evidence.report import ReportNames
from backprobe.formats.corner_index import read_corner_index
from backprobe.formats.job_toml import read_job
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.parts import Parts, parts_in
from backprobe.formats.report_columns import names_from_option
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.stages.prove.prove import Answer, prove
from backprobe.stages.prove.setup import setup_from


def prove_text(text: str) -> str:
    """Prove a unit from texts; errors come back in the same shape as everywhere.

    >>> json.loads(prove_text("{}"))["error"]
    'script: a text is expected'
    """
    try:
        return json.dumps(_answer(parts_in(text, "what is to be proven")).as_json(), ensure_ascii=False, sort_keys=True)
    except BackprobeError as error:
        return json.dumps(error_json(error), ensure_ascii=False, sort_keys=True)


def _answer(parts: Parts) -> Answer:
    script, reports = (parts.text(name).splitlines() for name in ("script", "reports"))
    job, unit, columns, corners = (parts.maybe(name) for name in ("job.toml", "unit", "columns", "corners"))
    setup = setup_from(
        None if job is None else read_job(job, "job.toml"),
        None if unit is None else read_unit_sheet(unit, "unit"),
        unit_id=parts.maybe("unit_id"),
    )
    return prove(
        read_key_script(script, file="script"),
        read_reports(reports, file="reports", names=ReportNames() if columns is None else names_from_option(columns)),
        setup=setup if corners is None else replace(setup, corners=read_corner_index(corners, file="corners")),
    )
