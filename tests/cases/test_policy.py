"""A fleet's own policy, in the job folder or named."""

from __future__ import annotations

from pathlib import Path

import pytest

from backprobe.cases.policy import policy_for
from backprobe.errors import JobError, UnreadableError

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
