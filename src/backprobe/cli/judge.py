"""`backprobe judge JOBDIR`: every finding of a job, and its record on paper."""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from backprobe.cases.judge import JudgedFolder, judge_folder, record_of
from backprobe.errors import JobError
from backprobe.findings import Finding, Limit, Verdict, rounded
from backprobe.stages.probe.slots import SlotName

MARK = {Verdict.HOLDS: "holds", Verdict.THIN: "thin ", Verdict.FAILS: "FAILS", Verdict.OPEN: "open "}


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("folder", metavar="JOBDIR", help="a folder with job.toml, readings.csv, recordings/")
    parser.add_argument("--record", metavar="OUT.pdf", help="write the record")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Judge the folder: 0 when everything holds, 1 when something is thin, fails or is open."""
    job = judge_folder(Path(chosen.folder))
    if chosen.record is not None:
        _write(Path(chosen.record), record_of(job))
    answer = {**job.as_json(), "record": chosen.record}
    print(json.dumps(answer, ensure_ascii=False) if chosen.json else as_text(job))
    return 0 if job.judged.verdict is Verdict.HOLDS else 1


def _write(path: Path, record: bytes) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(record)
    except OSError as fault:
        raise JobError(f"the record could not be written to {path}: {fault.strerror}") from None


def as_text(job: JudgedFolder) -> str:
    """The findings for people."""
    judged = job.judged
    lines = [f"job {job.imported.job}: {judged.verdict}", ""]
    stage = None
    for finding in judged.findings:
        if finding.stage is not stage:
            stage = finding.stage
            lines.append(f"{stage}")
        lines += _finding(finding)
    lines.append("")
    lines += [f"{slot}: {judged.chosen(slot) or 'none yet'}" for slot in SlotName]
    lines.append(f"next: {judged.next or 'nothing more'}")
    skipped = judged.probe.skipped
    lines += [f"passed over: {each}" for each in skipped]
    lines += [f"note: {note}" for note in job.notes]
    return "\n".join(lines)


def _finding(finding: Finding) -> list[str]:
    """One finding: the verdict and what it is about; the figure with its limit; why, and what to do."""
    lines = [f"  {MARK[finding.verdict]}  {finding.what}"]
    if finding.value is not None and finding.limit is not None:
        lines.append(f"         {_shown(finding)}; limit {_limit(finding.limit)}")
    lines.append(f"         {finding.because}")
    if finding.next and finding.verdict is not Verdict.HOLDS:
        lines.append(f"         next: {finding.next}")
    return lines


def _shown(finding: Finding) -> str:
    """The shown value with the range that the evidence allows."""
    values = [rounded(value, finding.digits) for value in (finding.value, finding.low, finding.high)]
    shown, low, high = (None if value is None else f"{value:.{finding.digits}f}" for value in values)
    span = "" if low is None or high is None else f" (true value {low} to {high})"
    return f"{shown} {finding.unit}{span}"


def _limit(limit: Limit) -> str:
    return f"{limit.side} {limit.value:g} {limit.unit}, {limit.warrant}"
