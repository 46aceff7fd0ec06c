"""Paths opened as text, in plain words where that does not work."""

from __future__ import annotations

import os
import tracemalloc
from pathlib import Path

import pytest

from backprobe.errors import UnreadableError
from backprobe.files.open import MOST_LINE, small_text, text_lines


def written(tmp_path: Path, raw: bytes) -> Path:
    path = tmp_path / "f.csv"
    path.write_bytes(raw)
    return path


@pytest.mark.parametrize(
    "raw",
    [
        b"a,b\n1,2\n",
        b"a,b\r\n1,2\r\n",
        b"a,b\r1,2\r",
        b"a,b\n1,2",
        b"\xef\xbb\xbfa,b\n1,2\n",
        "a,b\r\n1,2\r\n".encode("utf-16"),
        "a,b\r\n1,2\r\n".encode("utf-16-le"),
    ],
)
def test_line_ends_and_encodings(tmp_path, raw):
    """Unix, Windows and old Mac line ends, marks and wide encodings give the same two lines."""
    path = written(tmp_path, raw)
    assert list(text_lines(path)()) == ["a,b", "1,2"]
    assert small_text(path).split("\n")[:2] == ["a,b", "1,2"]


def test_opens_again_and_again(tmp_path):
    """Each call starts from the top, also while another is half way."""
    lines = text_lines(written(tmp_path, b"a\nb\nc\n"))
    first = lines()
    assert next(first) == "a"
    assert list(lines()) == ["a", "b", "c"]
    assert list(first) == ["b", "c"]


def test_a_windows_line_end_across_two_chunks(tmp_path):
    """A line end cut in two by the reading in pieces stays one line end."""
    line = "x" * (MOST_LINE // 2 - 1)  # two lines with \\n fill a chunk exactly; with \\r\\n they run over it
    path = written(tmp_path, f"{line}\r\n{line}\r\n{line}\r\nend\r\n".encode())
    assert list(text_lines(path)()) == [line, line, line, "end"]


@pytest.mark.parametrize("opened", [text_lines, small_text])
def test_plain_words(tmp_path, opened):
    """A missing file, a folder, an empty file, a photo and a pipe are refused in the technician's words."""
    (tmp_path / "empty.csv").touch()
    (tmp_path / "photo.csv").write_bytes(b"\xff\xd8\xff\xe0" + bytes(500))
    os.mkfifo(tmp_path / "pipe")
    for path, says in [
        (tmp_path / "none.csv", "there is none of this name"),
        (tmp_path, "this is a folder"),
        (tmp_path / "empty.csv", "this one is empty"),
        (tmp_path / "photo.csv", "a photo"),
        (tmp_path / "pipe", "a pipe or a device"),
        (tmp_path / ("n" * 300), "can be read"),
        (Path("nul\0.csv"), "can be read"),
    ]:
        with pytest.raises(UnreadableError, match=says) as refusal:
            opened(path)
        assert refusal.value.place.file == path.name


def test_no_permission(tmp_path, monkeypatch):
    """A file that may not be read is refused as such (made up here: an administrator never meets it)."""
    path = written(tmp_path, b"a,b\n")

    def refuse(*_: object, **__: object):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(UnreadableError, match="does not allow it"):
        text_lines(path)


def test_a_file_that_goes_away_meanwhile(tmp_path):
    """Opened once, removed, opened again: the project's own error."""
    path = written(tmp_path, b"a,b\n")
    lines = text_lines(path)
    path.unlink()
    with pytest.raises(UnreadableError, match="there is none"):
        list(lines())


GOOD_ROWS = b"0.001,12.6\n" * 1000


def test_two_gigabytes_in_one_line(tmp_path):
    """Behind good rows an endless line: refused with its place and little memory, whatever the size."""
    path = written(tmp_path, GOOD_ROWS + b"x" * 200_000)
    os.truncate(path, 2_000_000_000)
    tracemalloc.start()
    with pytest.raises(UnreadableError, match=r"line 1001\D") as refusal:
        list(text_lines(path)())
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert refusal.value.expected == "lines of at most 64 KiB"
    assert peak < 4_000_000


def test_a_tail_of_zeros(tmp_path):
    """A recorder that lost its supply leaves zeros behind good rows: the rows are read, the zeros are one torn line."""
    path = written(tmp_path, GOOD_ROWS + b"0.002,1")
    os.truncate(path, 30_000_000)
    tracemalloc.start()
    lines = list(text_lines(path)())
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert lines[-2:] == ["0.001,12.6", "0.002,1\0"]
    assert len(lines) == 1001
    assert peak < 4_000_000


def test_nothing_but_zeros(tmp_path):
    """A sparse file of two gigabytes of zeros is refused at once."""
    path = tmp_path / "f.csv"
    path.touch()
    os.truncate(path, 2_000_000_000)
    for opened in (text_lines, small_text):
        with pytest.raises(UnreadableError, match=r"nothing but zeros|at most 2 MB"):
            opened(path)


def test_the_longest_line(tmp_path):
    """64 KiB are read, one character more is refused."""
    assert list(text_lines(written(tmp_path, b"x" * MOST_LINE))()) == ["x" * MOST_LINE]
    assert list(text_lines(written(tmp_path, b"a\n" + b"x" * MOST_LINE + b"\nb"))())[2] == "b"
    with pytest.raises(UnreadableError, match="line 2"):
        list(text_lines(written(tmp_path, b"a\n" + b"x" * (MOST_LINE + 1) + b"\nb"))())


def test_a_large_table_is_refused(tmp_path):
    """A table or settings file over the limit is refused in plain words; at the limit it is read."""
    assert len(small_text(written(tmp_path, b"x" * 3_000_000), most_bytes=3_000_000)) == 3_000_000
    with pytest.raises(UnreadableError, match="at most 2 MB"):
        small_text(written(tmp_path, b"x" * 2_000_001))


def test_bytes_that_do_not_fit(tmp_path):
    """A foreign letter far behind an English beginning does not stop the reading."""
    path = written(tmp_path, b"a,b\n" * 20_000 + b"Gr\xfcn,1\n")
    assert list(text_lines(path)())[-1] == "Gr\N{REPLACEMENT CHARACTER}n,1"
    assert small_text(path).rstrip().endswith("Grün,1")  # the whole of a small file is looked at
