"""The picture of how long a job's vehicle can stand."""

from __future__ import annotations

from xml.etree import ElementTree

from tests.samples.jobs import NAMED, VEHICLE, evidence
from tests.samples.jobs import UNIT as BARE_UNIT
from tests.samples.parked import SHEET

from backprobe.job.judge import judge_job
from backprobe.job.parked_picture import parked_picture

UNIT = BARE_UNIT.replace("most_V = 32.0\n", "most_V = 32.0\nidle_mA = 65\ntransmit_mA = 180\nsleep_mA = 3.5\n", 1)
UNIT += "[reporting]\nstopped_interval_s = 3600\n"


def test_the_picture_and_its_words_say_the_days_of_the_finding():
    """One picture with the figures of `parked_days` in its words."""
    judged = judge_job(evidence(named=NAMED + SHEET, unit=UNIT))
    days = next(each for each in judged.findings if each.id == "parked_days")
    found = parked_picture(judged)
    assert found is not None
    picture, caption, words = found
    assert ElementTree.fromstring(picture).tag.endswith("svg")
    assert caption.startswith("How long the vehicle can stand")
    assert f"{days.value:.1f} days, at the earliest {days.low:.1f}, at the latest {days.high:.1f}" in words


def test_there_is_none_where_the_days_cannot_be_reckoned():
    """No tables; no capacity; a reading of no battery at rest; no crank that could fail."""
    assert parked_picture(judge_job(evidence())) is None
    for sheet in (SHEET.replace("capacity_Ah = 110\n", ""), SHEET.replace("12.60", "9.00")):
        assert parked_picture(judge_job(evidence(named=NAMED + sheet, unit=UNIT))) is None
    electric = evidence(named=NAMED + SHEET, vehicle=VEHICLE + "has_crank = false\n", unit=UNIT)
    assert parked_picture(judge_job(electric)) is None
