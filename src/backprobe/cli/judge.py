"""`backprobe judge JOBDIR`: every finding of a job, and its record on paper."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from backprobe.cases.judge import JudgedFolder, judge_folder
from backprobe.errors import JobError
from backprobe.findings import Finding, Limit, Verdict, rounded
from backprobe.job.judge import HeardRecording
from backprobe.job.signed import SIGN, SIGN_AGAIN
from backprobe.stages.probe.slots import SlotName

PDF = b"%PDF"
SIGNING = "backprobe sign JOBDIR"
SHOWN = 20  # lines that were passed over are shown up to here, and counted
MARK = {Verdict.HOLDS: "holds", Verdict.THIN: "thin ", Verdict.FAILS: "FAILS", Verdict.OPEN: "open "}


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("folder", metavar="JOBDIR", help="a folder with job.toml, readings.csv, recordings/")
    parser.add_argument("--record", metavar="OUT.pdf", help="write the record")
    parser.add_argument("--policy", metavar="FILE", help="the fleet's own limits, where the folder has no policy.toml")
    parser.add_argument("--corners", metavar="FILE", help="an index of corners, where the folder has no corners.txt")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Judge the folder: 0 when everything holds, 1 when something is thin, fails or is open."""
    policy, corners = (None if path is None else Path(path) for path in (chosen.policy, chosen.corners))
    job = judge_folder(Path(chosen.folder), policy, corners=corners)
    if chosen.record is not None:
        from backprobe.cases.record import record_of  # drawings and paper load only where they are wanted

        now = datetime.now(UTC).astimezone().isoformat(timespec="seconds")
        _write(Path(chosen.record), record_of(job, made_at=now))
    answer = {**job.as_json(), "record": chosen.record}
    print(json.dumps(answer, ensure_ascii=False) if chosen.json else as_text(job))
    return 0 if job.judged.verdict is Verdict.HOLDS else 1


def _write(path: Path, record: bytes) -> None:
    """Write the record; nothing but an earlier record is ever written over."""
    try:
        if path.is_file() and not _may_go(path):
            raise JobError(f"{path}: there is a file of this name that is no PDF; it was left as it is")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(record)
    except OSError as fault:
        raise JobError(f"the record could not be written to {path}: {fault.strerror}") from None


def _may_go(path: Path) -> bool:
    """Whether a file is empty or a PDF, so that a new record may take its place."""
    with path.open("rb") as file:
        return file.read(len(PDF)) in (b"", PDF)


def as_text(job: JudgedFolder) -> str:
    """The findings for people."""
    return "\n".join(_lines(job))


def _lines(job: JudgedFolder) -> Iterator[str]:
    judged = job.judged
    yield f"job {job.imported.job}: {judged.verdict}"
    stage = None
    for finding in judged.findings:
        if finding.stage is not stage:
            stage = finding.stage
            yield from ("", f"{stage}")
        yield from _finding(finding)
    yield from _remarks(job)
    yield ""
    yield from (f"{slot}: {judged.chosen(slot) or 'none yet'}" for slot in SlotName)
    is_done = judged.verdict is Verdict.HOLDS or judged.closing is not None
    nothing = "nothing more" if is_done else "see above"
    yield f"next: {at_the_terminal(judged.next) or nothing}"


def at_the_terminal(step: str | None) -> str | None:
    """A next step with the command that does it, where one does."""
    return f"{step}: {SIGNING}" if step in (SIGN, SIGN_AGAIN) else step


def _remarks(job: JudgedFolder) -> Iterator[str]:
    """What else should be known: before the pair and the next step, which are to be the last thing read."""
    lines = [
        *_passed_over(job),
        *(f"note: {each.recording.name}: {note}" for each in job.judged.heard for note in _notes(each)),
        *(f"note: {note}" for note in job.notes),
    ]
    yield from ["", *lines] if lines else []


def _passed_over(job: JudgedFolder) -> Iterator[str]:
    """Lines that could not be read: the first of each file, and how many more there are."""
    judged = job.judged
    files = [("readings.csv", judged.probe.skipped, len(judged.probe.skipped))]
    files += [(r.name, r.skipped, r.skipped_count) for r in (each.recording for each in judged.heard)]
    for file, places, count in files:
        yield from (f"passed over: {place}" for place in places[:SHOWN])
        if count > SHOWN:
            yield f"passed over: {count - SHOWN} more lines of {file}"


def _notes(each: HeardRecording) -> tuple[str, ...]:
    return () if each.answer.view is None else each.answer.view.notes


def _finding(finding: Finding) -> Iterator[str]:
    """One finding: the verdict and what it is about; the figure with its limit; why, and what to do."""
    yield f"  {MARK[finding.verdict]}  {finding.what}"
    if finding.value is not None:
        limit = "" if finding.limit is None else f"; limit {_limit(finding.limit)}"
        yield f"         {_shown(finding)}{limit}"
    yield f"         {finding.because}"
    if finding.next and finding.verdict is not Verdict.HOLDS:
        yield f"         next: {at_the_terminal(finding.next)}"


def _shown(finding: Finding) -> str:
    """The shown value with the range that the evidence allows."""
    values = [rounded(value, finding.digits) for value in (finding.value, finding.low, finding.high)]
    shown, low, high = (None if value is None else f"{value:.{finding.digits}f}" for value in values)
    span = "" if low is None or high is None else f" (true value {low} to {high})"
    return f"{shown} {finding.unit}{span}"


def _limit(limit: Limit) -> str:
    return f"{limit.side} {limit.value:g} {limit.unit}, {limit.warrant}"
