"""The journal on disk: added to in one piece, torn ends set aside, one process at a time."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from tests.samples.journals import Phone

from backprobe.errors import JobError, JournalError
from backprobe.files import journal_file
from backprobe.files.journal_file import held_journal, load_journal
from backprobe.job.entry import Entry

HOLD = """
import sys, time
from pathlib import Path
from backprobe.files.journal_file import held_journal
with held_journal(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(float(sys.argv[2]))
"""


def entries(count: int) -> list[Entry]:
    phone = Phone()
    return [phone.reads("Red", "on", f"12.{at:02}") for at in range(count)]


THREE = entries(3)
RAW = b"".join(entry.raw + b"\n" for entry in THREE)


@contextmanager
def files_of_at_most(size_bytes: int) -> Iterator[None]:
    """A full disk, as far as this process can tell: no file may grow beyond a size."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size_bytes, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


@contextmanager
def held_by_another(folder: Path, *, seconds: float) -> Iterator[None]:
    """Another process holds the folder."""
    source = str(Path(journal_file.__file__).parents[2])
    command = [sys.executable, "-c", HOLD, str(folder), str(seconds)]
    with subprocess.Popen(command, env={**os.environ, "PYTHONPATH": source}, stdout=subprocess.PIPE) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        yield
        other.kill()


def test_entries_stand_one_a_line(tmp_path: Path):
    """Two writes, one file: the exact bytes, a line end behind each."""
    with held_journal(tmp_path) as held:
        held.append(THREE[:1])
        held.append(THREE[1:])
        assert held.journal.entries == tuple(THREE)
    assert (tmp_path / "journal.jsonl").read_bytes() == RAW
    assert load_journal(tmp_path).entries == tuple(THREE)
    assert load_journal(tmp_path).faults == ()


def test_a_journal_not_yet_begun_is_empty(tmp_path: Path):
    """Neither looking nor holding nor adding nothing makes a file."""
    assert load_journal(tmp_path).entries == ()
    with held_journal(tmp_path) as held:
        held.append(())
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("cut", [len(RAW) - 2, len(RAW) - 40, len(RAW) - len(THREE[2].raw)])
def test_a_torn_last_line_is_set_aside(tmp_path: Path, cut: int):
    """What is left of the third entry is kept in a file of its own; the two before it go on."""
    path = tmp_path / "journal.jsonl"
    path.write_bytes(RAW[:cut])
    whole = len(THREE[0].raw) + len(THREE[1].raw) + 2
    with held_journal(tmp_path) as held:
        (note,) = held.notes
        assert note.startswith("journal.jsonl: the last line was torn, as by a power cut while writing; ")
        assert note.endswith(f"; its {cut - whole} bytes are kept in journal.jsonl.torn-1")
        held.append(THREE[2:])
    assert path.read_bytes() == RAW
    assert (tmp_path / "journal.jsonl.torn-1").read_bytes() == RAW[whole:cut]


def test_no_byte_is_lost_wherever_it_tears(tmp_path: Path):
    """Cut at every place: what is kept and what is set aside are together what was there, line ends apart."""
    path = tmp_path / "journal.jsonl"
    for cut in range(len(RAW)):
        path.write_bytes(RAW[:cut])
        with held_journal(tmp_path) as held:
            assert held.journal.faults == ()
        aside = tmp_path / "journal.jsonl.torn-1"
        torn = aside.read_bytes() if aside.exists() else b""
        assert (path.read_bytes() + torn).rstrip(b"\n") == RAW[:cut].rstrip(b"\n")
        aside.unlink(missing_ok=True)


def test_zeros_behind_the_last_line_are_torn_too(tmp_path: Path):
    """A file system may leave zeros where bytes had not yet arrived."""
    (tmp_path / "journal.jsonl").write_bytes(RAW + bytes(100))
    with held_journal(tmp_path) as held:
        assert held.journal.entries == tuple(THREE)
    assert (tmp_path / "journal.jsonl.torn-1").read_bytes() == bytes(100)


def test_a_second_torn_line_does_not_cover_the_first(tmp_path: Path):
    """Each is kept under a number of its own."""
    for torn in (b'{"at":', b'{"a'):
        with (tmp_path / "journal.jsonl").open("ab") as file:
            file.write(torn)
        with held_journal(tmp_path):
            pass
    assert (tmp_path / "journal.jsonl.torn-1").read_bytes() == b'{"at":'
    assert (tmp_path / "journal.jsonl.torn-2").read_bytes() == b'{"a'


def test_a_whole_last_line_gets_its_line_end(tmp_path: Path):
    """An editor took it away: the entry is kept where it is, and that is said."""
    (tmp_path / "journal.jsonl").write_bytes(RAW[:-1])
    with held_journal(tmp_path) as held:
        assert held.notes == ["journal.jsonl: the last line had lost its line end; it was whole and is kept"]
    assert (tmp_path / "journal.jsonl").read_bytes() == RAW
    assert [path.name for path in tmp_path.iterdir()] == ["journal.jsonl"]


def test_looking_changes_nothing(tmp_path: Path):
    """A torn line shows as a fault and stays where it is."""
    (tmp_path / "journal.jsonl").write_bytes(RAW[:-2])
    journal = load_journal(tmp_path)
    assert [fault.line for fault in journal.faults] == [3]
    assert (tmp_path / "journal.jsonl").read_bytes() == RAW[:-2]


def test_damage_inside_is_no_torn_line(tmp_path: Path):
    """A bad line with others behind it stays and is named."""
    (tmp_path / "journal.jsonl").write_bytes(RAW.replace(b"12.01", b"12.91"))
    with held_journal(tmp_path) as held:
        assert [fault.line for fault in held.journal.faults] == [2]
    assert (tmp_path / "journal.jsonl").read_bytes() == RAW.replace(b"12.01", b"12.91")


def test_on_a_full_disk_the_journal_stays_as_it_was(tmp_path: Path):
    """The disk has room for half an entry: said, and none of it is in the file; with room again it works."""
    with held_journal(tmp_path) as held:
        held.append(THREE[:2])
        before = (tmp_path / "journal.jsonl").read_bytes()
        with files_of_at_most(len(before) + 100), pytest.raises(JobError, match="cannot be used"):
            held.append(THREE[2:])
        assert (tmp_path / "journal.jsonl").read_bytes() == before
        held.append(THREE[2:])
    assert (tmp_path / "journal.jsonl").read_bytes() == RAW


def test_a_file_changed_meanwhile_is_not_written_to(tmp_path: Path):
    """Something that does not ask for the folder added a line: nothing is written behind it."""
    with held_journal(tmp_path) as held:
        held.append(THREE[:1])
        with (tmp_path / "journal.jsonl").open("ab") as file:
            file.write(THREE[1].raw + b"\n")
        with pytest.raises(JournalError, match="changed by something else"):
            held.append(THREE[1:2])
    assert load_journal(tmp_path).entries == tuple(THREE[:2])


def test_another_process_waits_for_its_turn(tmp_path: Path):
    """While another holds the folder for a second, this one waits, and then goes on."""
    with held_by_another(tmp_path, seconds=1):
        start = time.monotonic()
        with held_journal(tmp_path) as held:
            held.append(THREE)
        assert time.monotonic() - start > 0.5
    assert load_journal(tmp_path).entries == tuple(THREE)


def test_a_folder_that_stays_held_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Nobody waits for ever."""
    monkeypatch.setattr(journal_file, "WAIT_S", 0.1)
    with (
        held_by_another(tmp_path, seconds=30),
        pytest.raises(JobError, match="another backprobe"),
        held_journal(tmp_path),
    ):
        pass


def test_a_journal_far_too_large_is_refused(tmp_path: Path):
    """A file of 300 MB is not read into memory."""
    with (tmp_path / "journal.jsonl").open("wb") as file:
        file.truncate(300_000_000)
    with pytest.raises(JournalError, match="at most 200 MB"):
        load_journal(tmp_path)


def test_no_folder_is_said_in_words(tmp_path: Path):
    """The system's complaint does not come through bare."""
    with pytest.raises(JobError, match="cannot be used"), held_journal(tmp_path / "none"):
        pass
    (tmp_path / "journal.jsonl").mkdir()
    with pytest.raises(JobError, match="cannot be used"):
        load_journal(tmp_path)
