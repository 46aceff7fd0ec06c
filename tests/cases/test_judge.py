"""A job folder judged: its journal, its JSON, and the record on paper."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from tests.samples import corners
from tests.samples.jobs import demo_job, finding
from tests.samples.journals import uuid7
from tests.samples.photos import as_file, bomb, four_corners
from tests.samples.signing import unended

from backprobe.cases.judge import (
    disputes_of,
    evidence_of,
    judge_folder,
)
from backprobe.errors import JobError, UnreadableError
from backprobe.evidence.corner import CornerIndex
from backprobe.files.corner_file import write_corners
from backprobe.files.journal_file import held_journal
from backprobe.findings import Verdict
from backprobe.job.entry import digest
from backprobe.job.journal import Draft, continued
from backprobe.stages.probe.slots import SlotName


@pytest.fixture
def good(tmp_path: Path) -> Path:
    """A copy of the demo job that went well."""
    return demo_job(tmp_path, "truck-07")


@pytest.fixture
def wrong(tmp_path: Path) -> Path:
    """A copy of the demo job whose ignition wire is an accessory wire."""
    return demo_job(tmp_path, "truck-12")


def edit(path: Path, before: str, after: str) -> None:
    """Change a text in a file; it must be there."""
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def test_the_good_truck_holds(good: Path):
    """Every finding holds but the one that asks for a signature; both wires are chosen, only signing is left to do."""
    judged = judge_folder(good).judged
    assert judged.verdict is Verdict.HOLDS
    assert [each.id for each in judged.findings if each.verdict is not Verdict.HOLDS] == ["sign_off"]
    assert [judged.chosen(slot) for slot in SlotName] == ["X12/4 RD", "X12/9 VT"]
    assert judged.next == "sign the job off"


def test_the_wrong_truck_fails_by_its_accessory_wire(wrong: Path):
    """The wire meant for the ignition is live in accessory and dead in the crank; another one is to be measured."""
    judged = judge_folder(wrong).judged
    role = finding(judged, "ignition_wire")
    assert judged.verdict is role.verdict is Verdict.FAILS
    assert "accessory" in role.because
    assert [judged.chosen(slot) for slot in SlotName] == [None, None]
    assert judged.next is not None
    assert judged.next.startswith("do not use X12/6 GY; measure X12/9 VT in accessory")


def test_a_second_run_leaves_the_journal_as_it_is(good: Path):
    """Judging again adds nothing, and the answer is the same."""
    first = judge_folder(good)
    before = (good / "journal.jsonl").read_bytes()
    again = judge_folder(good)
    assert (good / "journal.jsonl").read_bytes() == before
    assert again.imported.added == {}
    assert again.as_json() == first.as_json()


def test_the_answer_names_the_journal_by_its_digest(good: Path):
    """Entries and sha256 of the very bytes that stand in the folder."""
    answer = judge_folder(good).as_json()
    journal = (good / "journal.jsonl").read_bytes()
    assert answer["journal"] == {"entries": journal.count(b"\n"), "sha256": digest(journal)}
    assert (answer["job"], answer["notes"]) == ("LY-2026-07", [])


def test_an_earlier_reading_stays_in_the_journal(wrong: Path):
    """A figure changed in the table: judged by the new one, and the old one is still in the journal."""
    judge_folder(wrong)
    edit(wrong / "readings.csv", "10.81", "8.81")
    judged = judge_folder(wrong).judged
    assert finding(judged, "supply_crank").verdict is Verdict.FAILS
    assert b'"10.81"' in (wrong / "journal.jsonl").read_bytes()


def test_a_meter_of_one_s_own_is_read(good: Path):
    """A file beside the sheet; one that is not there is named."""
    edit(good / "job.toml", 'class = "basic"', 'file = "meter.toml"')
    with pytest.raises(JobError, match=r"meter\.toml"):
        judge_folder(good)
    (good / "meter.toml").write_text('name = "bench"\npercent = 0.05\ncounts = 3\n', encoding="utf-8")
    assert judge_folder(good).judged.evidence.meter.name == "bench"


def test_photos_that_the_walkround_names_and_that_are_not_there(good: Path):
    """Open until they are put into the folder; then the job holds as before."""
    walked = good / "walkround.toml"
    walked.write_text(walked.read_text(encoding="utf-8") + '[[photo]]\nfile = "photos/dash.jpg"\n', encoding="utf-8")
    judged = judge_folder(good).judged
    assert finding(judged, "walkround_photos").because == "named and not there: photos/dash.jpg"
    assert judged.verdict is Verdict.OPEN
    (good / "photos").mkdir(exist_ok=True)
    (good / "photos" / "dash.jpg").write_bytes(as_file(four_corners()))
    assert "walkround_photos" not in {each.id for each in judge_folder(good).judged.findings}


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"to whom it may concern", "photos/dash.jpg: expected a picture as JPEG, PNG or WebP; this file is none"),
        (as_file(four_corners())[:400], "photos/dash.jpg: expected a whole picture; this one is "),
        (bomb(), "photos/dash.jpg: expected at most "),
        (b"", "photos/dash.jpg: expected a picture as JPEG, PNG or WebP; this file is empty"),
    ],
)
def test_photos_that_the_walkround_names_and_that_are_no_pictures(good: Path, content: bytes, words: str):
    """A text, a photo cut off, a bomb, nothing: open, in plain words, and the file is kept as it is."""
    walked = good / "walkround.toml"
    walked.write_text(walked.read_text(encoding="utf-8") + '[[photo]]\nfile = "photos/dash.jpg"\n', encoding="utf-8")
    (good / "photos" / "dash.jpg").write_bytes(content)
    judged = judge_folder(good).judged
    found = finding(judged, "walkround_photos")
    assert found.verdict is Verdict.OPEN
    assert words in found.because
    assert judged.verdict is Verdict.OPEN
    assert (good / "photos" / "dash.jpg").read_bytes() == content


def test_a_photo_beside_the_folder_of_photos_is_not_among_them(good: Path):
    """It would not reach the journal: it is named as missing, with where to put it."""
    walked = good / "walkround.toml"
    walked.write_text(walked.read_text(encoding="utf-8") + '[[photo]]\nfile = "dash.jpg"\n', encoding="utf-8")
    (good / "dash.jpg").write_bytes(as_file(four_corners()))
    found = finding(judge_folder(good).judged, "walkround_photos")
    assert found.because == "named and not there: dash.jpg"
    assert "under photos/" in found.next


def test_a_folder_without_a_walkround_is_open_and_says_so(good: Path):
    """The job is judged as it stands: one finding more that is open, and the next step is to walk round."""
    (good / "walkround.toml").unlink()
    judged = judge_folder(good).judged
    assert [each.id for each in judged.findings if each.verdict is Verdict.OPEN] == ["walkround", "ending", "sign_off"]
    assert (judged.next or "").startswith("walk round the vehicle")


def test_two_claims_for_one_serial_keep_the_job_open(good: Path):
    """The sheet says LN2-00417, a phone LN2-00471: the job is open until somebody decides, and says so in words."""
    first = judge_folder(good)
    with held_journal(good) as held:
        draft = Draft(id=uuid7(1), kind="claim", body={"slot": "serial", "value": "LN2-00471"})
        held.append(continued(held.journal, [draft], job=first.imported.job, device="phone-a", engine="0.1.0"))
    job = judge_folder(good)
    assert disputes_of(job.imported) == ["serial: LN2-00417 or LN2-00471"]
    assert job.judged.verdict is Verdict.OPEN
    assert evidence_of(job.imported).disputes == tuple(disputes_of(job.imported))


def test_recordings_are_judged_by_the_names_of_their_files(good: Path):
    """Two recordings, in the order of their names."""
    shutil.copy(good / "recordings" / "crank.csv", good / "recordings" / "a second.csv")
    assert [each.recording.name for each in judge_folder(good).judged.heard] == ["a second.csv", "crank.csv"]


def test_a_recording_that_cannot_be_read_is_refused_and_kept(good: Path):
    """A photo among the recordings: named; it and everything else is in the journal's keeping."""
    photo = b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(100)
    (good / "recordings" / "photo.jpg").write_bytes(photo)
    with pytest.raises(UnreadableError, match=r"photo\.jpg"):
        judge_folder(good)
    assert (good / "recordings" / "photo.jpg").read_bytes() == photo


