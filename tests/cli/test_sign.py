"""`backprobe sign`: what it prints, and what it refuses."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.samples.jobs import DEMO, demo_job
from tests.samples.signing import SEEDS, handed_over, key_folder, unended

from backprobe.cli.main import main
from backprobe.files.journal_file import load_journal

SCHEMA = json.loads((DEMO.parent / "schemas" / "sign.schema.json").read_text(encoding="utf-8"))
Printed = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def keys(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with one key."""
    monkeypatch.setenv("BACKPROBE_KEYS", str(tmp_path / "keys"))
    return key_folder(tmp_path / "keys").path


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The demo job that went well, ending provisionally."""
    return handed_over(tmp_path)


def test_what_was_signed_as_json(capsys: Printed, job: Path):
    """As its schema says; the entry stands in the journal, with the clock's time and an id made of it."""
    before = datetime.now(UTC)
    assert main(["sign", str(job), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    Draft202012Validator(SCHEMA).validate(answer)
    last = load_journal(job).entries[-1]
    assert (answer["id"], answer["at"], answer["entries"]) == (last.id, last.at, len(load_journal(job).entries) - 1)
    assert (answer["end"], answer["verdict"], answer["name"]) == ("provisional", "open", "Ines Okafor")
    at = datetime.fromisoformat(answer["at"])
    assert before - timedelta(seconds=1) <= at <= datetime.now(UTC)
    assert int(last.id.replace("-", "")[:12], 16) // 1000 == int(at.timestamp())


def test_what_was_signed_for_people(capsys: Printed, job: Path):
    """What was signed, what of it does not hold, the key, and what to do next."""
    assert main(["sign", str(job)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("signed off: job LY-2026-07 as provisional, by Ines Okafor, ")
    assert lines[1].startswith(f"  covers {len(load_journal(job).entries) - 1} entries and ")
    assert any(line.strip().startswith("open  How the job ends: provisional: missing: one parked") for line in lines)
    assert lines[-1] == f"next: the record to hand over: backprobe judge {job} --record OUT.pdf"


def test_key_and_name_may_be_given(capsys: Printed, job: Path, keys: Path):
    """With two keys one must be named."""
    key_folder(keys, "tam", SEEDS[1])
    assert main(["sign", str(job)]) == 2
    assert "there are: ines, tam" in capsys.readouterr().err
    assert main(["sign", str(job), "--key", "tam", "--name", "Tam Orrel", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["name"] == "Tam Orrel"


def test_without_a_key_nothing_is_signed(capsys: Printed, job: Path, tmp_path: Path):
    """It says how to make one."""
    assert main(["sign", str(job), "--keys", str(tmp_path / "none")]) == 2
    assert "make one: backprobe keys new NAME" in capsys.readouterr().err
    assert not (job / "journal.jsonl").exists()


def test_what_cannot_be_signed_is_said(capsys: Printed, tmp_path: Path):
    """No end on the sheet, with what to write there; in JSON in the shape of every refusal."""
    job = unended(demo_job(tmp_path / "plain", "truck-07"))
    assert main(["sign", str(job)]) == 2
    assert "[[hand_over.missing]]" in capsys.readouterr().err
    assert main(["sign", str(job), "--json"]) == 2
    answer = json.loads(capsys.readouterr().out)
    assert (answer["ok"], answer["code"]) == (False, "job")


def test_the_example_in_the_refusal_can_be_used(capsys: Printed, tmp_path: Path):
    """What it says to write into job.toml, written there as it stands, can be signed."""
    job = unended(demo_job(tmp_path / "plain", "truck-07"))
    main(["sign", str(job)])
    example = [line for line in capsys.readouterr().err.splitlines() if line.startswith("  ")]
    with (job / "job.toml").open("a", encoding="utf-8") as file:
        file.write("\n" + "\n".join(line.strip() for line in example) + "\n")
    assert main(["sign", str(job)]) == 0
