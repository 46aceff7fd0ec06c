"""The pictures of a job are those for which there is evidence."""

from __future__ import annotations

import json
from dataclasses import replace

from tests.samples.jobs import crank_recording, parts

from backprobe.job.door import evidence_of
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.pictures import PARTS, PICTURES, pictures_of


def judged(**given: object) -> JobJudgement:
    """A job judged, with more or other parts than the sample's."""
    return judge_job(evidence_of(json.loads(json.dumps(parts() | given))))


def test_a_recorded_crank_is_drawn() -> None:
    """With a recording the crank is there, as SVG, with a caption and in words."""
    found = pictures_of(judged(recordings={"crank.csv": crank_recording("Red", "Violet", "Grey")}))
    assert tuple(found["crank"]) == PARTS
    assert found["crank"]["svg"].startswith("<svg")
    assert "crank.csv" in found["crank"]["caption"]
    narrow = pictures_of(judged(recordings={"crank.csv": crank_recording("Red", "Violet", "Grey")}), width=360.0)
    assert 'viewBox="0 0 360 ' in narrow["crank"]["svg"]


def test_without_evidence_there_is_no_picture() -> None:
    """No recording, no joints, no proof, no place: nothing is drawn, and nothing stands empty."""
    bare = judged(recordings=None)
    sheet = replace(bare.evidence.sheet, joints=(), parked=None)
    bare = replace(bare, proof=None, evidence=replace(bare.evidence, sheet=sheet))
    assert pictures_of(bare) == {}


def test_their_names_are_known() -> None:
    """The names by which pages ask for them."""
    assert list(PICTURES) == ["wiring", "crank", "turns", "sky", "parked"]
