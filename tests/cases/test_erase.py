"""A person's data can go: the file is deleted, the journal stays sound, and the file is not taken again."""

from __future__ import annotations

import hashlib

import pytest
from tests.cases.test_hand_in_file import code_of, hand_in
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases import hand_in_file as files
from backprobe.cases.erase import Erasing, erase, tidy
from backprobe.cases.may import Caller, Role
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.journal import read_journal
from backprobe.store import entries

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)
NAME = b'{"job":"job-7","name":"Ines Okafor"}'
SHA256 = hashlib.sha256(NAME).hexdigest()


@pytest.fixture
def named(sqlite_yard: Yard, ines: Caller) -> Yard:
    """A job whose journal names a person, and the file with the name."""
    person = Phone().say("person", {"sha256": SHA256}, blobs=(SHA256,))
    take_batch(sqlite_yard, [person.raw.decode()], caller=ines, at=AT)
    hand_in(sqlite_yard, ines, NAME, SHA256)
    return sqlite_yard


def test_the_name_is_gone_and_the_journal_is_sound(named: Yard, ines: Caller) -> None:
    """The entry stays; nothing in the data folder holds the name; the phone cannot hand it in again."""
    path = named.blobs.path(SHA256)
    assert path is not None
    assert erase(named, LEAD, wanted=Erasing(JOB, (SHA256, SHA256), "asked to\0")) == 1
    assert not path.exists()
    with named.store.reading() as connection:
        raws = entries.of_job(connection, ORGANISATION, job_id=JOB)
    assert read_journal(raws).faults == ()
    state = fold(read_entry(raw) for raw in raws)
    assert state.erased == {SHA256}
    assert len(state.of_kind("person")) == 1
    assert code_of(files.begin_file, named, ines, sha256=SHA256, offset=None, total_bytes=9) == "erased"
    assert code_of(files.readable_file, named, LEAD, sha256=SHA256) == "not_found"
    assert files.kept_file(named, LEAD, sha256=SHA256) is None


def test_a_server_killed_before_the_file_was_deleted_does_it_when_it_starts(named: Yard) -> None:
    """The file put back, as if it had not been reached; small pictures too."""
    erase(named, LEAD, wanted=Erasing(JOB, (SHA256,), "asked to"))
    named.blobs.append("again", SHA256, offset=0, piece=NAME)
    named.blobs.finish("again", SHA256)
    (named.made / f"{SHA256}.jpg").write_bytes(b"small")
    tidy(named)
    assert named.blobs.path(SHA256) is None
    assert not (named.made / f"{SHA256}.jpg").exists()


def test_only_a_job_s_own_files_go_and_only_by_the_lead(named: Yard, ines: Caller) -> None:
    """Not another's, not one that two jobs rest on, not by a phone; then nothing is deleted."""
    other = "ab" * 32
    said = [
        Phone(ids=50, job=name).say("recording", {"file": "a", "sha256": other, "bytes": 1}, blobs=(other,))
        for name in ("x", JOB)
    ]
    said[1] = Phone("phone-a2", ids=90).say("recording", {"file": "a", "sha256": other, "bytes": 1}, blobs=(other,))
    take_batch(named, [entry.raw.decode() for entry in said], caller=ines, at=AT)
    cases = [
        (ines, Erasing(JOB, (SHA256,), "x"), "not_allowed"),
        (LEAD, Erasing("none", (SHA256,), "x"), "not_found"),
        (LEAD, Erasing("x", (SHA256,), "x"), "not_found"),
        (LEAD, Erasing(JOB, (SHA256, other), "x"), "not_allowed"),
    ]
    for caller, wanted, code in cases:
        with pytest.raises(RefusedError) as refusal:
            erase(named, caller, wanted=wanted)
        assert refusal.value.code == code
    assert named.blobs.path(SHA256) is not None
