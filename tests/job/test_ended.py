"""What is left to do of a job that has ended."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.jobs import NAMED, evidence

from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.ended import closing
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.stages.hand_over.ending import ending_finding

GIVEN_UP = HandOver(end=End.ABANDONED, undone=("nothing",), restored=("fuse F12",), why="the owner said no")
OWED = HandOver(end=End.PROVISIONAL, missing=(Missing(what="a night", owed_by="the yard office", until=None),))
FAILS = Finding(
    id="supply_circuit", stage=Stage.PROBE, what="Red", verdict=Verdict.FAILS, because="brakes", next="do not use Red"
)
SIGNED = Finding(
    id="sign_off", stage=Stage.HAND_OVER, what="Sign-off", verdict=Verdict.HOLDS, because="by Ines", next=None
)
NOT_SIGNED = replace(SIGNED, verdict=Verdict.OPEN, because="nobody", next="sign it")
ABANDONED = """
[hand_over]
end = "abandoned"
undone = "nothing had been touched"
restored = "nothing had been touched"
why = "the owner said no"
"""
UNREAD = "wire,key,volts,capture,after_min,load_A\nRed,off,12.62,,,\n"


def closed(hand_over: HandOver | None, *found: Finding) -> Finding | None:
    """What closes a job with these findings, with that on its end among them."""
    ending = () if hand_over is None else (ending_finding(hand_over, found),)
    return closing(hand_over, (*found, *ending))


def test_of_a_job_that_was_given_up_only_the_signature_is_left():
    """Whatever fails in it: first the signature, then nothing."""
    left = closed(GIVEN_UP, FAILS, NOT_SIGNED)
    assert left == NOT_SIGNED
    done = closed(GIVEN_UP, FAILS, SIGNED)
    assert done is not None
    assert (done.id, done.next) == ("ending", None)


@pytest.mark.parametrize(
    "found",
    [
        closed(None, FAILS),
        closed(replace(GIVEN_UP, why=None), FAILS, SIGNED),  # it is not said all
        closed(GIVEN_UP, FAILS),  # nobody looked for a signature
        closed(replace(OWED, missing=()), SIGNED),
        closed(HandOver(end=End.PROVEN), FAILS, SIGNED),  # what fails stands in the way
        closed(HandOver(end=End.PROVEN), NOT_SIGNED),
    ],
)
def test_while_there_is_work_nothing_closes_it(found: Finding | None):
    """Not ended, not fully said, not signed, or not as it is said to be."""
    assert found is None


def given_up(sign_off: Finding) -> JobJudgement:
    """A job in which little was read and which was given up."""
    return judge_job(replace(evidence(rows=UNREAD, named=NAMED + ABANDONED), sign_off=sign_off))


def test_a_judgement_asks_for_nothing_more():
    """Its findings still say what is open, each with its own next; the job has none, and leads to no stage."""
    done = given_up(SIGNED)
    assert done.verdict is Verdict.OPEN
    assert any(each.next for each in done.findings)
    assert (done.next, done.next_stage) == (None, None)
    due = given_up(NOT_SIGNED)
    assert (due.next, due.next_stage) == ("sign it", Stage.HAND_OVER)


def test_what_came_after_the_signature_is_work_again():
    """An open sign-off closes no job but one that was given up."""
    late = replace(SIGNED, verdict=Verdict.OPEN, next="look at what came later and sign the job off again")
    assert closed(HandOver(end=End.PROVEN), late) is None
    assert closed(GIVEN_UP, late) == late
