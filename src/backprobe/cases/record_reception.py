"""What a record says of reception in short: all that holds of one receiver's log, in one line with its limits."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.findings import Finding, Verdict

OF_A_LOG = "reception_"
LEAST = 2  # findings that are worth a line together


def together(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings with those that hold of one log put together, each log's in the place of its first."""
    logs: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.id.startswith(OF_A_LOG) and finding.verdict is Verdict.HOLDS:
            logs.setdefault(_file(finding), []).append(finding)
    lines = {each[0]: _line(file, each) for file, each in logs.items() if len(each) >= LEAST}
    gone = {finding for each in logs.values() if len(each) >= LEAST for finding in each}
    return tuple(lines.get(each, each) for each in findings if each in lines or each not in gone)


def _file(finding: Finding) -> str:
    return finding.what.rpartition(", ")[2]


def _line(file: str, findings: Sequence[Finding]) -> Finding:
    first = findings[0]
    return Finding(
        id="reception_holds",
        stage=first.stage,
        what=f"Reception, {file}",
        verdict=Verdict.HOLDS,
        because="; ".join(_said(each) for each in findings),
    )


def _said(finding: Finding) -> str:
    """One finding in a few words: 'HDOP at half of all moments 1.10 (at most 2)'."""
    name = finding.what.rpartition(", ")[0]
    if finding.value is None or finding.limit is None:
        return f"{_small(name)}: {finding.because}"
    shown = f"{finding.value:.{finding.digits}f} {finding.unit}".rstrip()
    return f"{_small(name)} {shown} ({finding.limit.side} {finding.limit.value:g})"


def _small(name: str) -> str:
    """The name within a sentence: an abbreviation keeps its capitals."""
    return name if name[1:2].isupper() else f"{name[:1].lower()}{name[1:]}"
