"""A job sheet judged on its wiring alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.jobs import demo_job

from backprobe.cases.join import join_file
from backprobe.errors import BackprobeError, JobError

HEAD = '[vehicle]\nsystem_V = 12\n[unit]\nsheet = "unit.toml"\n'
UNIT = """name = "Lantern 2"
[supply]
least_V = 8
most_V = 32
peak_A = 1.2
[[lead]]
name = "power"
purpose = "supply"
mm2 = 0.75
[[lead]]
name = "ground"
purpose = "ground"
"""


def folder(path: Path, joints: str) -> Path:
    """A job folder with these joints."""
    (path / "job.toml").write_text(HEAD + joints, encoding="utf-8")
    (path / "unit.toml").write_text(UNIT, encoding="utf-8")
    return path / "job.toml"


JOINT = '[[joint]]\nlead = "power"\nwire = "Red"\nfuse_A = 3\nlength_m = 2\n'


def test_a_sheet_alone_is_enough_and_nothing_is_written(tmp_path: Path):
    """No readings, no recording: findings all the same, and the folder stays as it was."""
    sheet = folder(tmp_path, JOINT)
    answer = join_file(sheet)
    assert {each.id for each in answer.findings} >= {"join_supply_fuse_clears", "join_wire_told"}
    assert sorted(path.name for path in tmp_path.iterdir()) == ["job.toml", "unit.toml"]
    assert join_file(tmp_path) == answer


def test_a_job_without_joints_is_refused_in_plain_words(tmp_path: Path):
    """It says what to write."""
    with pytest.raises(JobError, match=r"names no joint yet: write one \[\[joint\]\]"):
        join_file(folder(tmp_path, ""))


@pytest.mark.parametrize("name", ["other.toml", "nothing/job.toml"])
def test_another_file_is_refused(tmp_path: Path, name: str):
    """What is no job sheet, and what is not there."""
    with pytest.raises(BackprobeError):
        join_file(tmp_path / name)


def test_a_level_that_the_system_has_not_is_refused(tmp_path: Path):
    """24 V has no level IV."""
    sheet = folder(tmp_path, JOINT + '[join]\ncrank_level = "IV"\n')
    sheet.write_text(sheet.read_text(encoding="utf-8").replace("= 12", "= 24"), encoding="utf-8")
    with pytest.raises(BackprobeError, match="no level IV at 24 V: I, II, III"):
        join_file(sheet)


def test_the_days_parked_are_asked_for_alone(tmp_path: Path):
    """Truck 7 has its battery written down: that is another question."""
    job = demo_job(tmp_path, "truck-07")
    ids = {each.id for each in join_file(job).findings}
    assert not any(name.startswith("parked_") for name in ids)
    assert ids >= {"join_path_budget", "join_ground_drop", "join_door_unused", "mount_place", "mount_route"}
