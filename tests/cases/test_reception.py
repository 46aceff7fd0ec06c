"""A receiver's log from its file."""

import hashlib
import io
import json
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from jsonschema import Draft202012Validator
from pypdf import PdfReader
from tests.samples.jobs import demo_job
from tests.samples.receiver_world import World, log_lines

from backprobe.cases.judge import judge_folder
from backprobe.cases.reception import judged_file, picture_of, reception_file
from backprobe.cases.record import record_of
from backprobe.errors import UnreadableError
from backprobe.findings import Stage, Verdict
from backprobe.job.heard_picture import heard_picture
from backprobe.job.journal_door import judge_journal_text

SCHEMAS = Path(__file__).resolve().parents[2] / "schemas"


def test_a_log_is_judged_and_drawn(tmp_path: Path) -> None:
    """A blocked world: the side is found, named by the cab, and drawn with the same words."""
    path = tmp_path / "reception.nmea"
    world = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22))
    path.write_text("\r\n".join(log_lines(world)), encoding="ascii")
    answer = judged_file(path, heading_deg=0.0)
    assert answer.findings[0].id == "reception_blocked"
    assert answer.findings[0].verdict in (Verdict.THIN, Verdict.FAILS)
    assert "rear" in answer.findings[0].because
    picture = picture_of(answer)
    words = [node.text or "" for node in ElementTree.fromstring(picture).iter("{http://www.w3.org/2000/svg}text")]
    assert any(text.startswith("blocked: ") and "rear" in text for text in words)
    assert reception_file(path).file == "reception.nmea"


def test_a_photo_is_refused(tmp_path: Path) -> None:
    """A JPEG that is called .nmea."""
    path = tmp_path / "photo.nmea"
    path.write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99))
    with pytest.raises(UnreadableError, match="JPEG"):
        judged_file(path)


def test_a_job_folder_with_logs(tmp_path: Path) -> None:
    """reception.nmea and those in nmea/: findings of the mount, blobs by digest, no position in the journal."""
    folder = demo_job(tmp_path, "truck-12")
    (folder / "nmea").mkdir()
    for name, seed in (("reception.nmea", 3), ("nmea/turned.nmea", 4)):
        lines = log_lines(World(seed=seed, satellites=24, systems=("GP", "GL"), minutes=5))
        (folder / name).write_text("\n".join(lines), encoding="ascii")
    judged = judge_folder(folder)
    logs = judged.judged.evidence.receptions
    assert [log.file for log in logs] == ["nmea/turned.nmea", "reception.nmea"]
    found = [each for each in judged.judged.findings if each.id.startswith("reception_")]
    assert {each.stage for each in found} == {Stage.MOUNT}
    assert {each.what.rpartition(", ")[2] for each in found} == {"nmea/turned.nmea", "reception.nmea"}
    digest = hashlib.sha256((folder / "reception.nmea").read_bytes()).hexdigest()
    assert (folder / "blobs" / digest).is_file()
    journal = (folder / "journal.jsonl").read_text(encoding="utf-8")
    assert digest in journal
    assert ",48" not in journal


