"""Opens a receiver's log: lines of text, with whatever else the receiver sent between them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from backprobe.errors import Place, UnreadableError
from backprobe.files.open import MOST_LINE, head_bytes, text_lines
from backprobe.formats.text import is_wide, refuse_known


def log_lines(path: Path) -> Callable[[], Iterator[str]]:
    """A function that opens the log anew each time and yields its lines without line ends, however large it is.

    Bytes of other protocols pass as letters (Latin-1), and a stretch without a line end is cut into pieces of 64 KiB.
    Raises UnreadableError where the file is missing, empty or of a kind that is no log: a photo, a spreadsheet.
    """
    head = head_bytes(path)
    refuse_known(head, file=path.name)
    return text_lines(path) if is_wide(head) else lambda: _lines(path)


def _lines(path: Path) -> Iterator[str]:
    try:
        with path.open(encoding="latin-1", newline=None) as file:
            while line := file.readline(MOST_LINE):
                yield line.removesuffix("\n")
    except OSError as error:
        raise UnreadableError(Place(path.name), f"a file that can be read; the system says: {error}") from None
