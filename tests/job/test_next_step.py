"""Nobody is asked to crank an engine that nobody allowed to be cranked, and a crank is asked for with its cautions."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.jobs import DEMO, NAMED, ROWS, WALKROUND, crank_recording, evidence, finding, without

from backprobe.evidence.keys import Key
from backprobe.evidence.walkround import Authority, Hazards, Walkround
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.door import evidence_of
from backprobe.job.judge import WEAK_BATTERY, JobJudgement, judge_job
from backprobe.job.next_step import NOT_ALLOWED, asks_for_crank, crank_withheld, with_care, without_crank
from backprobe.stages.probe.supply_findings import RECORD_IT
from backprobe.stages.walkround.cautions import BEFORE_CRANK, NO_MAKER_TIME

ALLOWED = 'crank_by = "Maud Linden"\n'
REFUSED = WALKROUND.replace(ALLOWED, "crank = false\n")
UNSAID = WALKROUND.replace(ALLOWED, "")
NOT_CRANKED = without(ROWS, "Red,crank", "Violet,crank")
# what a sentence that asks for a crank speaks of; 'ignition not in crank' is a kind of wire
CRANKING = re.compile(r"\b(?:crank(?:s|ed|ing)?|starter|start)\b")


def asked(sentence: str | None) -> str:
    """A sentence without the kinds of wires and without the sentence that asks for the authority."""
    bare = (sentence or "").replace(NOT_ALLOWED, "").replace("ignition not in crank", "").replace("start (", "(")
    return bare.replace("or start", "")


@pytest.mark.parametrize(
    ("authority", "withheld"),
    [
        (Authority(crank_by="Maud Linden"), False),
        (Authority(crank=True, crank_by="Maud Linden"), False),
        (Authority(crank=True), True),
        (Authority(crank=False), True),
        (Authority(crank=False, crank_by="Maud Linden"), True),
        (Authority(), True),
    ],
)
def test_a_crank_is_asked_for_only_where_somebody_is_named_who_allowed_it(authority: Authority, withheld: bool):
    """A name allows; 'false' with a name says who refused."""
    walked = Walkround(authority=authority)
    assert crank_withheld(walked, has_crank=True) is withheld
    assert not crank_withheld(walked, has_crank=False)
    assert not crank_withheld(None, has_crank=True)


def test_other_readings_come_first_where_a_crank_was_refused():
    """Nothing measured yet: the first reading is asked for as ever; that nothing can be proven stands there."""
    judged = judge_job(evidence(rows="", walkround=REFUSED))
    said = finding(judged, "authority_crank")
    assert (said.verdict, said.next) == (Verdict.OPEN, None)
    assert judged.next is not None
    assert judged.next.startswith("measure Red ")
    assert judged.probe.result.next is not None
    assert judged.probe.result.next.key is not Key.CRANK


def test_where_only_the_crank_is_missing_the_authority_is_asked_for():
    """All but the crank was measured: no wire is chosen, and the next step is the authority, not the crank."""
    judged = judge_job(evidence(rows=NOT_CRANKED, walkround=REFUSED))
    assert judged.verdict is Verdict.OPEN
    assert judged.next == NOT_ALLOWED
    assert judged.probe.result.next is None
    assert finding(judged, "supply_crank").verdict is Verdict.OPEN


def test_an_authority_that_was_not_asked_for_is_asked_for_first():
    """Nobody said who allowed it: that is the next thing to do, before any reading."""
    judged = judge_job(evidence(rows="", walkround=UNSAID))
    assert judged.next is not None
    assert judged.next.startswith("ask somebody who may allow a crank")


def test_a_crank_that_was_measured_counts_and_is_questioned():
    """Refused and yet measured: the wires are judged by it, and the job stays open until it is said who allowed it."""
    judged = judge_job(evidence(walkround=REFUSED))
    assert finding(judged, "supply_crank").verdict is Verdict.HOLDS
    assert finding(judged, "authority_crank").because.startswith("a crank was measured")
    assert judged.verdict is Verdict.OPEN


def test_a_doubtful_crank_is_not_measured_again_without_authority():
    """Red reads 0 V in the crank by a MIN hold, then a figure that cannot be read: neither is asked for again."""
    rows = NOT_CRANKED + "Red,crank,0.00,min,,\nRed,crank,0x,min,,\nViolet,crank,,,,\n"
    allowed = judge_job(evidence(rows=rows, walkround=WALKROUND))
    refused = judge_job(evidence(rows=rows, walkround=REFUSED))
    assert any(asks_for_crank(each.next or "") for each in allowed.findings)
    assert not any(asks_for_crank(each.next or "") for each in refused.findings)
    assert refused.probe.result.next is None or refused.probe.result.next.key is not Key.CRANK


VOLTS = st.sampled_from(["0.02", "12.40", "14.02", "10.81", "6.2", "24.1", "xx", ""])
ROW = st.tuples(
    st.sampled_from(["Red", "Violet", "Grey"]),
    st.sampled_from([str(key) for key in Key]),
    VOLTS,
    st.sampled_from(["", "min", "max", "logged"]),
)


@settings(max_examples=60, deadline=None)
@given(
    rows=st.lists(ROW, max_size=14),
    walked=st.sampled_from([REFUSED, UNSAID]),
    named=st.booleans(),
    heard=st.sampled_from([{}, {"crank.csv": crank_recording("Red", "Violet", "Grey")}]),
)
def test_no_sentence_asks_for_a_crank_that_nobody_allowed(
    rows: list[tuple[str, str, str, str]], walked: str, named: bool, heard: dict[str, str]
):
    """Whatever was measured: neither a finding, nor the next step, nor the next reading speaks of cranking."""
    table = "".join(f"{wire},{key},{volts},{capture},,\n" for wire, key, volts, capture in rows)
    given_rows = "Red,on,12.4,,,\n" + table
    judged = judge_job(evidence(rows=given_rows, walkround=walked, recordings=heard, named=NAMED if named else ""))
    assert_no_crank_is_asked_for(judged)


def assert_no_crank_is_asked_for(judged: JobJudgement) -> None:
    """What must be true of a job in which nobody allowed a crank."""
    upcoming = judged.probe.result.next
    assert upcoming is None or upcoming.key is not Key.CRANK
    authority = finding(judged, "authority_crank").next
    for sentence in (judged.next, *(each.next for each in judged.findings)):
        assert sentence == authority or not CRANKING.search(asked(sentence)), sentence


@pytest.mark.parametrize("walked", ["crank = false", ""])
def test_nor_does_a_job_with_joints_and_a_battery(walked: str):
    """The demo's good truck without its crank: what wiring and battery still need of a crank is not asked for."""
    folder = DEMO / "linden-yard" / "truck-07"
    texts = {
        name: (folder / name).read_text(encoding="utf-8") for name in ("job.toml", "readings.csv", "walkround.toml")
    }
    before = 'crank_by = "Maud Linden"'
    assert before in texts["walkround.toml"]
    refused = {**texts, "walkround.toml": texts["walkround.toml"].replace(before, walked)}
    unit = (folder / ".." / "unit.toml").read_text(encoding="utf-8")
    assert_no_crank_is_asked_for(judge_job(evidence_of({**refused, "unit": unit})))
    allowed = judge_job(evidence_of({**texts, "unit": unit}))
    assert any(asks_for_crank(each.next or "") for each in allowed.findings)


