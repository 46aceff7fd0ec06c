"""The journal of a job folder on disk: one entry a line in `journal.jsonl`, only ever added to.

One process at a time holds a folder. Entries are written in one piece and are on the disk before writing is done;
what a power cut left half written is set aside, never thrown away.
"""

from __future__ import annotations

import fcntl
import os
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from backprobe.errors import JobError, JournalError
from backprobe.job.entry import Entry, read_entry
from backprobe.job.journal import Journal, read_journal

JOURNAL = "journal.jsonl"
MOST_JOURNAL_BYTES = 200_000_000
WAIT_S = 10.0  # for another process; an import of a large folder takes a few seconds
LOOK_AGAIN_S = 0.05


@dataclass(slots=True)
class JournalFile:
    """A folder's journal while this process holds the folder; `notes` say what was put right on opening it."""

    path: Path
    journal: Journal
    size_bytes: int
    notes: list[str] = field(default_factory=list)

    def append(self, entries: Sequence[Entry]) -> None:
        """Write `entries` behind the others, in one piece, and wait until they are on the disk.

        Raises JournalError where the file was changed meanwhile, JobError where it cannot be written; then nothing
        of them is in it.
        """
        if not entries:
            return
        lines = b"".join(entry.raw + b"\n" for entry in entries)
        with _plain_words(self.path):
            _add(self.path, lines, expected_bytes=self.size_bytes)
            sync_folder(self.path.parent)
        self.size_bytes += len(lines)
        self.journal = read_journal(entry.raw for entry in (*self.journal.entries, *entries))


def load_journal(folder: Path) -> Journal:
    """The journal of `folder` as it stands, empty where there is none; nothing on the disk is changed.

    A torn last line is one of the journal's faults.
    """
    raw = _bytes_of(folder / JOURNAL)
    return read_journal(raw.removesuffix(b"\n").split(b"\n") if raw else ())


def journal_content(folder: Path) -> bytes:
    """The bytes of the folder's journal as they stand, empty where there is none."""
    return _bytes_of(folder / JOURNAL)


@contextmanager
def held_journal(folder: Path) -> Iterator[JournalFile]:
    """The journal of `folder`, held against other processes until the block ends.

    A torn last line is moved to `journal.jsonl.torn-N`; a whole last line without its end gets it; both are noted.
    Raises JobError where another process does not let go of the folder within 10 s.
    """
    path = folder / JOURNAL
    with _held(folder):
        raw = _bytes_of(path)
        tail = raw[raw.rfind(b"\n") + 1 :]
        notes = [_mended(path, tail, whole_bytes=len(raw) - len(tail))] if tail else []
        yield JournalFile(path, load_journal(folder), len(_bytes_of(path)), notes)


def sync_folder(folder: Path) -> None:
    """Wait until the names in `folder` are on the disk."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _mended(path: Path, tail: bytes, *, whole_bytes: int) -> str:
    """Put right what follows the last line end, and say what was done."""
    with _plain_words(path):
        if _is_entry(tail):
            _add(path, b"\n", expected_bytes=whole_bytes + len(tail))
            return f"{path.name}: the last line had lost its line end; it was whole and is kept"
        aside = _set_aside(path, tail)
        with path.open("r+b") as file:
            file.truncate(whole_bytes)
            os.fsync(file.fileno())
    return (
        f"{path.name}: the last line was torn, as by a power cut while writing; "
        f"its {len(tail)} bytes are kept in {aside.name}"
    )


def _set_aside(path: Path, tail: bytes) -> Path:
    taken = {other.name for other in path.parent.iterdir()}
    number = next(n for n in range(1, len(taken) + 2) if f"{path.name}.torn-{n}" not in taken)
    aside = path.with_name(f"{path.name}.torn-{number}")
    with aside.open("xb") as file:
        file.write(tail)
        file.flush()
        os.fsync(file.fileno())
    sync_folder(path.parent)
    return aside


def _is_entry(line: bytes) -> bool:
    try:
        read_entry(line)
    except JournalError:
        return False
    return True


def _add(path: Path, lines: bytes, *, expected_bytes: int) -> None:
    """Write at the end of the file and wait for the disk; where that fails the file is as it was."""
    with path.open("ab", buffering=0) as file:  # unbuffered: closing must not write what is left of a failed attempt
        if file.tell() != expected_bytes:
            raise JournalError(f"{path.name} was changed by something else meanwhile; nothing was written")
        try:
            left = memoryview(lines)
            while left:
                left = left[file.write(left) :]
            os.fsync(file.fileno())
        except OSError:
            os.ftruncate(file.fileno(), expected_bytes)
            raise


def _bytes_of(path: Path) -> bytes:
    with _plain_words(path):
        if not path.exists():
            return b""
        if path.stat().st_size > MOST_JOURNAL_BYTES:
            raise JournalError(f"{path}: too large for a journal; at most {MOST_JOURNAL_BYTES // 1_000_000} MB")
        return path.read_bytes()


@contextmanager
def _held(folder: Path) -> Iterator[None]:
    """Hold the folder itself, so that no lock file is left behind."""
    with _plain_words(folder):
        handle = os.open(folder, os.O_RDONLY)
    try:
        _wait_for(handle, folder)
        yield
    finally:
        os.close(handle)  # lets go of the folder


def _wait_for(handle: int, folder: Path) -> None:
    give_up = time.monotonic() + WAIT_S
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > give_up:
                raise JobError(f"{folder}: another backprobe has held this folder for {WAIT_S:.0f} s") from None
            time.sleep(LOOK_AGAIN_S)
        else:
            return


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as problem:
        raise JobError(f"{path}: cannot be used; the system says: {problem.strerror or problem}") from None