def test_a_log_is_listened_to_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second judgement takes the figures from the journal, says the same, and adds nothing."""
    folder = demo_job(tmp_path, "truck-12")
    (folder / "reception.nmea").write_text("\n".join(log_lines(World(seed=3, minutes=5))), encoding="ascii")
    first = judge_folder(folder)
    monkeypatch.setattr("backprobe.cases.import_folder.reception_of", None)
    second = judge_folder(folder)
    assert second.judged.findings == first.judged.findings
    assert second.imported.added == {}


def test_a_photo_among_the_logs_stops_the_job(tmp_path: Path) -> None:
    """Bad input: nothing is written into the journal."""
    folder = demo_job(tmp_path, "truck-12")
    (folder / "reception.nmea").write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99))
    with pytest.raises(UnreadableError, match="JPEG"):
        judge_folder(folder)
    assert not (folder / "journal.jsonl").exists() or (folder / "journal.jsonl").read_bytes() == b""


def test_the_phone_says_what_the_desk_says(tmp_path: Path) -> None:
    """The journal's entries alone, without the log's file, give the same findings."""
    folder = demo_job(tmp_path, "truck-12")
    (folder / "reception.nmea").write_text("\n".join(log_lines(World(seed=3, minutes=5))), encoding="ascii")
    desk = [each for each in judge_folder(folder).as_json()["findings"] if each["id"].startswith("reception_")]  # type: ignore[attr-defined]
    entries = (folder / "journal.jsonl").read_text(encoding="utf-8").splitlines()
    blobs = {path.name: path.read_text(encoding="utf-8", errors="replace") for path in (folder / "blobs").iterdir()}
    digest = hashlib.sha256((folder / "reception.nmea").read_bytes()).hexdigest()
    blobs.pop(digest)
    phone = json.loads(judge_journal_text(json.dumps({"entries": entries, "blobs": blobs})))
    assert phone["ok"], phone
    assert [each for each in phone["findings"] if each["id"].startswith("reception_")] == desk


def test_the_record_shows_the_sky(tmp_path: Path) -> None:
    """The same string as on the desk, with what it says in words; the record keeps to four pages."""
    folder = demo_job(tmp_path, "truck-07")
    (folder / "mount.toml").unlink(missing_ok=True)  # a prediction would stand beside it
    world = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22), step_s=10)
    (folder / "reception.nmea").write_text("\n".join(log_lines(world)), encoding="ascii")
    job = judge_folder(folder)
    shown = heard_picture(job.judged.evidence.receptions)
    assert shown is not None
    record = PdfReader(io.BytesIO(record_of(job)))
    text = " ".join(page.extract_text() for page in record.pages)
    assert "What the receiver heard" in text
    assert "Blocked part of the sky" in text.replace("\n", " ")
    assert 2 <= len(record.pages) <= 4


def test_the_mount_sheets_heading_names_the_side(tmp_path: Path) -> None:
    """Blocked from 90° to 210°: with the front to 60°, as mount.toml has it, that is the right."""
    folder = demo_job(tmp_path, "truck-07")
    world = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22), step_s=10)
    (folder / "reception.nmea").write_text("\n".join(log_lines(world)), encoding="ascii")
    sheet = folder / "mount.toml"
    text = re.sub(r"(?m)^heading = .*$", "heading = 60", sheet.read_text(encoding="utf-8"))
    sheet.write_text(text, encoding="utf-8")
    found = [each for each in judge_folder(folder).judged.findings if each.id == "reception_blocked"]
    assert [each.what for each in found] == ["Blocked part of the sky: right, reception.nmea"]


def test_the_judgement_is_as_its_schema_says(tmp_path: Path) -> None:
    """With a log that was kept well, one that is blocked, and one without a position: every finding fits."""
    folder = demo_job(tmp_path, "truck-07")
    (folder / "nmea").mkdir()
    worlds = {
        "good.nmea": World(seed=7, satellites=24, systems=("GP", "GL", "GA"), shift_dB=6.0, step_s=10),
        "blocked.nmea": World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22)),
    }
    for name, world in worlds.items():
        (folder / "nmea" / name).write_text("\n".join(log_lines(world)), encoding="ascii")
    void = "$GPGGA,,,,,,0,,,,M,,M,,*66\n$GPRMC,,V,,,,,,,,,,N*53\n"
    (folder / "nmea" / "void.nmea").write_text(void * 50, encoding="ascii")
    schema = json.loads((SCHEMAS / "judge.schema.json").read_text(encoding="utf-8"))
    answer = {**judge_folder(folder).as_json(), "record": None}
    Draft202012Validator(schema).validate(answer)
    assert "nmea/blocked.nmea" in json.dumps(answer)
    entries = Draft202012Validator(json.loads((SCHEMAS / "entry.schema.json").read_text(encoding="utf-8")))
    for line in (folder / "journal.jsonl").read_text(encoding="utf-8").splitlines():
        entries.validate(json.loads(line))
