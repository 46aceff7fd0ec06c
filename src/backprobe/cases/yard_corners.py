"""The corners that the server knows: an index in its data folder, and what of it goes to phones with the day's jobs."""

from __future__ import annotations

import logging
from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from backprobe.cases.yard import Yard
from backprobe.errors import UnreadableError
from backprobe.evidence.corner import CornerIndex
from backprobe.files.corner_file import corners_in
from backprobe.formats.corner_index import CORNERS, write_corner_index
from backprobe.physics.nearest_corner import corners_near

DAY_M = 3000.0  # around each job's place: what a truck is moved by while it is worked on
_log = logging.getLogger(__name__)


def yard_corners(yard: Yard) -> CornerIndex | None:
    """The index in the data folder, read again when the file has changed; None where there is none that can be read."""
    path = yard.made.parent / CORNERS
    try:
        stat = path.stat()
    except OSError:
        return None
    return _read(path, stat.st_mtime_ns, size=stat.st_size)


@lru_cache(maxsize=4)
def _read(path: Path, changed_ns: int, *, size: int) -> CornerIndex | None:
    """The index in a file as it was at a moment; one that is damaged is logged once, and jobs go on without it."""
    try:
        return corners_in(path)
    except UnreadableError as fault:
        _log.warning("%s (%d bytes, %d) is left out: %s", path, size, changed_ns, fault.message)
        return None


def day_corners(yard: Yard, places: Iterable[tuple[float, float]]) -> str | None:
    """The corners around the places of a day's jobs, as an index to be sent; None where there are none."""
    index = yard_corners(yard)
    near = () if index is None else corners_near(index, places, within_m=DAY_M)
    return write_corner_index(replace(index, corners=near)) if index is not None and near else None
