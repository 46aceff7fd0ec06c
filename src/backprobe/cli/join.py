"""`backprobe join job.toml`: whether the wiring of a job will hold."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from pathlib import Path

from backprobe.cases.join import JoinAnswer, join_file
from backprobe.findings import Finding, Verdict
from backprobe.stages.given import said


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("sheet", metavar="job.toml", help="the job sheet, or the folder that holds it")
    parser.add_argument("--policy", metavar="FILE", help="the fleet's own limits, tighter than the usual ones")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer; 0 when everything holds, 1 when something is thin, fails or is open."""
    answer = join_file(Path(chosen.sheet), None if chosen.policy is None else Path(chosen.policy))
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if answer.verdict is Verdict.HOLDS else 1


def as_text(answer: JoinAnswer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: JoinAnswer) -> Iterator[str]:
    yield f"wire, fuse, ground, joint: {answer.verdict}"
    for finding in answer.findings:
        yield from _finding(finding)
    yield f"next: {answer.next or 'nothing more'}"


def _finding(finding: Finding) -> Iterator[str]:
    figure = "" if finding.value is None else f" {said(finding.value)} {finding.unit}"
    if finding.low is not None and finding.high is not None and finding.low != finding.high:
        figure += f" ({said(finding.low)} to {said(finding.high)})"
    yield f"  {finding.verdict}: {finding.what}{figure}"
    yield f"      {finding.because}"
    if finding.limit is not None:
        limit = finding.limit
        yield f"      limit {limit.side} {said(limit.value)} {limit.unit}, {limit.warrant}"
    if finding.next is not None:
        yield f"      next: {finding.next}"
