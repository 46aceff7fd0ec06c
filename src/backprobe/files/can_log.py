"""Opens a bus log, whatever its form, and yields its frames one by one.

The form is told from what the file holds, not from its name. Texts of `candump` are read by `formats/`; ASC, BLF, TRC
and MDF by python-can, whose faults become counted places where reading can go on behind them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.files.can_binary import blf_frames, is_blf, is_mdf, mdf_frames
from backprobe.files.can_text import asc_frames, is_asc, is_trc, trc_frames
from backprobe.files.open import head_bytes, text_lines
from backprobe.formats.bus_faults import BusFaults
from backprobe.formats.candump_text import is_candump, read_candump

HEAD_LINES = 100
EXPECTED = "a bus log (candump text, candump -l, ASC, BLF, TRC, MDF), or engine data as CSV with an engine speed"


@dataclass(frozen=True, slots=True)
class CanLog:
    """A bus log at `path`: the name of its `form`, and its frames, read anew each time; faults go to what is given."""

    path: Path
    form: str
    frames: Callable[[BusFaults], Iterator[Frame]]


def open_can_log(path: Path) -> CanLog | None:
    """The log at `path`; None where it is a text that holds no frames. Raises UnreadableError for any other file."""
    head = head_bytes(path)
    if is_blf(head):
        return CanLog(path, "blf", lambda faults: blf_frames(path, faults=faults))
    if is_mdf(head):
        return CanLog(path, "mf4", lambda faults: mdf_frames(path, faults=faults))
    open_lines = text_lines(path)
    lines = list(islice(open_lines(), HEAD_LINES))
    if is_trc(lines):
        return CanLog(path, "trc", lambda faults: trc_frames(open_lines(), faults=faults))
    if is_asc(lines):
        return CanLog(path, "asc", lambda faults: asc_frames(open_lines(), faults=faults))
    dumped = [line for line in lines if is_candump(line)]
    if dumped:
        form = "candump-log" if "#" in dumped[0] else "candump"
        return CanLog(path, form, lambda faults: read_candump(open_lines(), faults=faults))
    return None


def no_bus_log(path: Path) -> UnreadableError:
    """The refusal of a text that is neither."""
    first = next((line for line in text_lines(path)() if line.strip()), "")
    return UnreadableError(Place(path.name, 1, first), EXPECTED)
