"""ASC and TRC: texts that python-can reads line by line, with each line that gave no frame looked at again."""

from __future__ import annotations

import logging
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, cast

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import MOST_TIME_S, BusFaults

if TYPE_CHECKING:
    from can import Message
    from can.io.generic import MessageReader

logging.getLogger("can").addHandler(logging.NullHandler())  # what it says of lines is said here, with their place

# what python-can raises at a line it cannot read
LINE_FAULTS = (ValueError, IndexError, KeyError, TypeError, OverflowError, AttributeError)

_ASC_HEAD = re.compile(r"\s*(date\s|base\s+(hex|dec)|(no\s+)?internal\s+events|begin\s+trigger)", re.IGNORECASE)
_ASC_EVENT = re.compile(  # what stands in such a log beside frames
    r"\s*(//|date\s|base\s|version\s|split\s|(no\s+)?internal\s+events|(begin|end)\s+trigger"
    r"|-?\d+\.\d+\s+(?!CANFD\b)(\d+\s+)?(?![0-9A-F]+x?(\s|$))[A-Z][A-Z0-9_]*:?(\s|$))",
    re.IGNORECASE,
)
_ASC_FRAME = re.compile(r"\s*\d+\.\d+\s+(\d+\s+[0-9A-F]+x?\s+[RT]x\s+[dr]\b|\d+\s+ErrorFrame|CANFD\s)", re.IGNORECASE)
_ASC_RELATIVE = re.compile(r"\s*base\s+(hex|dec)\s+timestamps\s+relative", re.IGNORECASE)
_ASC_TIME = re.compile(r"\s*(\d+\.\d+)(?=\s)")
_TRC_HEAD = re.compile(r";(\$FILEVERSION=|\$STARTTIME=|#{20,}$|-{3}\+-)")
_TRC_ROW = re.compile(r"\s*\d+\)?\s+(\d+(?:\.\d+)?)\s+(?:\d+\s+)?(ER|ST|EC|EV|Error|Warng)\b")
EXPECTED_ASC = "a frame as ASC has it: time, channel, identifier, Rx or Tx, d, length, bytes"
EXPECTED_TRC = "a frame as TRC has it: number, time, type, identifier, Rx or Tx, length, bytes"


class LineFeed:
    """Lines for a reader of python-can, which takes them as it would a file's; remembers those that gave no frame.

    `head` is given again to the reader that goes on behind a fault.
    """

    def __init__(self, lines: Iterable[str]) -> None:
        self._lines = iter(lines)
        self._again: list[str] = []
        self.closed = False
        self.number = 0
        self.given: list[tuple[int, str]] = []  # since the last frame

    def __iter__(self) -> LineFeed:
        return self

    def __next__(self) -> str:
        if self._again:
            return self._again.pop(0)
        line = next(self._lines)
        self.number += 1
        self.given.append((self.number, line))
        return line

    def again(self, head: Sequence[str]) -> None:
        """Give these lines first, to a new reader."""
        self._again = list(head)

    def close(self) -> None:
        """Say that a reader has come to the end; the lines are closed by whoever opened them."""
        self.closed = True


def frame_of(message: Message) -> Frame | None:
    """The frame in a message of python-can; None where it holds fewer bytes than it says, or no time that can be."""
    data = bytes(message.data)
    if len(data) < min(message.dlc, 8) and not (message.is_remote_frame or message.is_error_frame):
        return None
    if not abs(message.timestamp) <= MOST_TIME_S:
        return None
    return Frame(
        message.timestamp,
        message.arbitration_id,
        data,
        message.is_extended_id,
        message.is_remote_frame,
        message.is_error_frame,
        "" if message.channel is None else str(message.channel),
    )


def is_asc(lines: Sequence[str]) -> bool:
    """Whether the first lines of a file are those of an ASC log."""
    return any(_ASC_HEAD.match(line) for line in lines[:10]) or sum(map(bool, map(_ASC_FRAME.match, lines))) > 1


def is_trc(lines: Sequence[str]) -> bool:
    """Whether the first lines of a file are those of a TRC log."""
    return any(_TRC_HEAD.match(line) for line in lines[:20])


