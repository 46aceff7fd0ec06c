"""`backprobe hand-in`: folders into the store, from the terminal."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from tests.samples.demo_jobs import DEMO

from backprobe.cases.yard import open_yard
from backprobe.cli.main import main
from backprobe.store import jobs, people


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """The demo's folders, without journals."""
    shutil.copytree(DEMO, tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    return tmp_path / "demo"


def test_folders_are_handed_in_to_a_person(demo: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Two folders, twice: the second time nothing is new, and there is still one person of that name."""
    words = ["hand-in", str(demo / "truck-07"), str(demo / "truck-12"), "--data", str(tmp_path / "data")]
    assert main([*words, "--to", "Ines Okafor", "--name", "Linden Yard"]) == 0
    assert "LY-2026-07" in capsys.readouterr().out
    assert main([*words, "--to", "Ines Okafor"]) == 0
    assert capsys.readouterr().out.count("0 new entries, 0 new files") == 2
    yard = open_yard(tmp_path / "data")
    with yard.store.reading() as connection:
        everybody = people.people(connection, yard.organisation)
        given = jobs.of_person(connection, yard.organisation, person_id=everybody[0].id)
    assert [who.name for who in everybody] == ["Ines Okafor"]
    assert {row["id"] for row in given} == {"LY-2026-07", "LY-2026-12"}
    yard.store.close()


def test_a_folder_that_is_none_is_refused_in_plain_words(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """No job.toml: exit 2, and the folder is named."""
    (tmp_path / "empty").mkdir()
    assert main(["hand-in", str(tmp_path / "empty"), "--data", str(tmp_path / "data")]) == 2
    assert "empty" in capsys.readouterr().err
