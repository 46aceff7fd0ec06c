"""`backprobe reception`: what a receiver's log says of the place where its antenna sits."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from pathlib import Path

from backprobe.cases.reception import judged_file
from backprobe.errors import JobError, OptionError
from backprobe.findings import Finding, Verdict, rounded
from backprobe.stages.mount.reception.answer import ReceptionAnswer, notes_of

SVG = b"<svg"


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("log", metavar="FILE", help="a receiver's log in NMEA 0183")
    parser.add_argument("--heading", metavar="DEG", help="where the vehicle's front pointed, from north over east")
    parser.add_argument("--picture", metavar="OUT.svg", help="draw the sky as the receiver heard it")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the answer: 0 when everything holds, 1 when something is thin, fails or is open."""
    heading_deg = None if chosen.heading is None else heading_of(chosen.heading)
    answer = judged_file(Path(chosen.log), heading_deg=heading_deg)
    if chosen.picture is not None:
        _draw(answer, Path(chosen.picture))
    print(json.dumps(answer.as_json(), ensure_ascii=False) if chosen.json else as_text(answer))
    return 0 if answer.verdict is Verdict.HOLDS else 1


def heading_of(text: str) -> float:
    """The heading that is typed, in degrees from north over east. Raises OptionError.

    >>> heading_of("270")
    270.0
    """
    try:
        heading_deg = float(text)
    except ValueError:
        heading_deg = -1.0
    if not 0 <= heading_deg <= 360:
        raise OptionError(f"--heading {text}: degrees from north over east are expected, 0 to 360: --heading 270")
    return heading_deg


def _draw(answer: ReceptionAnswer, path: Path) -> None:
    """Write the picture; nothing but an earlier picture is ever written over."""
    from backprobe.cases.reception import picture_of  # drawings load only where they are wanted

    try:
        if path.is_file() and path.read_bytes()[:4] not in (b"", SVG):
            raise JobError(f"{path}: there is a file of this name that is no SVG; it was left as it is")
        path.write_text(picture_of(answer), encoding="utf-8")
    except OSError as fault:
        raise JobError(f"the picture could not be written to {path}: {fault.strerror}") from None


def as_text(answer: ReceptionAnswer) -> str:
    """The answer in lines."""
    return "\n".join(_lines(answer))


def _lines(answer: ReceptionAnswer) -> Iterator[str]:
    log = answer.log
    yield f"{log.file}: {answer.verdict}"
    yield f"{log.sentences} sentences, {log.epochs} moments, {log.fixes} with a position"
    for finding in answer.findings:
        yield from _finding(finding)
    yield from (f"note: {note}" for note in notes_of(log))
    yield from (f"passed over, or odd: {place}" for place in log.places)
    yield f"next: {_next(answer) or 'nothing more'}"


def _finding(finding: Finding) -> Iterator[str]:
    yield f"  {finding.verdict}: {finding.what.rsplit(', ', 1)[0]}"
    if finding.value is not None and finding.limit is not None:
        shown = f"{rounded(finding.value, finding.digits):.{finding.digits}f} {finding.unit}".rstrip()
        limit = f"{finding.limit.side} {finding.limit.value:g} {finding.limit.unit}".rstrip()
        yield f"      {shown}; limit {limit}, {finding.limit.warrant}"
    yield f"      {finding.because}"
    if finding.next:
        yield f"      next: {finding.next}"


def _next(answer: ReceptionAnswer) -> str | None:
    """What to do first: about what fails, then what is open, then what is thin."""
    for verdict in (Verdict.FAILS, Verdict.OPEN, Verdict.THIN):
        for finding in answer.findings:
            if finding.verdict is verdict and finding.next:
                return finding.next
    return None
