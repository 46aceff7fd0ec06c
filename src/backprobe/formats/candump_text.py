"""The two texts that `candump` writes: the aligned one for people and the close one of `candump -l`.

::

     (011.602162)  can1  18FEF731   [8]  FF FF FF FF EF 00 FF FF
    (1634254884.935126) can1 0CF00100#FFFFFFFF00FFFFFF

Read here rather than by a library because the aligned form is read by none, and because both must be read in a browser.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import chain, islice, pairwise

from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import MOST_TIME_S, BusFaults
from backprobe.formats.instants import read_instant

EXPECTED = "a frame as candump writes it: (time)  bus  identifier  [length]  bytes; or (time) bus identifier#bytes"
FIRST_FRAMES, BACK_SHARE = 200, 0.2  # where so many of the first fall back, times are differences
MOST_BYTES = 64  # of a CAN FD frame
LENGTHS = {3: False, 8: True}  # digits of an identifier -> whether it has 29 bits
ERROR_FLAG, ID_MASK = 0x2000_0000, 0x1FFF_FFFF

_HEAD = r"\s*\((?P<time>[0-9][0-9 .:T-]*)\)\s+(?P<bus>\S+)\s+"
_CLOSE = re.compile(_HEAD + r"(?P<id>[0-9A-Fa-f]+)#(?P<rest>#?[0-9A-Fa-fRr]*)(?:\s+[RTrt])?\s*", re.ASCII)
_ALIGNED = re.compile(
    _HEAD + r"(?:[RT]X\s+\S+\s+\S+\s+)?(?P<id>[0-9A-Fa-f]+)\s+\[(?P<length>[0-9]{1,2})\](?P<rest>.*)", re.ASCII
)
_BYTES = re.compile(r"(?:\s+[0-9A-Fa-f]{2})*", re.ASCII)


def is_candump(line: str) -> bool:
    """Whether a line is a frame in one of the two forms.

    >>> is_candump(" (000.5)  can0  0CF00400   [8]  F8 7D 7D 00 00 00 FF 7D"), is_candump("(0.5) can0 123#R8")
    (True, True)
    >>> is_candump("time_s,battery")
    False
    """
    return _frame(line) is not None


def read_candump(lines: Iterable[str], *, faults: BusFaults) -> Iterator[Frame]:
    """The frames in `lines`, one by one, nothing kept; lines that hold none are counted in `faults` with their place.

    Empty lines and those that begin with # are passed over. A line whose bytes are not as many as it says is torn.
    Times that count from the frame before are added up; they are told by how often they fall.

    >>> faults = BusFaults("log")
    >>> lines = ["(0.5) can0 0CF00400#F87D7D401F00FF7D", "(0.6) can0 0CF0", " (0.7)  can0  123   [2]  01"]
    >>> [(frame.time_s, hex(frame.can_id)) for frame in read_candump(lines, faults=faults)], faults.counts
    ([(0.5, '0xcf00400')], Counter({'torn_line': 2}))
    """
    frames = _frames(lines, faults)
    first = list(islice(frames, FIRST_FRAMES))
    back = sum(later.time_s < earlier.time_s for earlier, later in pairwise(first))
    all_frames = chain(first, frames)
    yield from _summed(all_frames) if back > BACK_SHARE * FIRST_FRAMES else all_frames


def _frames(lines: Iterable[str], faults: BusFaults) -> Iterator[Frame]:
    for number, line in enumerate(lines, start=1):
        frame = _frame(line)
        if frame is not None:
            yield frame
        elif line and not line.isspace() and not line.lstrip().startswith("#"):
            faults.line(number, line, expected=EXPECTED)


def _summed(frames: Iterable[Frame]) -> Iterator[Frame]:
    """The frames of a log whose times count from the frame before (`candump -t d`)."""
    now_s = 0.0
    for frame in frames:
        now_s += frame.time_s
        yield frame._replace(time_s=round(now_s, 6))


def _frame(line: str) -> Frame | None:
    match = _ALIGNED.fullmatch(line)
    if match is not None:
        return _made(match, _aligned_bytes(match["rest"], int(match["length"])))
    match = _CLOSE.fullmatch(line)
    return None if match is None else _made(match, _close_bytes(match["rest"]))


def _made(match: re.Match[str], held: tuple[bytes, bool] | None) -> Frame | None:
    time, digits = match["time"], match["id"]
    extended = LENGTHS.get(len(digits))
    if held is None or extended is None:
        return None
    time_s = _time_s(time)
    if time_s is None or time_s > MOST_TIME_S:
        return None
    can_id = int(digits, 16)
    error = extended and bool(can_id & ERROR_FLAG)
    return Frame(time_s, can_id & ID_MASK, held[0], extended, held[1], error, match["bus"])


def _time_s(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        instant = read_instant(text.strip())
        return None if instant is None else instant[0]


def _aligned_bytes(rest: str, length: int) -> tuple[bytes, bool] | None:
    """The bytes and whether it is a remote frame; None where they are not `length`."""
    try:
        data = bytes.fromhex(rest)
    except ValueError:
        if rest.split() == ["remote", "request"]:
            return b"", True
        written = _BYTES.match(rest)
        tail = "" if written is None else rest[written.end() :].strip()
        if written is None or not (tail == "ERRORFRAME" or (len(tail) >= 2 and tail[0] == tail[-1] == "'")):
            return None
        data = bytes.fromhex(written[0])
    return (data, False) if len(data) == length <= MOST_BYTES else None


def _close_bytes(rest: str) -> tuple[bytes, bool] | None:
    """The bytes behind the #, those of a CAN FD frame behind a second one and its flags."""
    if rest[:1] in ("R", "r"):
        return (b"", True) if rest[1:] == "" or rest[1:].isdigit() else None
    digits = rest[2:] if rest[:1] == "#" else rest
    try:
        data = bytes.fromhex(digits)
    except ValueError:
        return None
    most = MOST_BYTES if rest[:1] == "#" else 8
    return (data, False) if len(data) <= most else None
