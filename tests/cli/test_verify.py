"""`backprobe verify`: exit codes, and answers as their schema says."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from tests.samples.jobs import DEMO
from tests.samples.signing import KEY, copied, handed_over, key_folder, sign_job

from backprobe.cases.judge import judge_folder
from backprobe.cases.record import record_of
from backprobe.cli.main import main
from backprobe.files.journal_file import load_journal

SCHEMA = json.loads((DEMO.parent / "schemas" / "verify.schema.json").read_text(encoding="utf-8"))
CALL = "import sys; from backprobe.cli.main import main; sys.exit(main())"
Printed = pytest.CaptureFixture[str]


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a signed job, its record and the key."""
    place = tmp_path_factory.mktemp("signed")
    folder = handed_over(place)
    sign_job(folder, key_folder(place / "keys"))
    (place / "record.pdf").write_bytes(record_of(judge_folder(folder)))
    return place


@pytest.fixture
def job(place: Path, tmp_path: Path) -> Path:
    """A copy of the signed job folder, to be changed."""
    return copied(place / "linden-yard" / "truck-07", tmp_path / "copy")


def answer(printed: Printed, path: Path, keys: Path) -> tuple[int, dict[str, Any]]:
    """Exit code and answer with --json, held to the schema."""
    code = main(["verify", str(path), "--keys", str(keys), "--json"])
    said = json.loads(printed.readouterr().out)
    Draft202012Validator(SCHEMA).validate(said)
    return code, said


def forged(job: Path) -> None:
    """Makes a reading better than it was."""
    journal = job / "journal.jsonl"
    journal.write_bytes(journal.read_bytes().replace(b'"12.58"', b'"12.85"'))


def unsigned(job: Path) -> None:
    """Takes the sign-off away."""
    journal = job / "journal.jsonl"
    journal.write_bytes(b"".join(journal.read_bytes().splitlines(keepends=True)[:-1]))


def longer(job: Path) -> None:
    """Adds a reading, and takes it into the journal."""
    with (job / "readings.csv").open("a", encoding="utf-8") as file:
        file.write("Blue,on,0.02\n")
    judge_folder(job)


def test_record_and_folder_are_intact(capsys: Printed, place: Path):
    """Exit 0; everything that was signed is told."""
    for path, form in ((place / "record.pdf", "record"), (place / "linden-yard" / "truck-07", "folder")):
        code, said = answer(capsys, path, place / "keys")
        assert (code, said["result"], said["form"]) == (0, "intact", form)
        (signed,) = said["sign_offs"]
        assert (signed["known_as"], signed["key"], signed["signature_holds"]) == ("ines", KEY, True)
        assert (signed["engine_is_here"], signed["limits_are_here"]) == (True, True)
        assert (said["first_altered"], said["altered"], said["not_covered"], said["next"]) == (None, [], [], None)
        assert said["findings"]["verdict"] == "open"
        assert said["hand_over"]["end"] == "provisional"


@pytest.mark.parametrize(
    ("change", "result"), [(forged, "altered"), (unsigned, "never signed"), (longer, "not wholly covered")]
)
def test_what_is_not_as_signed_exits_with_1(
    capsys: Printed, place: Path, job: Path, change: Callable[[Path], None], result: str
):
    """Each with its word and something to do."""
    change(job)
    code, said = answer(capsys, job, place / "keys")
    assert (code, said["result"]) == (1, result)
    assert said["next"]


def test_the_first_altered_entry_is_named(capsys: Printed, place: Path, job: Path):
    """By its line and its id, in JSON and in words."""
    entry = next(entry for entry in load_journal(job).entries if entry.body.get("volts") == "12.58")
    forged(job)
    _, said = answer(capsys, job, place / "keys")
    assert said["first_altered"]["id"] == entry.id
    assert said["findings"] is None
    assert main(["verify", str(job), "--keys", str(place / "keys")]) == 1
    assert f"  line {said['first_altered']['line']}, entry {entry.id}: altered" in capsys.readouterr().out


def test_an_unknown_key_and_how_to_make_it_known(capsys: Printed, place: Path, tmp_path: Path):
    """The fingerprint is printed; what is said to be typed makes it known, and then the record is intact."""
    path, keys = str(place / "record.pdf"), str(tmp_path / "mine")
    assert main(["verify", path, "--keys", keys]) == 1
    text = capsys.readouterr().out
    _, said = answer(capsys, place / "record.pdf", tmp_path / "mine")
    fingerprint = said["sign_offs"][0]["fingerprint"]
    assert " ".join(fingerprint[at : at + 4] for at in range(0, 64, 4)) in text
    command = text.rpartition("only if it is the same: backprobe ")[2].split()
    assert command == ["keys", "know", "NAME", KEY]
    assert main([*command[:2], "Ines", KEY, "--keys", keys]) == 0
    assert main(["verify", path, "--keys", keys]) == 0


def test_what_cannot_be_read_exits_with_2(capsys: Printed, place: Path, tmp_path: Path):
    """A torn record, a folder of something else, nothing: refused in the shape of every refusal."""
    content = (place / "record.pdf").read_bytes()
    (tmp_path / "torn.pdf").write_bytes(content[: len(content) // 2])
    for name in ("torn.pdf", "", "none.pdf"):
        assert main(["verify", str(tmp_path / name), "--keys", str(place / "keys"), "--json"]) == 2
        said = json.loads(capsys.readouterr().out)
        assert (said["ok"], said["code"]) == (False, "unreadable")


def test_keys_come_from_the_environment(place: Path):
    """BACKPROBE_KEYS; without it the user's own folder, where this key is not known."""
    path = f"{place / 'record.pdf'}"
    source = str(DEMO.parent / "src")
    for keys, code in ((str(place / "keys"), 0), ("", 1)):
        environment = {**os.environ, "PYTHONPATH": source, "BACKPROBE_KEYS": keys, "XDG_CONFIG_HOME": str(place)}
        command = [sys.executable, "-c", CALL, "verify", path]
        done = subprocess.run(command, env=environment, capture_output=True, check=False)
        assert done.returncode == code, done.stdout
