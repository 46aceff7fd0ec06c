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
from collections.abc import Mapping

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
from backprobe.formats.parts import Parts, lines_in, parts_in
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
        given = parts_in(text, "the job", refusal=JobError).values
        return json.dumps(judgement_json(judge_job(evidence_of(given))), ensure_ascii=False, sort_keys=True)
    except BackprobeError as error:
        return json.dumps(error_json(error), ensure_ascii=False, sort_keys=True)


def evidence_of(given: Mapping[str, object]) -> JobEvidence:
    """The typed evidence of a job given as texts. Raises JobError and UnreadableError."""
    parts = Parts(given, JobError)
    sheet = read_job(parts.text("job.toml"), "job.toml")
    readings = parts.maybe("readings.csv")
    table = ReadingsTable()
    if readings is not None:
        table = read_readings(lines_in(readings), file="readings.csv", system_V=sheet.vehicle.system_V)
    unit = read_unit_sheet(parts.text("unit"), sheet.unit_sheet)
    walked, policy = parts.maybe("walkround.toml"), parts.maybe(POLICY)
    places = parts.maybe("mount.toml")
    thresholds_V = recording_limits_V(sheet.vehicle.system_V, unit.supply.least_V)
    return JobEvidence(
        sheet=sheet,
        unit=unit,
        meter=meter_for(sheet, parts.maybe("meter")),
        table=table,
        walkround=None if walked is None else read_walkround(walked, "walkround.toml"),
        mount=None if places is None else read_mount(places, "mount.toml"),
        policy=None if policy is None else read_policy(policy, POLICY),
        proving=_proving(parts, sheet),
        receptions=tuple(reception_of(lines_in(text), file=name) for name, text in sorted(parts.texts("nmea").items())),
        buses=tuple(
            listen_to_lines(lines_in(text), file=name).heard for name, text in sorted(parts.texts("bus").items())
        ),
        sign_off=sign_off_finding((), (), wanted=sheet.hand_over is not None),
        recordings=tuple(
            _recording(name, text, thresholds_V=thresholds_V) for name, text in parts.texts("recordings").items()
        ),
    )


def _proving(parts: Parts, sheet: JobSheet) -> Proving:
    script, reports, lights, corners = (parts.maybe(name) for name in (SCRIPT, REPORTS, LIGHTS, CORNERS))
    seen, skipped = ((), ()) if lights is None else read_lights(lines_in(lights), file=LIGHTS)
    return Proving(
        script=None if script is None else read_key_script(lines_in(script), file=SCRIPT, finished=False),
        reports=None
        if reports is None
        else read_reports(lines_in(reports), file=REPORTS, names=sheet.report_names, may_be_empty=True),
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
    lines = lines_in(text)
    return read_recording(lambda: lines, file=name, thresholds_V=thresholds_V)
