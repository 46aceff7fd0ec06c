"""How doors answer in the language and voice in which they were asked."""

from __future__ import annotations

import json
import re
import time
from collections.abc import Iterator

import pytest
from tests.samples.demo_jobs import DEMO, DemoJob, demo_job
from tests.samples.own_words import runs_of

from backprobe.findings import Finding, Stage, Verdict
from backprobe.formats.parts import Parts
from backprobe.job.journal_door import judge_journal_text, margin_bars_text, pictures_text
from backprobe.job.told import SENTENCES, finding_said, in_words, speaker_of, told
from backprobe.tongues.speaker import plain, speaker

ENGLISH = re.compile(
    r"\b(?:the|of|is|was|are|not|with|from|and|wire|lead|key|at|by|in|on|its|has|that|what|who|unit|measure|while|it)\b"
)
TERMINAL = re.compile(r"[a-z]_[a-zA-Z]|\[\w|\.toml|\bbackprobe\b|--\w")
QUOTED = re.compile(r'"([^"]+)"')
NOT_SHOWN = {"means", "look_at"}  # of the proof's own answer: its findings say the same


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> list[DemoJob]:
    """Both jobs of the demo."""
    folder = tmp_path_factory.mktemp("demo")
    return [demo_job(folder, name) for name in ("truck-07", "truck-12")]


@pytest.fixture(scope="module")
def others(tmp_path_factory: pytest.TempPathFactory) -> list[DemoJob]:
    """More jobs of the demo, in other states."""
    folder = tmp_path_factory.mktemp("others")
    return [demo_job(folder, name) for name in ("truck-09", "truck-11", "truck-15", "truck-18", "truck-21")]


def asked(job: DemoJob, count: int | None = None, **more: str) -> str:
    """What a phone asks of the first entries of a job."""
    files = {name: content.decode("utf-8", "replace") for name, content in job.files.items()}
    corners = (DEMO / "corners.txt").read_text("utf-8")
    return json.dumps({"entries": job.texts[:count], "blobs": files, "corners.txt": corners, **more})


def sentences(answer: object, name: str = "") -> Iterator[str]:
    """Every sentence of an answer."""
    if isinstance(answer, dict):
        yield from (said for key, value in answer.items() if key != "lacks" for said in sentences(value, key))
    elif isinstance(answer, list):
        yield from (said for value in answer for said in sentences(value, name))
    elif isinstance(answer, str) and name in SENTENCES - NOT_SHOWN:
        yield answer


def in_own_words(job: DemoJob) -> list[str]:
    """What somebody wrote into the job's files or entries, the longest first: it is nobody's to translate."""
    texts = [content.decode("utf-8", "replace") for content in job.files.values()] + job.texts
    texts.append((DEMO / "corners.txt").read_text("utf-8"))
    found = {written for text in texts for written in QUOTED.findall(text)}
    cells = {cell.strip() for text in texts for cell in re.split(r"[,;\n\t]", text)}
    parts = {part.strip() for written in found for part in re.split(r"[,(;:]| and ", written)}
    return sorted((found | cells | parts) - {""}, key=len, reverse=True)


def without(text: str, own: list[str]) -> str:
    """A text without what somebody wrote."""
    for written in own:
        if " " in written and written in text:
            text = text.replace(written, "")
    return text


