"""Files that belong to entries, kept by the sha256 of their bytes in `blobs/` of the job folder.

A blob is written under another name and renamed when it is whole and on the disk, so what bears a digest as its name
has had these bytes. Reading checks them again.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable, Collection, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from backprobe.errors import JobError, JournalError
from backprobe.files.journal_file import sync_folder

BLOBS = "blobs"
MOST_BLOB_BYTES = 512_000_000
CHUNK_BYTES = 1_048_576


@dataclass(frozen=True, slots=True)
class Blob:
    """The `sha256` and size of a file's bytes; whether they are `stored`, and whether that was done just now."""

    sha256: str
    size_bytes: int
    stored: bool
    new: bool


def put_file(folder: Path, source: Path, *, without: Collection[str] = (), most_bytes: int = MOST_BLOB_BYTES) -> Blob:
    """Keep the bytes of `source` in `folder`. Memory stays flat.

    Only the digest is taken of what is larger than `most_bytes` or has its digest among `without` (what was erased on
    purpose). Raises JobError where the file cannot be read or written.
    """
    with _plain_words(source), source.open("rb") as file:
        sha256, size_bytes = _digest(iter(lambda: file.read(CHUNK_BYTES), b""))
        if size_bytes > most_bytes or sha256 in without:
            return Blob(sha256, size_bytes, stored=False, new=False)
        if is_kept(folder, sha256):
            return Blob(sha256, size_bytes, stored=True, new=False)
        file.seek(0)
        return _kept(folder, iter(lambda: file.read(CHUNK_BYTES), b""))


def put_bytes(folder: Path, content: bytes, *, without: Collection[str] = ()) -> Blob:
    """Keep `content` in `folder`, unless its digest is among `without`."""
    sha256 = hashlib.sha256(content).hexdigest()
    if sha256 in without or is_kept(folder, sha256):
        return Blob(sha256, len(content), stored=sha256 not in without, new=False)
    with _plain_words(folder):
        return _kept(folder, iter((content,)))


def read_blob(folder: Path, sha256: str) -> bytes:
    """The bytes whose digest is `sha256`; JournalError where they are missing or are not these bytes any more."""
    fault = blob_fault(folder, sha256)
    if fault is not None:
        raise JournalError(fault)
    with _plain_words(folder):
        return _path(folder, sha256).read_bytes()


def blob_faults(folder: Path, digests: Iterable[str]) -> tuple[str, ...]:
    """Which of the blobs are missing or altered, in the order given; every byte is read."""
    return tuple(fault for sha256 in digests if (fault := blob_fault(folder, sha256)) is not None)


def blob_fault(folder: Path, sha256: str) -> str | None:
    """What is wrong with one blob; None where it has the bytes that its name says."""
    path = _path(folder, sha256)
    with _plain_words(path):
        if not path.is_file():
            return f"{BLOBS}/{sha256} is missing"
        with path.open("rb") as file:
            found, _ = _digest(iter(lambda: file.read(CHUNK_BYTES), b""))
    return None if found == sha256 else f"{BLOBS}/{sha256} was altered: its bytes have the digest {found}"


def is_kept(folder: Path, sha256: str) -> bool:
    """Whether there is a blob of this name; its bytes are not looked at."""
    return _path(folder, sha256).is_file()


def _path(folder: Path, sha256: str) -> Path:
    return folder / BLOBS / sha256


def _digest(chunks: Iterator[bytes]) -> tuple[str, int]:
    sha256, size_bytes = hashlib.sha256(), 0
    for chunk in chunks:
        sha256.update(chunk)
        size_bytes += len(chunk)
    return sha256.hexdigest(), size_bytes


def _kept(folder: Path, chunks: Iterator[bytes]) -> Blob:
    """Write the chunks under a passing name, then under the digest of what was written."""
    blobs = folder / BLOBS
    blobs.mkdir(exist_ok=True)
    passing = blobs / f".incoming-{os.getpid()}"
    try:
        with passing.open("wb") as file:
            sha256, size_bytes = _digest(_written(chunks, file.write))
            file.flush()
            os.fsync(file.fileno())
        passing.replace(blobs / sha256)
    finally:
        passing.unlink(missing_ok=True)
    sync_folder(blobs)
    return Blob(sha256, size_bytes, stored=True, new=True)


def _written(chunks: Iterator[bytes], write: Callable[[bytes], int]) -> Iterator[bytes]:
    for chunk in chunks:
        write(chunk)
        yield chunk


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as problem:
        raise JobError(f"{path}: cannot be used; the system says: {problem.strerror or problem}") from None
