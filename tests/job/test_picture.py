"""The picture of the crank: what is drawn, in what limits, with which key positions."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from tests.samples.jobs import ROWS, crank_recording, evidence, without

from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.picture import AFTER_S, BEFORE_S, crank_picture, crank_waveform, key_spans
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
