"""Whether a job can end as its sheet says."""

from __future__ import annotations

from dataclasses import replace

import pytest

from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.hand_over.ending import ALL_CAME, SOME_CAME, ending_finding, obstacles, said

WIRE = Finding(id="supply_role", stage=Stage.PROBE, what="Supply wire: Red", verdict=Verdict.HOLDS, because="volts")
PROVEN = Finding(id="turns", stage=Stage.PROVE, what="Key turns", verdict=Verdict.HOLDS, because="all were reported")
THIN, OPEN, FAILS = (replace(WIRE, verdict=verdict) for verdict in (Verdict.THIN, Verdict.OPEN, Verdict.FAILS))
NIGHT = Missing(what="one parked night", owed_by="the yard", until="2026-04-07")
PROVISIONAL = HandOver(end=End.PROVISIONAL, missing=(NIGHT,))
ABANDONED = HandOver(
    end=End.ABANDONED, undone=("both taps",), restored=("fuse F12, lamps tested",), why="the owner said no"
)


def test_a_job_is_proven_when_all_holds_and_the_unit_was_seen_to_work():
    """A finding of the stage prove among them; nothing stands in the way."""
    assert obstacles(HandOver(end=End.PROVEN), [WIRE, PROVEN]) == ()
    assert ending_finding(HandOver(end=End.PROVEN), [WIRE, PROVEN]).verdict is Verdict.HOLDS


@pytest.mark.parametrize("short", [THIN, OPEN, FAILS])
def test_whatever_does_not_hold_keeps_a_job_from_being_proven(short: Finding):
    """It is named with its verdict."""
    assert obstacles(HandOver(end=End.PROVEN), [PROVEN, short]) == (f"Supply wire: Red: {short.verdict}",)


def test_wires_alone_prove_no_job():
    """Without any finding on the unit itself the job is not proven, however well the wires are."""
    (why,) = obstacles(HandOver(end=End.PROVEN), [WIRE])
    assert "no finding of the stage 'prove'" in why
    assert len(obstacles(HandOver(end=End.PROVEN), [])) == 1


def test_a_proven_job_lacks_nothing():
    """What is named as missing contradicts the end."""
    (why,) = obstacles(HandOver(end=End.PROVEN, missing=(NIGHT,)), [WIRE, PROVEN])
    assert why.endswith("yet to lack: one parked night")


@pytest.mark.parametrize("short", [WIRE, THIN, OPEN])
def test_a_provisional_job_says_what_is_missing(short: Finding):
    """Who owes it and until when; then evidence may be missing, or thin."""
    assert obstacles(PROVISIONAL, [short]) == ()


def test_a_provisional_job_does_not_fail():
    """What is outside its limit is put right or undone, not owed."""
    assert obstacles(PROVISIONAL, [WIRE, FAILS]) == ("Supply wire: Red: fails",)


def test_what_is_missing_is_owed_by_somebody_until_a_day():
    """Nothing named; nobody named; no day named: each is asked for."""
    assert "[[hand_over.missing]]" in obstacles(HandOver(end=End.PROVISIONAL), [])[0]
    nobody = HandOver(end=End.PROVISIONAL, missing=(NIGHT, Missing(what="coverage")))
    assert obstacles(nobody, []) == (
        "coverage: who owes it is not said (owed_by)",
        "coverage: until when is not said (until)",
    )


def test_an_abandoned_job_says_what_was_undone_and_restored_and_why():
    """All three; then it may end so whatever was found."""
    assert obstacles(ABANDONED, [FAILS, OPEN]) == ()
    asked = obstacles(HandOver(end=End.ABANDONED), [])
    assert [why.split(" is not said")[0] for why in asked] == [
        "why the job was abandoned",
        "what was undone",
        "what was restored",
    ]
    (why,) = obstacles(replace(ABANDONED, missing=(NIGHT,)), [])
    assert why.endswith("yet to lack: one parked night")


def test_many_findings_are_counted():
    """Five are named, of seven two are counted."""
    found = obstacles(HandOver(end=End.PROVEN), [PROVEN, *[THIN] * 7])
    assert (len(found), found[-1]) == (6, "and 2 more findings that do not hold")


def test_the_finding_says_what_stands_in_the_way():
    """Open with the reasons and what to do; holding with what was said."""
    short = ending_finding(HandOver(end=End.PROVEN), [THIN])
    assert (short.id, short.stage, short.verdict) == ("ending", Stage.HAND_OVER, Verdict.OPEN)
    assert short.because.startswith("Supply wire: Red: thin; nothing shows")
    assert short.next is not None
    done = ending_finding(ABANDONED, [FAILS])
    assert (done.what, done.verdict, done.next) == ("How the job ends: abandoned", Verdict.HOLDS, None)
    assert done.because == "undone: both taps; restored: fuse F12, lamps tested; why: the owner said no"


def test_a_provisional_end_is_open_until_nothing_is_owed():
    """What is missing is missing evidence: open, and the next thing is the first that is owed."""
    owed = ending_finding(PROVISIONAL, [WIRE])
    assert (owed.verdict, owed.because) == (Verdict.OPEN, said(PROVISIONAL))
    assert owed.next == "one parked night: owed by the yard until 2026-04-07"


def test_what_was_owed_and_has_come_only_wants_another_end():
    """The night is there by now: nothing is to be put right; with a second thing owed only the night is taken out."""
    night = replace(PROVEN, id="prove_parked")
    owed = Missing(what="parked night", owed_by="the yard", until="2026-04-07")
    all_came = ending_finding(HandOver(end=End.PROVISIONAL, missing=(owed,)), [WIRE, night])
    assert (all_came.verdict, all_came.next) == (Verdict.OPEN, ALL_CAME)
    some_came = ending_finding(HandOver(end=End.PROVISIONAL, missing=(owed, NIGHT)), [WIRE, night])
    assert some_came.next == SOME_CAME
    failing = ending_finding(HandOver(end=End.PROVISIONAL, missing=(owed,)), [FAILS, night])
    assert failing.next not in (ALL_CAME, SOME_CAME)


def test_what_is_said_of_the_end():
    """Each missing thing with who owes it and until when."""
    assert said(PROVISIONAL) == "missing: one parked night (owed by the yard until 2026-04-07)"
    assert said(HandOver(end=End.PROVEN)) == "everything holds"