def counts(job: DemoJob) -> list[int | None]:
    """How far a job may have got: a few entries, more, all."""
    return [*range(3, len(job.texts), max(1, len(job.texts) // 12)), None]


def test_english_is_answered_to_the_byte(jobs: list[DemoJob]) -> None:
    """Who asks for English, or for a language that nobody speaks here, gets what the engine writes."""
    for door in (judge_journal_text, margin_bars_text, pictures_text):
        answer = door(asked(jobs[1]))
        assert door(asked(jobs[1], language="en")) == door(asked(jobs[1], language="fi")) == answer


def test_nothing_english_is_left_in_spanish(jobs: list[DemoJob], others: list[DemoJob]) -> None:
    """At every step of the demo's jobs all sentences are Spanish, but for what somebody wrote in their own words."""
    for job in [*jobs, *others]:
        own = in_own_words(job)
        for count in counts(job) if job in jobs else (6, 12, None):
            answer = json.loads(judge_journal_text(asked(job, count, language="es", voice="phone")))
            left = [said for said in sentences(answer) if ENGLISH.search(without(said, own))]
            assert left == []


def test_pictures_are_said_too(jobs: list[DemoJob]) -> None:
    """Captions, what is read aloud, and the letters in pictures and margin bars are Spanish."""
    for job in jobs:
        own = in_own_words(job)
        answer = json.loads(pictures_text(asked(job, language="es")))
        said = [
            *sentences(answer),
            *(letters for each in answer["pictures"].values() for letters in lettering(each["svg"])),
        ]
        bars = json.loads(margin_bars_text(asked(job, language="es")))["bars"]
        said += [letters for svg in bars.values() for letters in lettering(svg)]
        assert len(said) > 100
        plain = [each.replace("&amp;", "&") for each in said]
        left = [each for each in plain if ENGLISH.search(without(each, own))]
        assert [each for each in left if ENGLISH.search(without(each, runs_of(own)))] == []


def lettering(svg: str) -> list[str]:
    """The words of a picture."""
    return re.findall(r"<(?:text|title|desc)[^>]*>([^<]+)<", svg)


def test_the_phone_says_no_file_and_no_command(jobs: list[DemoJob]) -> None:
    """At every step of the demo's jobs the phone's sentences speak of its pages, in English and in Spanish."""
    for job in jobs:
        for count in counts(job):
            for language in ("en", "es"):
                answer = json.loads(judge_journal_text(asked(job, count, language=language, voice="phone")))
                assert [said for said in sentences(answer) if TERMINAL.search(said)] == []


def test_what_a_page_reckons_with_stays(jobs: list[DemoJob]) -> None:
    """Ids, verdicts, figures, wires and keys are the same in both languages."""
    for job in jobs:
        english, spanish = (json.loads(judge_journal_text(asked(job, **more))) for more in ({}, {"language": "es"}))
        for name in ("verdict", "choice", "setup", "vehicle", "unit"):
            assert spanish[name] == english[name]
        for ours, theirs in zip(english["findings"], spanish["findings"], strict=True):
            for name in ("id", "stage", "verdict", "value", "low", "high", "margin"):
                assert ours[name] == theirs[name]
        ours, theirs = ([{**each, "said": None} for each in answer["ends"]["lacks"]] for answer in (english, spanish))
        assert ours == theirs


def test_the_next_thing_begins_as_its_finding(jobs: list[DemoJob]) -> None:
    """By the beginning of what is next a page finds the stage that it belongs to, in Spanish as in English."""
    for job in jobs:
        for count in counts(job):
            answer = json.loads(judge_journal_text(asked(job, count, language="es", voice="phone")))
            if answer.get("next"):
                english = json.loads(judge_journal_text(asked(job, count)))
                assert stage_due(answer) == stage_due(english)


def stage_due(answer: dict[str, object]) -> object:
    """The stage of the finding with which what is next begins."""
    findings, upcoming = answer["findings"], str(answer["next"])
    assert isinstance(findings, list)
    return next((each["stage"] for each in findings if each["next"] and upcoming.startswith(each["next"])), None)


def test_errors_are_said_too() -> None:
    """A refusal is said in the language that was asked for."""
    answer = told('{"language": "es"}', "the journal", answer_to=lambda parts: {"log": parts.text("entries")})
    assert json.loads(answer) == {"ok": False, "error": "entries: se espera un texto", "code": "job"}


def test_sentences_are_told_by_their_names() -> None:
    """Sentences and pictures are put into other words, ids, names and what is written again are not."""
    answer = {"id": "not measured yet", "why": "not measured yet", "lacks": [{"what": "Battery switch"}], "n": 1.5}
    said = {"what": "Battery switch", "said": "Cortabaterías"}
    assert in_words(answer, speaker("es")) == {**answer, "why": "aún sin medir", "lacks": [said]}


def test_a_finding_keeps_its_figures() -> None:
    """A finding that is said in Spanish has its id and verdict still; without a language it is the same finding."""
    finding = Finding(
        id="a", stage=Stage.PROBE, what="Battery switch", verdict=Verdict.OPEN, because="not measured yet"
    )
    assert finding_said(finding, plain) is finding
    said = finding_said(finding, speaker("es"))
    assert (said.id, said.what, said.because) == ("a", "Cortabaterías", "aún sin medir")


def test_who_speaks_is_asked_for() -> None:
    """Language and voice stand in what is asked."""
    assert speaker_of(Parts({})) is plain
    assert speaker_of(Parts({"language": "es"}))("no value") == "sin valor"


@pytest.mark.xdist_group("times")
def test_spanish_costs_little(jobs: list[DemoJob]) -> None:
    """The sentences of the demo's job are put into Spanish within 0.1 s of processor time (measured: 0.025 s)."""
    answer = json.loads(judge_journal_text(asked(jobs[0])))
    said = [*sentences(answer)]
    speaker("es")("not measured yet")
    begun = time.process_time()
    for sentence in said:
        speaker("es")(sentence)
    assert len(said) > 150
    assert time.process_time() - begun < 0.1