def asc_frames(lines: Iterable[str], *, faults: BusFaults) -> Iterator[Frame]:
    """The frames of an ASC log; times that count from the line before are added up."""
    from can.io.asc import ASCReader

    head: list[str] = []

    def odd(line: str, _: object) -> Frame | bool:
        return bool(_ASC_EVENT.match(line))

    feed = LineFeed(_absolute(lines, head))
    form = _Form(lambda: ASCReader(cast("Any", feed)), odd, head, EXPECTED_ASC)
    yield from _read(feed, form, faults=faults)


def _absolute(lines: Iterable[str], head: list[str]) -> Iterator[str]:
    """The lines with their times counted from the beginning; what a new reader must know of them goes to `head`."""
    relative, now_s = False, 0.0
    for number, line in enumerate(lines):
        if number < 20 and line.lower().lstrip().startswith("base "):
            head[:] = [line, "internal events logged"]
            relative = _ASC_RELATIVE.match(line) is not None
        match = _ASC_TIME.match(line) if relative else None
        if match is not None:
            now_s += float(match[1])
            line = f"{now_s:.6f}{line[match.end() :]}"
        yield line


def trc_frames(lines: Iterable[str], *, faults: BusFaults) -> Iterator[Frame]:
    """The frames of a TRC log, and its error rows, which python-can passes over."""
    from can.io.trc import TRCReader

    head: list[str] = []

    def noted() -> Iterator[str]:
        begun = False
        for line in lines:
            begun = begun or not line.lstrip().startswith(";")
            if not begun:
                head.append(line)
            yield line

    def odd(line: str, reader: object) -> Frame | bool:
        match = _TRC_ROW.match(line)
        if match is None:
            return line.lstrip().startswith(";")
        if match[2] not in ("ER", "Error"):
            return True
        start = cast("TRCReader", reader).start_time
        return Frame(float(match[1]) / 1000 + (start.timestamp() if start else 0.0), 0, b"", error=True)

    feed = LineFeed(noted())
    form = _Form(lambda: TRCReader(cast("Any", feed)), odd, head, EXPECTED_TRC)
    yield from _read(feed, form, faults=faults)


@dataclass(frozen=True, slots=True)
class _Form:
    """How one form of text is read: a reader, made anew behind a fault with the lines of the `head` given again.

    `odd` says what a line is that gave no frame: True for what belongs there, a frame for an error row, else torn.
    """

    open_reader: Callable[[], MessageReader]
    odd: Callable[[str, object], Frame | bool]
    head: Sequence[str]
    expected: str


def _read(feed: LineFeed, form: _Form, *, faults: BusFaults) -> Iterator[Frame]:
    """The frames that a reader gives, a new one where it fails."""
    failed_at = -1
    while True:
        reader = form.open_reader()
        try:
            for message in reader:
                frame = frame_of(message)
                own = feed.given.pop() if feed.given else None
                yield from _passed(feed, form, reader=reader, faults=faults)
                if frame is not None:
                    yield frame
                elif own is not None:
                    faults.line(*own, expected=form.expected)
        except LINE_FAULTS as fault:
            yield from _passed(feed, form, reader=reader, faults=faults)
            if feed.number == failed_at:  # not at a line, but at what stands at the head
                place = Place(faults.file, None, form.head[0] if form.head else None)
                raise UnreadableError(place, f"a head that its reader understands; it says: {fault}") from None
            failed_at = feed.number
            feed.again(form.head)
            continue
        yield from _passed(feed, form, reader=reader, faults=faults)
        return


def _passed(feed: LineFeed, form: _Form, *, reader: object, faults: BusFaults) -> Iterator[Frame]:
    """What the lines hold that gave no frame; those that hold nothing known are counted."""
    given, feed.given = feed.given, []
    for number, line in given:
        if not line or line.isspace():
            continue
        found = form.odd(line, reader)
        if isinstance(found, Frame):
            yield found
        elif not found:
            faults.line(number, line, expected=form.expected)
