"""A job folder: what is in it, and what is no job folder."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from backprobe.errors import JobError
from backprobe.files.folder import open_folder


@pytest.fixture
def place(tmp_path: Path) -> Path:
    (tmp_path / "job.toml").touch()
    return tmp_path


def test_a_folder_with_a_job_sheet_is_enough(place: Path):
    """No readings and no recordings yet: a job just begun."""
    found = open_folder(place)
    assert found.job_sheet == place / "job.toml"
    assert (found.readings, found.recordings, found.photos, found.passed_over) == (None, (), (), ())


def test_recordings_come_by_name(place: Path):
    """Files in name order; hidden files and folders are passed over and named."""
    recordings = place / "recordings"
    (recordings / "old").mkdir(parents=True)
    for name in ("b.csv", "a.csv", ".index"):
        (recordings / name).touch()
    (place / "readings.csv").touch()
    found = open_folder(place)
    assert found.readings == place / "readings.csv"
    assert found.recordings == (recordings / "a.csv", recordings / "b.csv")
    assert found.passed_over == ("recordings/.index", "recordings/old")


def test_a_walkround_is_there_or_not(place: Path):
    """Whoever walked round the vehicle wrote walkround.toml; many jobs are just begun."""
    assert open_folder(place).walkround is None
    (place / "walkround.toml").touch()
    assert open_folder(place).walkround == place / "walkround.toml"


def test_photos_that_a_sheet_names(place: Path):
    """A plain file in photos/ counts; a folder of that name does not, nor does a file beside it, nor any odd name."""
    (place / "photos" / "a.jpg").mkdir(parents=True)
    (place / "photos" / "b.jpg").touch()
    (place / "d.jpg").touch()
    found = open_folder(place)
    assert [found.shows(f"photos/{name}.jpg") for name in "abc"] == [False, True, False]
    assert [found.shows(name) for name in ("d.jpg", "../photos/b.jpg", "x" * 5000, "a\0b")] == [False] * 4


def test_photos_come_by_name(place: Path):
    """As recordings do; whether they are photos is told by their content, later."""
    photos = place / "photos"
    (photos / "thumbs").mkdir(parents=True)
    for name in ("ground.jpg", "after.png", ".index"):
        (photos / name).touch()
    found = open_folder(place)
    assert found.photos == (photos / "after.png", photos / "ground.jpg")
    assert found.passed_over == ("photos/.index", "photos/thumbs")


def test_a_pipe_is_no_recording(place: Path):
    """Reading it would wait for ever."""
    (place / "recordings").mkdir()
    os.mkfifo(place / "recordings" / "pipe")
    assert open_folder(place).passed_over == ("recordings/pipe",)


def test_what_is_no_job_folder(tmp_path: Path, place: Path):
    """No folder, a file, a folder without a job sheet, a file where recordings should be: each said in words."""
    for path in (tmp_path / "none", place / "job.toml"):
        with pytest.raises(JobError, match="there is no folder of this name"):
            open_folder(path)
    for name in ("photos", "recordings"):
        (place / name).touch()
        with pytest.raises(JobError, match=f"a folder of {name} is expected"):
            open_folder(place)
    (place / "job.toml").unlink()
    with pytest.raises(JobError, match=r"there is no job\.toml in it"):
        open_folder(place)


def test_a_name_that_no_file_can_have(place: Path):
    """Names with a NUL, or too long for the system, are refused in words."""
    for path in (Path("a\0b"), place / ("x" * 5000)):
        with pytest.raises(JobError):
            open_folder(path)


def test_the_files_that_the_sheet_names(place: Path):
    """Found beside the sheet or where its path leads; a name with no file is said."""
    (place / "sheets").mkdir()
    (place / "sheets" / "unit.toml").touch()
    found = open_folder(place)
    assert found.named("sheets/unit.toml", "the unit's sheet") == place / "sheets" / "unit.toml"
    for written in ("unit.toml", "sheets", "a\0b"):
        with pytest.raises(JobError):
            found.named(written, "the unit's sheet")


def test_what_the_proof_rests_on(place: Path):
    """Script, reports and lights, each by its own name; None where there is no such file."""
    assert (open_folder(place).script, open_folder(place).reports, open_folder(place).lights) == (None, None, None)
    for name in ("key-script.csv", "reports.csv", "lights.csv"):
        (place / name).touch()
    found = open_folder(place)
    assert [path.name for path in (found.script, found.reports, found.lights) if path] == [
        "key-script.csv",
        "reports.csv",
        "lights.csv",
    ]
