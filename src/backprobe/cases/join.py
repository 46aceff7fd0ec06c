"""Whether the wiring of a job will hold: its job sheet, with what lies beside it, and nothing written."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from backprobe.cases.policy import policy_for
from backprobe.errors import JobError
from backprobe.evidence.reading import ReadingsTable
from backprobe.files.folder import open_folder
from backprobe.files.open import small_text, text_lines
from backprobe.findings import Finding, Verdict, worst
from backprobe.formats.job_toml import read_job
from backprobe.formats.readings_csv import read_readings
from backprobe.formats.recording_csv import read_recording
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.job.door import meter_for, recording_limits_V
from backprobe.job.judge import JobEvidence, judge_job

JOB_SHEET = "job.toml"
OF_THE_WIRING = ("join_", "mount_place", "mount_windscreen", "mount_route")  # the days parked are asked for alone
URGENCY = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN)


@dataclass(frozen=True, slots=True)
class JoinAnswer:
    """The findings on the wiring of a job."""

    findings: tuple[Finding, ...]
    policy: str | None = None

    @property
    def verdict(self) -> Verdict:
        """The worst of the findings."""
        return worst(finding.verdict for finding in self.findings)

    @property
    def next(self) -> str | None:
        """The one thing to do next: what fails first, then what is open, then what is thin."""
        due = (each for bad in URGENCY for each in self.findings if each.verdict is bad and each.next)
        first = next(due, None)
        return None if first is None else first.next

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        return {
            "ok": True,
            "verdict": str(self.verdict),
            "findings": [finding.as_json() for finding in self.findings],
            "next": self.next,
            "policy": self.policy,
        }


def join_file(path: Path, policy: Path | None = None) -> JoinAnswer:
    """The answer on a job sheet, or on the folder that holds it. Raises InputError in the technician's words."""
    sheet_path = path / JOB_SHEET if path.is_dir() else path
    if sheet_path.name != JOB_SHEET:
        raise JobError(f"{path}: a job sheet called {JOB_SHEET} is expected, or the folder that holds it")
    evidence = _evidence(sheet_path, policy)
    if not evidence.sheet.joints:
        raise JobError(f"{sheet_path.name} names no joint yet: write one [[joint]] for each lead of the unit")
    found = tuple(each for each in judge_job(evidence).findings if each.id.startswith(OF_THE_WIRING))
    return JoinAnswer(found, None if evidence.policy is None else evidence.policy.file)


def _evidence(sheet_path: Path, policy: Path | None) -> JobEvidence:
    sheet = read_job(small_text(sheet_path), sheet_path.name)
    found = open_folder(sheet_path.parent)
    unit = read_unit_sheet(small_text(found.named(sheet.unit_sheet, "the unit's sheet")), sheet.unit_sheet)
    meter = small_text(found.named(sheet.meter_file, "the meter's file")) if sheet.meter_file else None
    system_V = sheet.vehicle.system_V
    limits_V = recording_limits_V(system_V, unit.supply.least_V)
    readings = sheet_path.parent / "readings.csv"
    table = ReadingsTable()
    if readings.exists():
        table = read_readings(text_lines(readings)(), file=readings.name, system_V=system_V)
    return JobEvidence(
        sheet=sheet,
        unit=unit,
        meter=meter_for(sheet, meter),
        table=table,
        recordings=tuple(
            read_recording(text_lines(each), file=each.name, thresholds_V=limits_V) for each in found.recordings
        ),
        policy=policy_for(sheet_path.parent, policy),
    )
