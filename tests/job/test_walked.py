"""A walkround in a job: before the probe, at the wires that are to be tapped, and after the work."""

from __future__ import annotations

import pytest
from tests.samples.jobs import ROWS, VEHICLE, WALKROUND, evidence, finding

from backprobe.findings import Stage, Verdict
from backprobe.job.judge import judge_job
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.walkround.cautions import before_isolating

DANGEROUS = WALKROUND.replace("dangerous_goods = false", "dangerous_goods = true").replace(
    "battery_switch = false", 'battery_switch = true\nbattery_switch_side = "positive"\nafter_run_min = 5'
)
CONSENT = DANGEROUS.replace(
    "dangerous_goods = true", 'dangerous_goods = true\ndangerous_goods_consent = "the carrier\'s safety adviser"'
)
OPEN_SWITCH = "Red,isolated,0.01,,,\nViolet,isolated,0.01,,,\n"
UPSTREAM = "Red,isolated,12.60,,,\nViolet,isolated,0.01,,,\n"


def test_a_job_without_a_walkround_is_open_once():
    """Everything else holds and both wires are chosen; the walkround is the one thing left to do."""
    judged = judge_job(evidence(walkround=None))
    assert [each.id for each in judged.findings if each.verdict is Verdict.OPEN] == ["walkround"]
    assert judged.verdict is Verdict.OPEN
    assert judged.next == "walk round the vehicle before anything is touched, and write walkround.toml"
    assert [judged.chosen(slot) for slot in SlotName] == ["Red", "Violet"]


def test_the_walkround_stands_between_vin_and_probe_and_the_condition_after_at_the_end():
    """In the order of the work."""
    stages = [each.stage for each in judge_job(evidence()).findings]
    assert stages == sorted(stages, key=list(Stage).index)
    ids = [each.id for each in judge_job(evidence()).findings]
    assert ids.index("vin_model_year") < ids.index("walkround") < ids.index("supply_wire")
    assert ids[-1] == "condition_after"


def test_a_condition_after_that_is_still_owed_is_asked_for_last():
    """The wires come first: the condition after is written when the work is done."""
    head, _, tail = WALKROUND.partition("[after]")
    unfinished = head + "[unit]" + tail.partition("[unit]")[2]
    judged = judge_job(evidence(rows="", walkround=unfinished))
    assert finding(judged, "condition_after").verdict is Verdict.OPEN
    assert (judged.next or "").startswith("measure Red ")
    proven = judge_job(evidence(walkround=unfinished))
    assert (proven.next or "").startswith("when the work is done, key on")


def test_a_unit_that_is_not_ready_stops_everything():
    """It fails, and the dash stays shut, whatever the wires are."""
    judged = judge_job(evidence(walkround=WALKROUND.replace("activated = true", "activated = false")))
    assert judged.verdict is Verdict.FAILS
    assert judged.next == "the dash stays shut: have the unit activated, or take one that is"


def test_another_vehicle_stops_everything():
    """The sheet says truck 7, the plate in the yard truck 12."""
    other = WALKROUND.replace("5ZLDR7HV5KR200417", "5ZLDR7HVXKR200588")
    found = finding(judge_job(evidence(walkround=other)), "identity")
    assert found.verdict is Verdict.FAILS
    assert found.because == "VIN: 5ZLDR7HV5KR200417 on the sheet, 5ZLDR7HVXKR200588 on the vehicle"


def test_wires_that_are_dead_with_the_switch_open_may_be_tapped_on_a_dangerous_goods_body():
    """Both are measured so, and both are chosen."""
    judged = judge_job(evidence(rows=ROWS + OPEN_SWITCH, walkround=DANGEROUS))
    assert [finding(judged, f"{slot}_isolated").verdict for slot in SlotName] == [Verdict.HOLDS, Verdict.HOLDS]
    assert [judged.chosen(slot) for slot in SlotName] == ["Red", "Violet"]
    assert judged.verdict is Verdict.HOLDS


def test_a_supply_upstream_of_the_switch_is_not_chosen_without_consent():
    """12.60 V with the switch open: it fails and is not tapped; the ignition is not touched by that."""
    judged = judge_job(evidence(rows=ROWS + UPSTREAM, walkround=DANGEROUS))
    assert finding(judged, "supply_isolated").verdict is Verdict.FAILS
    assert [judged.chosen(slot) for slot in SlotName] == [None, "Violet"]
    assert (judged.next or "").startswith("do not tap Red without consent")


def test_a_supply_upstream_of_the_switch_is_chosen_by_consent():
    """Who consented is on the finding."""
    judged = judge_job(evidence(rows=ROWS + UPSTREAM, walkround=CONSENT))
    assert judged.chosen(SlotName.SUPPLY) == "Red"
    assert finding(judged, "supply_isolated").because.endswith("by consent of the carrier's safety adviser")


def test_on_a_dangerous_goods_body_the_wires_are_asked_for_with_the_switch_open():
    """Not measured so: open, not chosen, and the next step says when the switch may be opened."""
    judged = judge_job(evidence(walkround=DANGEROUS))
    assert [judged.chosen(slot) for slot in SlotName] == [None, None]
    asked = "measure Red with the battery switch open, against the frame"
    assert judged.next == f"{asked}; {before_isolating(5.0)}"


@pytest.mark.parametrize("walked", [WALKROUND, DANGEROUS.replace("battery_switch = true", "battery_switch = false")])
def test_other_bodies_and_those_without_a_switch_are_not_asked(walked: str):
    """Where there is no switch to be upstream of, the hazard itself stays open instead."""
    assert not [each for each in judge_job(evidence(walkround=walked)).findings if each.id.endswith("_isolated")]


def test_a_switch_that_only_the_sheet_knows_of_counts():
    """The job sheet says that there is one, the walkround says nothing of it."""
    silent = DANGEROUS.replace("battery_switch = true\n", "")
    judged = judge_job(evidence(vehicle=VEHICLE + "battery_switch = true\n", walkround=silent))
    assert finding(judged, "supply_isolated").verdict is Verdict.OPEN
