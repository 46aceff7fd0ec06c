"""The picture of a job's proof: two strips out of script and reports."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from tests.samples.jobs import PROOF, parts
from tests.samples.prove_cases import healthy, proven, row
from tests.samples.prove_world import FAULTS, reports_text, script_text, world_of

from backprobe.job.door import evidence_of
from backprobe.job.judge import judge_job
from backprobe.job.turns_picture import turns_of, turns_picture

SCRIPT, REPORTS = "key-script.csv", "reports.csv"


def test_a_good_job():
    """The demo's script: seven positions, on and off as late as the findings say, the unit in the caption."""
    judged = judge_job(evidence_of(parts()))
    found = turns_picture(judged)
    assert found is not None
    picture, caption, words = found
    assert ElementTree.fromstring(picture).tag.endswith("svg")
    assert "unit LN2-00417 said on" in caption
    assert caption.endswith("UTC, 2026-03-31.")
    said = {each.id: each.value for each in judged.findings}
    assert words == (
        "The key: off, accessory, off, on, crank, running, off. "
        f"The unit: on {said['prove_on']:.1f} s late; off {said['prove_off']:.1f} s late."
    )


def test_without_a_proof_there_is_no_picture():
    """No script, no reports."""
    given = {name: text for name, text in parts().items() if name not in PROOF}
    assert turns_picture(judge_job(evidence_of(given))) is None


def test_the_strips_of_a_healthy_unit():
    """The hand: off from 20 s before; the unit: off, on from 302 s to 820 s, off; in seconds from there."""
    found = turns_of(proven(healthy()).proof)
    assert [(each.start_s, each.label, each.on) for each in found.hand] == [
        (0.0, "off", False),
        (120.0, "accessory", False),
        (220.0, "off", False),
        (320.0, "on", True),
        (520.0, "crank", True),
        (522.0, "running", True),
        (820.0, "off", False),
    ]
    assert [(each.label, each.on) for each in found.unit] == [("off", False), ("on", True), ("off", False)]
    assert found.unit[1].end_s - found.unit[1].start_s == pytest.approx(820 - 302)
    assert [mark.label for mark in found.ticks][:2] == ["08:00", "08:02"]


def test_a_change_between_two_reports_lies_anywhere_between():
    """A unit without events: a stretch of which nobody knows, from one heartbeat to the next."""
    rows = [row(-60, "boot"), *(row(t, ignition=int(302 <= t < 820)) for t in range(-30, 1200, 60))]
    unknown = [each for each in turns_of(proven(rows).proof).unit if each.on is None]
    assert [round(each.end_s - each.start_s) for each in unknown] == [60, 60]


def test_restarts_and_events_that_nobody_turned_for_are_marked():
    """A boot in the crank, and an on and an off in between."""
    rows = [*healthy(), row(506, "boot", 1), row(620, "ignition_off", 0), row(640, "ignition_on", 1)]
    labels = [mark.label for mark in turns_of(proven(rows).proof).by_unit]
    assert labels == ["restart", "off: no ignition was turned", "on: no ignition was turned"]


@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_can_be_drawn(fault: str):
    """Whatever the unit said, the picture comes."""
    world = world_of(fault, 7)
    given = {**parts(), SCRIPT: script_text(world), REPORTS: reports_text(world)}
    found = turns_picture(judge_job(evidence_of(given)))
    assert found is not None
    ElementTree.fromstring(found[0])
