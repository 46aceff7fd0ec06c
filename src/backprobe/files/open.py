"""Opens a path as text, whatever its encoding and line ends, without ever holding a large file in memory."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from backprobe.errors import SHOWN_TEXT_MAX, Place, UnreadableError
from backprobe.formats.text import HEAD_BYTES, encoding_of, refuse_binary

MOST_LINE = 65_536  # characters
MOST_SMALL_BYTES = 2_000_000


def text_lines(path: Path) -> Callable[[], Iterator[str]]:
    """A function that opens the file anew each time and yields its lines without line ends.

    The file is looked at once at the start: missing, a folder, not allowed, empty or no text raises UnreadableError
    here; a line over 64 KiB, or a file that has gone meanwhile, raises it while reading. A tail of zeros, as a
    recorder leaves that lost its supply, is shown as one zero. Line ends may be those of Unix, Windows or old Macs.
    Bytes that do not fit the encoding become '\N{REPLACEMENT CHARACTER}'.
    """
    head = _bytes_of(path, HEAD_BYTES)
    refuse_binary(head, file=path.name)
    encoding = encoding_of(head)
    return lambda: _lines(path, encoding)


def head_bytes(path: Path) -> bytes:
    """The first bytes of a file, to tell what it is; UnreadableError where there is none that may be read."""
    return _bytes_of(path, HEAD_BYTES)


def small_text(path: Path, most_bytes: int = MOST_SMALL_BYTES) -> str:
    r"""The whole text of a table or a settings file, line ends as '\n'; UnreadableError above `most_bytes`."""
    raw = _bytes_of(path, most_bytes + 1)
    if len(raw) > most_bytes:
        raise UnreadableError(Place(path.name), f"at most {most_bytes / 1e6:.0f} MB; this file is larger")
    refuse_binary(raw, file=path.name)
    text = raw.decode(encoding_of(raw), errors="replace")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _bytes_of(path: Path, most: int) -> bytes:
    """The first `most` bytes of a file that is there, may be read and is not empty."""
    with _plain_words(path):
        if path.is_dir():
            raise UnreadableError(Place(path.name), "a file; this is a folder")
        if path.exists() and not path.is_file():
            raise UnreadableError(Place(path.name), "a file on disk; this is a pipe or a device")
        with path.open("rb") as file:
            raw = file.read(most)
    if not raw:
        raise UnreadableError(Place(path.name), "a file with something in it; this one is empty")
    return raw


def _lines(path: Path, encoding: str) -> Iterator[str]:
    number, rest = 1, ""
    with _plain_words(path), path.open(encoding=encoding, errors="replace", newline=None) as file:
        while chunk := file.read(MOST_LINE):
            lines = (rest + chunk).split("\n")
            rest = lines.pop()
            if rest.endswith("\0"):
                rest = rest.rstrip("\0") + "\0"  # a power cut leaves zeros: one stands for them all
            # a chunk is no longer than the longest line, so only the two ends of it can be too long
            first = lines[0] if lines else rest
            if len(first) > MOST_LINE:
                raise UnreadableError(Place(path.name, number, first[:SHOWN_TEXT_MAX]), "lines of at most 64 KiB")
            yield from lines
            number += len(lines)
    if rest:
        yield rest


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    """Turn what the system says about a path into the technician's words."""
    try:
        yield
    except FileNotFoundError:
        raise UnreadableError(Place(path.name), "a file that is there; there is none of this name") from None
    except PermissionError:
        raise UnreadableError(Place(path.name), "a file that may be read; the system does not allow it") from None
    except (OSError, ValueError) as error:
        raise UnreadableError(Place(path.name), f"a file that can be read; the system says: {error}") from None
