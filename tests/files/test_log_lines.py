"""A receiver's log is opened whatever stands between its lines, and however large it is."""

import tracemalloc
from pathlib import Path

import pytest

from backprobe.errors import UnreadableError
from backprobe.files.log_lines import log_lines


def written(path: Path, content: bytes) -> Path:
    """A file with this content."""
    path.write_bytes(content)
    return path


def test_all_line_ends(tmp_path: Path) -> None:
    """Unix, Windows, old Macs; the last line may have none."""
    path = written(tmp_path / "a.nmea", b"$A\r\n$B\n$C\r$D")
    assert list(log_lines(path)()) == ["$A", "$B", "$C", "$D"]


def test_bytes_of_another_protocol_pass(tmp_path: Path) -> None:
    """A receiver that sends frames of its own between sentences, zeros among them."""
    path = written(tmp_path / "a.ubx", b"\xb5\x62\x01\x07\x00\x00\x5c\x00\n$GPGLL*00\r\n")
    assert list(log_lines(path)())[1] == "$GPGLL*00"


def test_it_can_be_read_again(tmp_path: Path) -> None:
    """Each call opens the file anew."""
    lines = log_lines(written(tmp_path / "a.nmea", b"$A\n"))
    assert list(lines()) == list(lines()) == ["$A"]


def test_text_in_utf_16(tmp_path: Path) -> None:
    """As a spreadsheet or an editor may have saved it."""
    path = written(tmp_path / "a.nmea", "$A\r\n$B\r\n".encode("utf-16"))
    assert list(log_lines(path)()) == ["$A", "$B"]


@pytest.mark.parametrize(
    ("content", "said"),
    [(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99), "JPEG"), (b"PK\x03\x04" + bytes(9), "ZIP"), (b"", "empty")],
)
def test_other_kinds_are_refused(tmp_path: Path, content: bytes, said: str) -> None:
    """A photo that is called .nmea, a workbook, nothing at all."""
    path = written(tmp_path / "a.nmea", content)
    with pytest.raises(UnreadableError, match=said):
        log_lines(path)


def test_missing_is_refused(tmp_path: Path) -> None:
    """In plain words."""
    with pytest.raises(UnreadableError, match="there is none of this name"):
        log_lines(tmp_path / "none.nmea")


def test_a_stretch_without_a_line_end_is_cut(tmp_path: Path) -> None:
    """3 MB in one line come in pieces, and need less than 1 MB at a time."""
    path = written(tmp_path / "a.nmea", b"x" * 3_000_000)
    tracemalloc.start()
    longest = max(len(line) for line in log_lines(path)())
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert longest == 65_536
    assert peak < 1_000_000
