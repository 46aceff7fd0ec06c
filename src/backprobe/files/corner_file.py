"""An index of corners on disk."""

from __future__ import annotations

from pathlib import Path

from backprobe.errors import InputError
from backprobe.evidence.corner import CornerIndex
from backprobe.files.open import small_text
from backprobe.formats.corner_index import CORNERS, TITLE, read_corner_index, write_corner_index

MOST_BYTES = 20_000_000


def corners_in(path: Path) -> CornerIndex:
    """The index in a file. Raises UnreadableError where there is none."""
    return read_corner_index(small_text(path, MOST_BYTES), file=path.name)


def corners_for(folder: Path, named: Path | None = None) -> CornerIndex | None:
    """The index that was named, else the one in a job folder; None where there is neither. Raises UnreadableError."""
    path = folder / CORNERS if named is None else named
    return corners_in(path) if named is not None or path.is_file() else None


def write_corners(index: CornerIndex, path: Path) -> int:
    """Write an index to a file, and say how many bytes it has; nothing but an earlier index is written over."""
    text = write_corner_index(index).encode()
    try:
        if path.is_file() and not _is_index(path):
            raise InputError(f"{path}: there is a file of this name that is no index of corners; it was left as it is")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text)
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or fault
        raise InputError(f"the index could not be written to {path}: {reason}") from None
    return len(text)


def _is_index(path: Path) -> bool:
    """Whether a file begins as an index does, of whatever version; an empty one may be written over too."""
    with path.open("rb") as file:
        return file.read(len(TITLE)) in (b"", TITLE.encode())
