"""Files kept by their digest."""

from __future__ import annotations

import hashlib
import tracemalloc
from pathlib import Path

import pytest

from backprobe.errors import JobError, JournalError
from backprobe.files import blobs
from backprobe.files.blobs import Blob, blob_faults, is_kept, put_bytes, put_file, read_blob

CONTENT = b"time_s,Red\n0,12.30\n"
SHA = hashlib.sha256(CONTENT).hexdigest()


@pytest.fixture
def recording(tmp_path: Path) -> Path:
    path = tmp_path / "crank.csv"
    path.write_bytes(CONTENT)
    return path


def test_a_file_is_kept_under_its_digest(tmp_path: Path, recording: Path):
    """Its bytes, its size, its digest; nothing else is left in the folder."""
    assert put_file(tmp_path, recording) == Blob(SHA, len(CONTENT), stored=True, new=True)
    assert read_blob(tmp_path, SHA) == CONTENT
    assert [path.name for path in (tmp_path / "blobs").iterdir()] == [SHA]


def test_kept_once(tmp_path: Path, recording: Path):
    """The same bytes again are there already, whether from a file or from memory."""
    put_file(tmp_path, recording)
    before = (tmp_path / "blobs" / SHA).stat()
    assert put_file(tmp_path, recording) == put_bytes(tmp_path, CONTENT) == Blob(SHA, 19, stored=True, new=False)
    assert (tmp_path / "blobs" / SHA).stat().st_mtime_ns == before.st_mtime_ns


def test_bytes_are_kept(tmp_path: Path):
    """Bytes from memory, the empty ones too."""
    assert put_bytes(tmp_path, CONTENT).new
    empty = put_bytes(tmp_path, b"")
    assert (empty.size_bytes, read_blob(tmp_path, empty.sha256)) == (0, b"")


def test_too_large_a_file_is_known_by_digest_only(tmp_path: Path, recording: Path):
    """19 bytes with 18 allowed: the digest is right, nothing is kept; 19 allowed: kept."""
    assert put_file(tmp_path, recording, most_bytes=18) == Blob(SHA, 19, stored=False, new=False)
    assert not is_kept(tmp_path, SHA)
    assert put_file(tmp_path, recording, most_bytes=19).stored


def test_what_was_erased_is_not_kept_again(tmp_path: Path, recording: Path):
    """Neither from the file nor from memory."""
    assert not put_file(tmp_path, recording, without={SHA}).stored
    assert not put_bytes(tmp_path, CONTENT, without={SHA}).stored
    assert not is_kept(tmp_path, SHA)


def test_missing_and_altered_blobs_are_named(tmp_path: Path):
    """One is right, one gone, one changed in a single byte."""
    right, gone, changed = (put_bytes(tmp_path, CONTENT + name).sha256 for name in (b"1", b"2", b"3"))
    (tmp_path / "blobs" / gone).unlink()
    (tmp_path / "blobs" / changed).write_bytes(CONTENT + b"4")
    other = hashlib.sha256(CONTENT + b"4").hexdigest()
    assert blob_faults(tmp_path, [right, gone, changed]) == (
        f"blobs/{gone} is missing",
        f"blobs/{changed} was altered: its bytes have the digest {other}",
    )
    for sha256 in (gone, changed):
        with pytest.raises(JournalError, match=sha256):
            read_blob(tmp_path, sha256)


def test_every_altered_byte_shows(tmp_path: Path):
    """Any byte of a blob changed in one bit is found."""
    put_bytes(tmp_path, CONTENT)
    for at in range(len(CONTENT)):
        (tmp_path / "blobs" / SHA).write_bytes(CONTENT[:at] + bytes([CONTENT[at] ^ 1]) + CONTENT[at + 1 :])
        assert len(blob_faults(tmp_path, [SHA])) == 1


def test_a_power_cut_leaves_no_blob_of_that_name(tmp_path: Path, recording: Path, monkeypatch: pytest.MonkeyPatch):
    """Until its bytes are on the disk nothing bears the digest as its name, and no scraps stay behind."""

    def lost(_: int) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(blobs.os, "fsync", lost)
    with pytest.raises(JobError, match="Input/output error"):
        put_file(tmp_path, recording)
    assert list((tmp_path / "blobs").iterdir()) == []


def test_memory_stays_flat(tmp_path: Path):
    """A file of 40 MB is kept with at most 4 MB in memory: chunks of 1 MiB, a few at a time."""
    path = tmp_path / "long.csv"
    with path.open("wb") as file:
        file.truncate(40_000_000)
    tracemalloc.start()
    put_file(tmp_path, path)
    _, peak_bytes = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak_bytes < 4_000_000


def test_a_file_that_is_not_there(tmp_path: Path):
    """Said in words."""
    with pytest.raises(JobError, match="cannot be used"):
        put_file(tmp_path, tmp_path / "none.csv")
