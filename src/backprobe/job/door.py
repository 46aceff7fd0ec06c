"""The engine's door: a job as JSON text in, its judgement as JSON text out.

What runs in a browser's Python and what runs in a terminal meet here, so that both give the same bytes.

In: ``{"job.toml": text, "unit": text, "meter": text|null, "readings.csv": text|null, "walkround.toml": text|null,
"mount.toml": text|null, "policy.toml": text|null, "key-script.csv": text|null, "reports.csv": text|null,
"lights.csv": text|null, "corners.txt": text|null, "recordings": {name: text}, "nmea": {name: text},
"bus": {name: text}}``; a bus log as a text of candump or engine data, others are not read here.
Out: the judgement as `backprobe judge --json` prints it, or ``{"ok": false, "error": …, "code": …}``.
"""

from __future__ import annotations

import json

from backprobe.errors import BackprobeError, JobError, error_json
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import ReadingsTable
from backprobe.evidence.recording import Recording
from backprobe.formats.corner_index import CORNERS, read_corner_index
from backprobe.formats.job_toml import read_job
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.lights_csv import read_lights
from backprobe.formats.meter_toml import read_meter
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.policy_toml import POLICY, read_policy
from backprobe.formats.readings_csv import read_readings
from backprobe.formats.recording_csv import read_recording
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.formats.walkround_toml import read_walkround
from backprobe.job.answer import judgement_json
from backprobe.job.judge import JobEvidence, judge_job
from backprobe.job.kinds import LIGHTS, REPORTS, SCRIPT
from backprobe.job.proving import Proving
from backprobe.job.signed import sign_off_finding
from backprobe.limits.lookup import limit, meter
from backprobe.stages.bus.door import listen_to_lines
from backprobe.stages.mount.reception.listen import reception_of

DEFAULT_METER = "basic"


def judge_text(text: str) -> str:
    """Judge a job given as JSON text; errors come back in the same shape as everywhere."""
    try:
        return json.dumps(judgement_json(judge_job(evidence_of(_parts(text)))), ensure_ascii=False, sort_keys=True)
    except BackprobeError as error:
        return json.dumps(error_json(error), ensure_ascii=False, sort_keys=True)


def _parts(text: str) -> dict[str, object]:
    try:
        parts = json.loads(text)
    except (ValueError, RecursionError) as fault:
        raise JobError(f"the job is no JSON: {fault}") from None
    if not isinstance(parts, dict):
        raise JobError("the job is no JSON object")
    return parts


def evidence_of(parts: dict[str, object]) -> JobEvidence:
    """The typed evidence of a job given as texts. Raises JobError and UnreadableError."""
    sheet = read_job(_text(parts, "job.toml"), "job.toml")
    readings = _maybe(parts, "readings.csv")
    table = ReadingsTable()
    if readings is not None:
        table = read_readings(_lines(readings), file="readings.csv", system_V=sheet.vehicle.system_V)
    unit = read_unit_sheet(_text(parts, "unit"), sheet.unit_sheet)
    walked, policy = _maybe(parts, "walkround.toml"), _maybe(parts, POLICY)
    places = _maybe(parts, "mount.toml")
    thresholds_V = recording_limits_V(sheet.vehicle.system_V, unit.supply.least_V)
    return JobEvidence(
        sheet=sheet,
        unit=unit,
        meter=meter_for(sheet, _maybe(parts, "meter")),
        table=table,
        walkround=None if walked is None else read_walkround(walked, "walkround.toml"),
        mount=None if places is None else read_mount(places, "mount.toml"),
        policy=None if policy is None else read_policy(policy, POLICY),
        proving=_proving(parts, sheet),
        receptions=tuple(reception_of(_lines(text), file=name) for name, text in sorted(_texts(parts, "nmea").items())),
        buses=tuple(
            listen_to_lines(_lines(text), file=name).heard for name, text in sorted(_texts(parts, "bus").items())
        ),
        sign_off=sign_off_finding((), (), wanted=sheet.hand_over is not None),
        recordings=tuple(
            _recording(name, text, thresholds_V=thresholds_V) for name, text in _texts(parts, "recordings").items()
        ),
    )


def _proving(parts: dict[str, object], sheet: JobSheet) -> Proving:
    script, reports, lights, corners = (_maybe(parts, name) for name in (SCRIPT, REPORTS, LIGHTS, CORNERS))
    seen, skipped = ((), ()) if lights is None else read_lights(_lines(lights), file=LIGHTS)
    return Proving(
        script=None if script is None else read_key_script(_lines(script), file=SCRIPT, finished=False),
        reports=None
        if reports is None
        else read_reports(_lines(reports), file=REPORTS, names=sheet.report_names, may_be_empty=True),
        lights=seen,
        lights_skipped=skipped,
        corners=None if corners is None else read_corner_index(corners, file=CORNERS),
    )


def meter_for(sheet: JobSheet, text: str | None) -> Meter:
    """The meter that the sheet names: its own file's text, a class, or the plainest class."""
    if sheet.meter_file is not None:
        if text is None:
            raise JobError(f"job.toml names {sheet.meter_file!r} for the meter's figures; they are not there")
        return read_meter(text, sheet.meter_file)
    return meter(sheet.meter_class or DEFAULT_METER)


def recording_limits_V(system_V: int, unit_least_V: float | None) -> tuple[float, ...]:
    """The levels below which a recording's time is counted [V]."""
    limits = [limit(name, system_V=system_V).value for name in ("supply_in_crank", "ignition_in_crank")]
    return tuple(limits if unit_least_V is None else [*limits, unit_least_V])


def _recording(name: str, text: str, *, thresholds_V: tuple[float, ...]) -> Recording:
    lines = _lines(text)
    return read_recording(lambda: lines, file=name, thresholds_V=thresholds_V)


def _lines(text: str) -> list[str]:
    """The lines of a text as a file gives them: str.splitlines would also part them at form feeds and their like."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return lines if lines[-1] else lines[:-1]


def _texts(parts: dict[str, object], name: str) -> dict[str, str]:
    found = parts.get(name) or {}
    if not isinstance(found, dict) or not all(isinstance(text, str) for text in found.values()):
        raise JobError(f"{name}: an object of names and texts is expected")
    return found


def _text(parts: dict[str, object], name: str) -> str:
    text = _maybe(parts, name)
    if text is None:
        raise JobError(f"the job holds no {name}")
    return text


def _maybe(parts: dict[str, object], name: str) -> str | None:
    text = parts.get(name)
    if text is not None and not isinstance(text, str):
        raise JobError(f"{name}: text is expected")
    return text
