"""What a record says of the proof: the picture of it, what holds, and the names of what does not."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.judge import JobJudgement
from backprobe.job.turns_picture import turns_picture
from backprobe.paper.content import Picture, ReportedBlock


def reported_block(judged: JobJudgement) -> ReportedBlock | None:
    """The section on what the unit reported; None where nobody has given script and reports."""
    if judged.proof is None:
        return None
    drawn = turns_picture(judged)
    own = [each for each in judged.findings if each.stage is Stage.PROVE]
    return ReportedBlock(
        picture=None if drawn is None else Picture(title="", svg=drawn[0], caption=drawn[1], alt=drawn[2]),
        findings=tuple(each for each in own if is_shown_there(each)),
        others=tuple(f"{each.what} ({each.verdict})" for each in own if not is_shown_there(each)),
        notes=judged.proof.beside,
    )


def is_shown_there(finding: Finding) -> bool:
    """Whether a finding stands in the section on the proof: what holds does, all else stands at the head."""
    return finding.stage is Stage.PROVE and finding.verdict is Verdict.HOLDS


def elsewhere(findings: Sequence[Finding], judged: JobJudgement) -> tuple[Finding, ...]:
    """The findings that do not stand in the section on the proof; all of them where there is none."""
    if judged.proof is None:
        return tuple(findings)
    return tuple(each for each in findings if not is_shown_there(each))