@pytest.mark.parametrize(
    ("name", "verdict", "value"),
    [
        ("obd-drive1.csv", Verdict.OPEN, 12.031),
        ("obd-idle3.csv", Verdict.THIN, 9.14),
        ("obd-long10.csv", Verdict.FAILS, 7.558),
    ],
)
def test_real_logs_in_a_job(good: Path, shared_data: Path, name: str, verdict: Verdict, value: float):
    """Logs of a car, two rows a second: no proof of a dip, a dip that is only just shown, and one that disproves.

    Source: eron93br/carOBD, commit bf09e1c0; the lowest values were read in the files themselves.
    """
    shutil.copy(shared_data / "supply" / name, unended(good) / "recordings" / name)
    judged = judge_folder(good).judged
    (dip,) = (each for each in judged.findings if each.id.startswith("recording.dip."))
    assert (dip.verdict, dip.value) == (verdict, value)
    assert dip.what == f"{name}: lowest voltage of CONTROL_MODULE_VOLTAGE while the starter turns"
    assert "CONTROL_MODULE_VOLTAGE" not in [wire.name for wire in judged.probe.result.wires]
    assert finding(judged, "supply_crank").verdict is Verdict.HOLDS
    assert judged.verdict is verdict


def where_said(judged) -> str:
    """What the finding on the unit's position says it rests on."""
    return finding(judged, "prove_position").because


def test_corners_in_the_folder_name_where_the_unit_reports_itself(good: Path, tmp_path: Path):
    """As `corners.txt`, or as the file that is named; no verdict changes, and nothing of it goes into the journal."""
    before = judge_folder(good)
    (good / "corners.txt").write_text(corners.TEXT, encoding="utf-8")
    after = judge_folder(good)
    assert where_said(after.judged).endswith(corners.SAID)
    assert [each.verdict for each in after.judged.findings] == [each.verdict for each in before.judged.findings]
    assert after.as_json()["journal"] == before.as_json()["journal"]
    empty = tmp_path / "none.corners"
    write_corners(CornerIndex(corners=(), attribution="x", source="y"), empty)
    assert where_said(judge_folder(good, corners=empty).judged).endswith("reported from: no named corner within 300 m")


def test_corners_that_are_none_are_refused(good: Path):
    """A table of that name; the journal stays as it is."""
    (good / "corners.txt").write_text("wire,key,volts\n", encoding="utf-8")
    with pytest.raises(UnreadableError, match="an index of corners"):
        judge_folder(good)