@pytest.mark.parametrize(
    ("sentence", "instead"),
    [
        (RECORD_IT.format(wire="Red"), NOT_ALLOWED),
        ("complete [join] and [[joint]] of the job sheet: volts of the ignition wire in a crank", NOT_ALLOWED),
        ("record a start: key off, on, crank, then ten seconds of running", NOT_ALLOWED),
        ("do not use Red; measure Blue while the engine cranks, with a MIN hold", f"do not use Red; {NOT_ALLOWED}"),
        ("turn the key through the script again (backprobe prove --plan)", NOT_ALLOWED),
        (WEAK_BATTERY, WEAK_BATTERY.partition("; ")[0] + f"; {NOT_ALLOWED}"),
        ("measure Red at key on: looks like ignition not in crank (30%)", None),
        ("do not use Red", None),
    ],
)
def test_the_authority_stands_where_the_crank_was_asked_for(sentence: str, instead: str | None):
    """What else is to be done stays; sentences that ask for no crank stay whole."""
    found = Finding(id="x", stage=Stage.PROBE, what="x", verdict=Verdict.OPEN, because="x", next=sentence)
    assert without_crank(found).next == (sentence if instead is None else instead)


def test_care_is_taken_where_it_matters_and_nowhere_else():
    """A crank with all that belongs before it; the battery switch with the maker's time, known or not."""
    assert with_care("measure Red at key on", None) == "measure Red at key on"
    crank = with_care(
        "measure Red while the engine cranks (out of gear, parking brake on, nobody near the engine)", None
    )
    assert crank == f"measure Red while the engine cranks; before the crank: {BEFORE_CRANK}"
    opened = "measure Red with the battery switch open"
    assert with_care(opened, None) == f"{opened}; {NO_MAKER_TIME}"
    known = Walkround(hazards=Hazards(after_run_min=5.0))
    assert with_care(opened, known).endswith("only 5 min after key-off, the maker's after-run time")


def test_a_script_is_turned_with_the_care_of_its_crank():
    """Before the crank that a script holds; a vehicle without a starter has none."""
    said = "turn the key through a script (backprobe prove --plan) and fetch the unit's reports"
    assert with_care(said, None).startswith(f"{said}; before the crank: parking brake on")
    assert with_care(said, None, has_crank=False) == said
