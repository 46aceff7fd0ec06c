"""The sign-offs of a job folder: which one stands, by whom, and whether the job is still judged so."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from tests.samples.signing import SEEDS, handed_over, key_folder, sign_job

from backprobe.cases.import_folder import import_folder
from backprobe.cases.judge import judge_folder
from backprobe.cases.signed_job import (
    NAME_UNKNOWN,
    blob_bytes,
    judged_otherwise,
    read_json,
    sign_offs_of,
    signer_name,
    standing,
)
from backprobe.findings import Verdict
from backprobe.job.kinds import text
from backprobe.keys.folder import KeyFolder


@pytest.fixture
def keys(tmp_path: Path) -> KeyFolder:
    """A folder with one key."""
    return key_folder(tmp_path / "keys")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The demo job that went well, ending provisionally."""
    return handed_over(tmp_path)


def test_the_last_that_covers_all_stands(job: Path, keys: KeyFolder, tmp_path: Path):
    """None before anybody signed; then that one; of two people's the later; none when something came after."""
    assert standing(import_folder(job)) is None
    first = sign_job(job, keys).entry
    found = standing(import_folder(job))
    assert found is not None
    assert found.entry == first
    second = sign_job(job, key_folder(tmp_path / "other", "tam", SEEDS[1]), number=2).entry
    both = import_folder(job)
    assert [one.sign_off.entry for one in sign_offs_of(both)] == [first, second]
    found = standing(both)
    assert found is not None
    assert found.entry == second
    with (job / "readings.csv").open("a", encoding="utf-8") as file:
        file.write("Blue,on,0.02\n")
    assert standing(import_folder(job)) is None


def test_the_name_is_that_of_the_person_who_signed(job: Path, keys: KeyFolder):
    """From the blob; where that was erased, or nobody is named, no name is made up."""
    sign_job(job, keys)
    imported = import_folder(job)
    found = standing(imported)
    assert found is not None
    assert signer_name(imported, found) == "Ines Okafor"
    person = next(entry for entry in imported.journal.entries if entry.id == found.entry.by)
    (job / "blobs" / (text(person.body, "sha256") or "")).unlink()
    assert signer_name(imported, found) == NAME_UNKNOWN
    nobody = replace(found, entry=replace(found.entry, by=None))
    assert signer_name(imported, nobody) == NAME_UNKNOWN


def test_blobs_are_read_only_whole(job: Path):
    """Missing, altered, no JSON, no table: nothing."""
    imported = import_folder(job)
    (sheet,) = (text(one.body, "sha256") or "" for one in imported.state.of_kind("job"))
    assert blob_bytes(imported, sheet) == (job / "job.toml").read_bytes()
    assert read_json(imported, sheet) is None
    assert blob_bytes(imported, "0" * 64) is None
    assert read_json(imported, "0" * 64) is None
    (job / "blobs" / sheet).write_bytes(b"{}")
    assert blob_bytes(imported, sheet) is None


def test_what_is_judged_otherwise_is_said(job: Path, keys: KeyFolder):
    """The same findings: nothing. One that an engine judges otherwise now: named, with the version that signed."""
    sign_job(job, keys)
    done = judge_folder(job)
    assert judged_otherwise(done.imported, done.judged.findings) == ()
    assert done.notes == ()
    changed = tuple(replace(one, verdict=Verdict.THIN) if one.id == "vin_form" else one for one in done.judged.findings)
    (note,) = judged_otherwise(done.imported, changed)
    assert note.startswith("backprobe 0.1.0 judged otherwise when this was signed, from the same evidence: form of the")


def test_nothing_signed_is_judged_nowise(job: Path):
    """No sign-off, no note."""
    done = judge_folder(job)
    assert judged_otherwise(done.imported, ()) == ()


def test_signed_findings_that_are_not_at_hand_say_nothing(job: Path, keys: KeyFolder):
    """The blob is gone: no note on it here; that it is missing is said by others."""
    entry = sign_job(job, keys).entry
    (job / "blobs" / entry.blobs[0]).unlink()
    done = judge_folder(job)
    assert judged_otherwise(done.imported, ()) == ()
    assert any(entry.blobs[0] in note and "is missing" in note for note in done.notes)
    assert json.loads((job / "blobs" / entry.blobs[1]).read_bytes())["end"] == "provisional"
