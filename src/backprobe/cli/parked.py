"""`backprobe parked`: how many days a parked vehicle still starts, and what bounds them."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from pathlib import Path

from backprobe.cases.parked import parked_case
from backprobe.errors import JobError
from backprobe.findings import Finding, Verdict, worst
from backprobe.stages.parked.answer import bases_of, days_in_words, notes_of, parked_json
from backprobe.stages.parked.findings import findings_of
from backprobe.stages.parked.parked import ParkedAnswer, parked_answer

SVG = b"<svg"


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("sheet", metavar="JOB.toml", help="a job sheet with the tables [battery] and [parked]")
    parser.add_argument("--svg", metavar="OUT.svg", help="draw the charge left, day by day")
    parser.add_argument("--policy", metavar="FILE", help="the fleet's own limits, where no policy.toml lies beside it")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer: 0 when everything holds, 1 when something is thin, fails or is open."""
    answer = parked_answer(parked_case(Path(chosen.sheet), None if chosen.policy is None else Path(chosen.policy)))
    if chosen.svg is not None:
        _draw(answer, Path(chosen.svg))
    said = {**parked_json(answer), "svg": chosen.svg}
    print(json.dumps(said, ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if worst(finding.verdict for finding in findings_of(answer)) is Verdict.HOLDS else 1


def _draw(answer: ParkedAnswer, path: Path) -> None:
    """Write the picture; nothing but an earlier picture is ever written over."""
    from backprobe.drawings.parked_curve import parked_curve  # loads only where it is wanted
    from backprobe.stages.parked.curve import curve_of

    content = curve_of(answer)
    if content is None:
        raise JobError(f"there is nothing to draw yet: {'; '.join(answer.lacking)}")
    try:
        if path.is_file() and path.read_bytes()[:4] not in (b"", SVG):
            raise JobError(f"{path}: there is a file of this name that is no SVG; it was left as it is")
        path.write_text(parked_curve(content), encoding="utf-8")
    except OSError as fault:
        raise JobError(f"the picture could not be written to {path}: {fault.strerror}") from None


def as_text(answer: ParkedAnswer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: ParkedAnswer) -> Iterator[str]:
    yield "days parked: " + ("cannot be reckoned yet" if answer.days is None else days_in_words(answer.days))
    found = findings_of(answer)
    for finding in found:
        yield from _finding(finding)
    if any(each.id == "parked_days" and each.verdict is not Verdict.HOLDS for each in found):
        yield from (f"to reach {answer.case.wanted_days:g} days: {c.in_words()}" for c in answer.changes)
    yield from (f"note: {note}" for note in notes_of(answer))
    yield from (f"question: {question}" for question in answer.questions)
    yield from (f"source: {basis}" for basis in bases_of(answer))


def _finding(finding: Finding) -> Iterator[str]:
    yield f"  {finding.verdict}: {finding.what}"
    yield f"      {finding.because}"
    if finding.limit is not None:
        yield f"      limit {finding.limit.side} {finding.limit.value:g} {finding.limit.unit}, {finding.limit.warrant}"
    if finding.next:
        yield f"      next: {finding.next}"
