"""A judgement as plain JSON values."""

from __future__ import annotations

import json

import pytest
from tests.samples.jobs import NAMED, ROWS, crank_recording, evidence, without

from backprobe.job.answer import judgement_json
from backprobe.job.judge import JobJudgement, judge_job

ROWS_NOT_CRANKED = without(ROWS, "Red,crank", "Violet,crank")
# in the demo's recording the key is on from 1.0 s and the starter turns from 2.4 s to 3.3 s
KEY_ON_S, CRANK_S, STARTED_S = 1.0, 2.4, 3.3


@pytest.fixture(scope="module")
def judged() -> JobJudgement:
    """A good job whose crank comes from a recording."""
    heard = {"crank.csv": crank_recording("Red", "Violet", "Grey")}
    return judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings=heard))


def test_the_answer_is_plain_json(judged: JobJudgement):
    """It survives a round through JSON text unchanged, and says what the job came to."""
    answer = judgement_json(judged)
    assert json.loads(json.dumps(answer)) == answer
    assert (answer["ok"], answer["verdict"], answer["next"]) == (True, "holds", None)
    assert answer["choice"] == {"supply": "Red", "ignition": "Violet"}
    assert answer["skipped"] == {"count": 0, "first": []}


def test_a_wire_s_tap_is_what_the_job_may_use_it_for(judged: JobJudgement):
    """Red for the supply, Violet for the ignition, Grey (an accessory wire) for nothing."""
    taps = {wire["wire"]: wire["tap"] for wire in judgement_json(judged)["wires"]}
    assert taps == {"Red": "supply", "Violet": "ignition", "Grey": "no"}


def test_no_tap_on_volts_alone():
    """Violet reads as a true ignition and nobody named its circuit: in a job its tap is 'no'."""
    judged = judge_job(
        evidence(named=NAMED.replace('circuit = "body-builder connector, ignition feed, fuse F31"\n', ""))
    )
    assert judged.probe.result.ignition == "Violet"
    taps = {wire["wire"]: wire["tap"] for wire in judgement_json(judged)["wires"]}
    assert taps == {"Red": "supply", "Violet": "no"}


def test_a_banned_wire_s_tap_stays_never():
    """Never is not softened to no."""
    judged = judge_job(evidence(named=NAMED.replace("ignition feed", "airbag")))
    taps = {wire["wire"]: wire["tap"] for wire in judgement_json(judged)["wires"]}
    assert taps == {"Red": "supply", "Violet": "never"}


def test_a_recording_s_part_names_its_file(judged: JobJudgement):
    """Events, cranks, channels and notes under the file's name; nothing that belongs to the whole job."""
    (part,) = judgement_json(judged)["recordings"]
    assert part["file"] == "crank.csv"
    assert [round(part["events"][name], 1) for name in ("key_on_s", "crank_start_s", "crank_end_s")] == [
        KEY_ON_S,
        CRANK_S,
        STARTED_S,
    ]
    assert {channel["channel"] for channel in part["channels"]} == {"battery", "Red", "Violet", "Grey"}
    assert "choice" not in part


def test_the_next_reading_is_given_in_words_and_in_parts():
    """`next` is a sentence, `next_reading` its wire, key and capture."""
    answer = judgement_json(judge_job(evidence(rows="")))
    assert answer["next"].startswith("measure Red at key off")
    assert {name: answer["next_reading"][name] for name in ("wire", "key", "capture")} == {
        "wire": "Red",
        "key": "off",
        "capture": "display",
    }


def test_the_next_thing_is_said_with_its_stage(judged: JobJudgement):
    """A reading belongs to the wires, a lack of authority to the walkround; where nothing is left there is no stage."""
    assert judgement_json(judged)["next_stage"] is None
    assert judgement_json(judge_job(evidence(rows="")))["next_stage"] == "probe"
    unallowed = judgement_json(judge_job(evidence(walkround="[authority]\nwork = false\n")))
    assert unallowed["next_stage"] == "walkround"
    assert unallowed["next"] in {
        finding["next"] for finding in unallowed["findings"] if finding["stage"] == "walkround"
    }


def test_lines_that_were_passed_over_are_counted():
    """One line with a mistyped key."""
    answer = judgement_json(judge_job(evidence(rows=ROWS + "Red,onn,12.3,,,\n")))
    assert answer["skipped"]["count"] == 1
    assert answer["skipped"]["first"][0].startswith("readings.csv, line 14: Red,onn,12.3")
