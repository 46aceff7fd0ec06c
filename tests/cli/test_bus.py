"""`backprobe bus` as a user meets it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.bus_heard import VIN, with_vin

from backprobe.cli.main import main


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """A whole key cycle as aligned text."""
    path = tmp_path / "truck.log"
    path.write_text("\n".join(aligned(with_vin(key_cycle()))) + "\n", encoding="utf-8")
    return path


def test_the_answer_as_json(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Thin: exit 1, and the fields that were promised."""
    assert main(["bus", str(log), "--json"]) == 1
    answer = json.loads(capsys.readouterr().out)
    assert (answer["ok"], answer["format"], answer["vin"]) == (True, "candump", {"value": VIN, "valid": True})


def test_the_answer_for_people_has_the_caution(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Wherever a bus appears."""
    main(["bus", str(log)])
    assert "never tap bus wires with the unit's power leads" in capsys.readouterr().out


def test_the_script_and_the_picture_are_written(log: Path, tmp_path: Path) -> None:
    """Both beside the answer."""
    script, picture = tmp_path / "script.csv", tmp_path / "cycle.svg"
    code = main(
        [*("bus", str(log), "--script-out", str(script), "--start", "2026-03-31T08:00:00Z"), "--picture", str(picture)]
    )
    assert code == 1
    assert script.read_text().splitlines()[:2] == ["t,key", "2026-03-31T08:00:05.000Z,on"]
    assert picture.read_text().startswith("<svg")


@pytest.mark.parametrize(
    ("options", "word"),
    [
        (["--start", "2026-03-31T08:00:00Z"], "--start belongs to --script-out"),
        (["--script-out", "s.csv"], "does not say what time it was"),
        (["--script-out", "s.csv", "--start", "noon"], "--start noon"),
        (["--picture", "nowhere/at/all.svg"], "cannot be written"),
        (["--vin"], "--vin"),
    ],
)
def test_what_cannot_be_done_is_said(
    options: list[str], word: str, log: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Exit 2, in the technician's words."""
    monkeypatch.chdir(log.parent)
    assert main(["bus", str(log), *options]) == 2
    assert word in capsys.readouterr().err


def test_a_photo_named_log_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is told from its first bytes."""
    path = tmp_path / "bus.log"
    path.write_bytes(b"\xff\xd8\xff\xe0" + bytes(300))
    assert main(["bus", str(path), "--json"]) == 2
    answer = json.loads(capsys.readouterr().out)
    assert (answer["ok"], answer["code"]) == (False, "unreadable")
    assert "a photo (JPEG)" in answer["error"]
