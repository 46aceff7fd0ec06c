"""What a record says of the proof."""

from __future__ import annotations

from tests.samples.jobs import PROOF, parts
from tests.samples.prove_world import reports_text, script_text, world_of

from backprobe.cases.record_proof import elsewhere, reported_block
from backprobe.findings import Stage, Verdict
from backprobe.job.door import evidence_of
from backprobe.job.judge import JobJudgement, judge_job


def judged(**changes: object) -> JobJudgement:
    """A good job with other files."""
    return judge_job(evidence_of({**parts(), **changes}))


def test_a_good_proof_stands_in_its_own_section():
    """The picture, every finding of the stage, and nothing at the head."""
    job = judged()
    block = reported_block(job)
    assert block is not None
    assert block.picture is not None
    assert [each.id for each in block.findings] == [each.id for each in job.findings if each.stage is Stage.PROVE]
    assert block.others == ()
    assert Stage.PROVE not in {each.stage for each in elsewhere(job.findings, job)}


def test_what_does_not_hold_stands_at_the_head_and_is_named_in_the_section():
    """An inverted input: its pattern with the findings, its name in the section."""
    world = world_of("inverted", 7)
    job = judged(**{"key-script.csv": script_text(world), "reports.csv": reports_text(world)})
    block = reported_block(job)
    assert block is not None
    assert "Pattern: inverted (fails)" in block.others
    head = [each for each in elsewhere(job.findings, job) if each.stage is Stage.PROVE]
    assert "prove_inverted" in [each.id for each in head]
    assert {Verdict.HOLDS} == {each.verdict for each in block.findings}
    assert len(head) + len(block.findings) == sum(1 for each in job.findings if each.stage is Stage.PROVE)


def test_without_a_proof_there_is_no_section():
    """What is missing stands with the findings."""
    job = judge_job(evidence_of({name: text for name, text in parts().items() if name not in PROOF}))
    assert reported_block(job) is None
    assert elsewhere(job.findings, job) == job.findings
