"""A judgement as plain JSON values, and the picture of the crank."""

from __future__ import annotations

import json
from xml.etree import ElementTree

import pytest
from tests.samples.jobs import NAMED, ROWS, crank_recording, evidence, without

from backprobe.job.answer import AFTER_S, BEFORE_S, crank_picture, crank_waveform, judgement_json, key_spans
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.stages.probe.recording.view import RecordingView

ROWS_NOT_CRANKED = without(ROWS, "Red,crank", "Violet,crank")
# in the demo's recording the key is on from 1.0 s and the starter turns from 2.4 s to 3.3 s
KEY_ON_S, CRANK_S, STARTED_S = 1.0, 2.4, 3.3


@pytest.fixture(scope="module")
def judged() -> JobJudgement:
    """A good job whose crank comes from a recording."""
    heard = {"crank.csv": crank_recording("Red", "Violet", "Grey")}
    return judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings=heard))


def view_of(judged: JobJudgement) -> RecordingView:
    """What the one recording of a job shows."""
    view = judged.heard[0].answer.view
    assert view is not None
    return view


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


def test_lines_that_were_passed_over_are_counted():
    """One line with a mistyped key."""
    answer = judgement_json(judge_job(evidence(rows=ROWS + "Red,onn,12.3,,,\n")))
    assert answer["skipped"]["count"] == 1
    assert answer["skipped"]["first"][0].startswith("readings.csv, line 14: Red,onn,12.3")


def test_the_picture_is_one_svg_with_its_caption(judged: JobJudgement):
    """Well-formed, naming each channel, both limits and the file; and in words for those who do not see it."""
    picture = crank_picture(judged)
    assert picture is not None
    svg, caption, spoken = picture
    words = " ".join(ElementTree.fromstring(svg).itertext())
    assert caption == "crank.csv: the supply while the starter turns"
    for word in ("battery", "Red", "Violet", "Grey", "ignition at least 10 V", "supply at least 9 V"):
        assert word in words
    assert "crank" in spoken
    assert "Violet" in spoken


def test_a_crank_is_never_called_certain(judged: JobJudgement):
    """However sure, the picture says 'over 99% sure' at most."""
    picture = crank_picture(judged)
    assert picture is not None
    assert "100%" not in picture[0]


def test_without_a_recorded_crank_there_is_no_picture():
    """Neither for a job without recordings nor for one in which nothing was cranked."""
    assert crank_picture(judge_job(evidence())) is None
    still = "time_s,battery\n" + "".join(f"{n / 10:.1f},12.6{n % 2}\n" for n in range(100))
    assert crank_picture(judge_job(evidence(recordings={"still.csv": still}))) is None


def test_the_surest_crank_is_drawn():
    """Of two recordings the one with the surest crank."""
    quiet = "time_s,battery\n" + "".join(f"{n / 10:.1f},{11.9 if 50 < n < 60 else 12.6}\n" for n in range(100))
    heard = {"a-load.csv": quiet, "crank.csv": crank_recording("Red", "Violet", "Grey")}
    picture = crank_picture(judge_job(evidence(recordings=heard)))
    assert picture is not None
    assert picture[1].startswith("crank.csv")


def test_a_few_seconds_round_the_crank_are_drawn(judged: JobJudgement):
    """From 2.4 s - 1.5 s to 3.3 s + 2.5 s, every channel of it, in the file's own values."""
    recording = judged.heard[0].recording
    drawn = crank_waveform(recording, view_of(judged), system_V=12)
    times = [point[0] for trace in drawn.traces for point in trace.points]
    assert min(times) >= CRANK_S - BEFORE_S - 0.05
    assert max(times) <= STARTED_S + AFTER_S + 0.05
    assert [trace.name for trace in drawn.traces] == ["battery", "Red", "Violet", "Grey"]
    assert [line.value for line in drawn.limits] == [9.0, 10.0]


def test_limits_follow_the_system(judged: JobJudgement):
    """Twice as high in a 24 V vehicle."""
    drawn = crank_waveform(judged.heard[0].recording, view_of(judged), system_V=24)
    assert [line.value for line in drawn.limits] == [18.0, 20.0]


def test_key_positions_stand_beneath(judged: JobJudgement):
    """off, on, crank, running: end to end, from the window's beginning to its end."""
    spans = key_spans(view_of(judged), 0.5, end=5.0)
    assert [span.label for span in spans] == ["off", "on", "crank", "running"]
    edges = [round(edge, 1) for span in spans for edge in (span.start_s, span.end_s)]
    assert edges == [0.5, KEY_ON_S, KEY_ON_S, CRANK_S, CRANK_S, STARTED_S, STARTED_S, 5.0]


def test_key_positions_before_the_window_are_left_out(judged: JobJudgement):
    """A window that begins with the engine running shows nothing else."""
    assert [span.label for span in key_spans(view_of(judged), 4.0, end=5.0)] == ["running"]
