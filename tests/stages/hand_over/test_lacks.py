"""What keeps a job from being proven, and as a sheet may say it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from backprobe.evidence.hand_over import End, HandOver, Lack, Missing
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.hand_over.ending import obstacles, told
from backprobe.stages.hand_over.lacks import MEANS, SHOWN_BY, contradicted, in_words, lacks_of, owed_example

NIGHT = Finding(
    id="prove_parked", stage=Stage.PROVE, what="Reports over a parked night", verdict=Verdict.OPEN, because="for 36 min"
)
WIRE = Finding(id="supply_drop", stage=Stage.PROBE, what='Red "X1": drop', verdict=Verdict.OPEN, because="no reading")


def owing(what: str) -> HandOver:
    """A provisional end that lacks one thing."""
    return HandOver(end=End.PROVISIONAL, missing=(Missing(what=what, owed_by="the yard", until="2026-04-07"),))


@pytest.mark.parametrize("lack", Lack)
@pytest.mark.parametrize("verdict", [Verdict.OPEN, Verdict.THIN])
def test_each_named_lack_is_seen_in_the_findings(lack: Lack, verdict: Verdict):
    """Each finding that stays open for it names it; one that holds or fails does not."""
    for name in SHOWN_BY[lack]:
        assert lacks_of([replace(NIGHT, id=name, verdict=verdict)]) == (lack,)
        assert lacks_of([replace(NIGHT, id=name, verdict=Verdict.HOLDS)]) == ()


@pytest.mark.parametrize("written", ["parked night", "Parked Night", "  parked   night "])
def test_what_is_there_is_not_missing(written: str):
    """A night that the reports cover cannot be owed; one that they do not cover can."""
    hand_over = owing(written)
    assert obstacles(hand_over, [NIGHT]) == ()
    (why,) = obstacles(hand_over, [replace(NIGHT, verdict=Verdict.HOLDS)])
    assert why.endswith("it is said to be missing, and it is there")


def test_free_words_are_taken_as_they_are():
    """Anything else may be missing; nothing is known of it here."""
    assert list(contradicted(owing("one parked night").missing, [replace(NIGHT, verdict=Verdict.HOLDS)])) == []


def test_a_named_lack_says_what_it_means():
    """On paper and in the refusal: the name, and what it means."""
    assert told(owing("no coverage"))["missing"] == (
        f"no coverage: {MEANS[Lack.NO_COVERAGE]} (owed by the yard until 2026-04-07)",
    )


def test_the_example_names_what_is_owed():
    """The named lack first, then whatever else is open, by its finding; quotation marks do not break it."""
    lines = owed_example([WIRE, NIGHT])
    assert lines[:2] == ("[hand_over]", 'end = "provisional"')
    assert [line for line in lines if line.startswith("what")] == ['what = "parked night"', "what = \"Red 'X1': drop\""]
    assert sum(line.startswith("owed_by") for line in lines) == 2


def test_what_fails_is_not_owed():
    """No example: it is put right, or undone."""
    assert owed_example([NIGHT, replace(WIRE, verdict=Verdict.FAILS)]) == ()


def test_what_the_unit_reported_is_said_in_full():
    """Nobody can see it on the vehicle; a wire is named alone."""
    assert in_words(NIGHT) == "Reports over a parked night: open: for 36 min"
    assert in_words(WIRE) == 'Red "X1": drop: open'
