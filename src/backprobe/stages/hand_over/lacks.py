"""What keeps a job from being proven: by the findings, and as a sheet may say it.

Three things are nobody's fault and are met again and again: a yard without coverage, a yard under a roof, and a night
that has not passed yet. Each has a name of its own, so that it is owed under the same words everywhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.hand_over import Lack, Missing
from backprobe.findings import Finding, Stage, Verdict

MEANS = {
    Lack.NO_COVERAGE: "the unit could not be heard from where the vehicle stood",
    Lack.INDOOR_YARD: "the unit could not find where it is under a roof",
    Lack.PARKED_NIGHT: "the reports do not cover one night with the vehicle parked",
}
# the findings that stay open for it
SHOWN_BY = {
    Lack.NO_COVERAGE: ("prove_reports", "prove_backlog", "prove_late_attach"),
    Lack.INDOOR_YARD: ("prove_position",),
    Lack.PARKED_NIGHT: ("prove_parked",),
}
MOST_SHOWN = 6
UNTIL = "a day"


def lacks_of(findings: Sequence[Finding]) -> tuple[Lack, ...]:
    """The named lacks that keep findings open."""
    waiting = {each.id for each in findings if each.verdict in (Verdict.OPEN, Verdict.THIN)}
    return tuple(lack for lack in Lack if waiting & set(SHOWN_BY[lack]))


def contradicted(missing: Sequence[Missing], findings: Sequence[Finding]) -> Iterator[str]:
    """What a sheet says is missing although it is there, a sentence each."""
    holding = {each.id for each in findings if each.verdict is Verdict.HOLDS}
    waiting = set(lacks_of(findings))
    for one in missing:
        lack = one.lack
        if lack is not None and lack not in waiting and holding & set(SHOWN_BY[lack]):
            yield f"{one.what}: it is said to be missing, and it is there"


def owed_example(findings: Sequence[Finding]) -> tuple[str, ...]:
    """The lines of a job sheet with which the job can end as provisional; nothing where something fails."""
    if any(each.verdict is Verdict.FAILS for each in findings):
        return ()
    lines = ["[hand_over]", 'end = "provisional"']
    for what in owed(findings)[:MOST_SHOWN]:
        quoted = what.replace("\\", " ").replace('"', "'")
        lines += ["[[hand_over.missing]]", f'what = "{quoted}"', 'owed_by = "who"', f'until = "{UNTIL}"']
    return tuple(lines)


def owed(findings: Sequence[Finding]) -> tuple[str, ...]:
    """What is to be said as missing, each once: the named lacks, then whatever else is not settled, by its finding."""
    lacks = lacks_of(findings)
    named = {name for lack in lacks for name in SHOWN_BY[lack]}
    others = (each.what for each in findings if each.verdict is not Verdict.HOLDS and each.id not in named)
    return tuple(dict.fromkeys([*map(str, lacks), *others]))


def in_words(finding: Finding) -> str:
    """A finding that stands in the way, with why; of the unit's proof in full, as nobody sees that on the vehicle."""
    if finding.stage is Stage.PROVE:
        return f"{finding.what}: {finding.verdict}: {finding.because}"
    return f"{finding.what}: {finding.verdict}"
