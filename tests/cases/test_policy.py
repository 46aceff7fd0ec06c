"""A fleet's own policy, in the job folder or named."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pypdf
import pytest
from tests.samples.jobs import demo_job

from backprobe.cases.judge import judge_folder
from backprobe.cases.policy import policy_for
from backprobe.cases.record import record_of
from backprobe.errors import JobError, UnreadableError
from backprobe.files.journal_file import load_journal
from backprobe.job.journal_door import judge_journal_text

TIGHT = "[join]\nground_drop_mV = 50\n"


def test_a_job_has_no_policy_unless_it_is_given_one(tmp_path: Path):
    """None in the folder and none named."""
    assert policy_for(tmp_path, None) is None


def test_the_policy_in_the_folder_counts_without_being_named(tmp_path: Path):
    """50 mV in policy.toml; naming that same file changes nothing."""
    own = tmp_path / "policy.toml"
    own.write_text(TIGHT, encoding="utf-8")
    found = policy_for(tmp_path, None)
    assert found is not None
    assert (found.file, found.ground_drop_mV) == ("policy.toml", 50.0)
    assert policy_for(tmp_path, own) == found


def test_two_policies_are_refused(tmp_path: Path):
    """The named one might be the looser: nobody would see it."""
    (tmp_path / "policy.toml").write_text(TIGHT, encoding="utf-8")
    other = tmp_path / "fleet.toml"
    other.write_text("[join]\nground_drop_mV = 90\n", encoding="utf-8")
    with pytest.raises(JobError, match="must not loosen"):
        policy_for(tmp_path, other)


def test_a_policy_that_loosens_is_refused_in_the_folder_too(tmp_path: Path):
    """With file and line."""
    (tmp_path / "policy.toml").write_text("[join]\nground_drop_mV = 500\n", encoding="utf-8")
    with pytest.raises(UnreadableError, match=r"policy\.toml, line 2"):
        policy_for(tmp_path, None)


def test_the_policy_goes_with_the_journal(tmp_path: Path):
    """What a phone or the desk judges by the journal alone is as strict as the folder: 15 mV where 18 were read."""
    job = demo_job(tmp_path, "truck-07")
    (job / "policy.toml").write_text("[join]\nground_drop_mV = 15\n", encoding="utf-8")
    there = judge_folder(job)
    journal = load_journal(job)
    texts = {
        file.name: file.read_text(encoding="utf-8")
        for file in (job / "blobs").iterdir()
        if b"\0" not in file.read_bytes()
    }
    asked = json.dumps({"entries": [entry.raw.decode() for entry in journal.entries], "blobs": texts})
    said = json.loads(judge_journal_text(asked))
    ground = next(each for each in said["findings"] if each["id"] == "join_ground_drop")
    assert (said["policy"], ground["verdict"], ground["limit"]["value"]) == ("policy.toml", "fails", 15.0)
    assert there.judged.evidence.policy is not None
    assert there.notes == ("policy.toml: the fleet's own limits count where they are tighter",)
    printed = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(record_of(there))).pages)
    assert "the fleet's own limits count where they are tighter" in " ".join(printed.split())
    assert [entry.body["file"] for entry in journal.entries if entry.kind == "policy"] == ["policy.toml"]
