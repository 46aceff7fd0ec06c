"""The pictures of a job are those for which there is evidence."""

from __future__ import annotations

import itertools
import json
import xml.etree.ElementTree as ElementTree
from dataclasses import replace
from pathlib import Path

import pytest
from tests.samples.jobs import crank_recording, demo_job, parts

from backprobe.cases.judge import judge_folder
from backprobe.drawings.lettering import text_width
from backprobe.job.door import evidence_of
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.pictures import PARTS, PICTURES, pictures_of
from backprobe.tongues.picture import picture_said
from backprobe.tongues.speaker import speaker


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


@pytest.mark.parametrize("truck", ["truck-07", "truck-12", "truck-15"])
@pytest.mark.parametrize("language", ["en", "es"])
def test_a_phone_can_read_wiring_and_strips(tmp_path: Path, truck: str, language: str) -> None:
    """On 360 units the demo's drawings have letters of at least 12, inside and apart, in Spanish too."""
    found = pictures_of(judge_folder(demo_job(tmp_path, truck)).judged, width=360.0)
    for name in ("wiring", "turns"):
        svg = picture_said(found[name]["svg"], speaker(language))
        boxes = lettering(svg)
        assert svg.startswith("<svg")
        assert 'viewBox="0 0 360 ' in svg
        assert min(size for size, *_ in boxes) >= 12.0
        height = float(svg.split('viewBox="0 0 360 ')[1].split('"')[0])
        assert [box for box in boxes if box[1] < 0 or box[2] > 360 or box[3] < 0 or box[4] > height] == []
        pairs = itertools.combinations(boxes, 2)
        assert [(a, b) for a, b in pairs if a[1] < b[2] and b[1] < a[2] and a[3] < b[4] and b[3] < a[4]] == []


def lettering(svg: str) -> list[tuple[float, float, float, float, float]]:
    """Of each line of letters its size and its box: left, right, top (cap height), bottom (of a descender)."""
    boxes = []
    for node in ElementTree.fromstring(svg).iter("{http://www.w3.org/2000/svg}text"):
        size, x, y = (float(node.get(name, "0")) for name in ("font-size", "x", "y"))
        width = text_width(node.text or "", size, bold=node.get("font-weight") == "bold")
        left = x - {"middle": width / 2, "end": width}.get(node.get("text-anchor", ""), 0.0)
        boxes.append((size, left, left + width, y - 0.7 * size, y + 0.2 * size))
    return boxes
