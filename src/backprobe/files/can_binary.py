"""BLF and MDF: binary logs that python-can reads block by block."""

from __future__ import annotations

import gc
import logging
import struct
import sys
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO, cast

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.files.can_text import LINE_FAULTS, frame_of
from backprobe.formats.bus_faults import READER_FAULT, TORN_LINE, BusFaults

if TYPE_CHECKING:
    from can import Message

BLOCK = b"LOBJ"
LOG_CONTAINER, DEFLATED = 10, 2
_BLOCK_HEAD = struct.Struct("<4sHHLL")  # mark, size of the head, version, size of the block, kind
_CONTAINER = struct.Struct("<H6xL4x")  # how it is packed, size when unpacked
MOST_BLOCK_BYTES = 16_000_000
SEARCHED_BYTES = 65_536
EXPECTED_BLF = "a whole block of a BLF log"
MDF_EXTRA = "the extra that reads MDF: pip install 'backprobe[mdf]'"


class _TooLargeError(ValueError):
    """A block says that it is larger than any is. Never leaves this module."""


class BlfFeed:
    """A BLF file for a reader of python-can: its head first, then what stands at the file's place.

    Refuses to read what no block holds, so that a damaged size does not fill the memory.
    """

    def __init__(self, file: BinaryIO, head: bytes) -> None:
        self._file = file
        self._head = head
        self.cut = False  # whether the file ended within a block
        self.closed = False

    def read(self, size: int = -1) -> bytes:
        """The next `size` bytes."""
        if not 0 <= size <= MOST_BLOCK_BYTES:
            raise _TooLargeError(f"a block of {size} bytes")
        if self._head:
            part, self._head = self._head[:size], self._head[size:]
            return part
        part = self._file.read(size)
        self.cut = self.cut or 3 < size != len(part) > 0  # up to three bytes fill a block up
        return part

    def close(self) -> None:
        """Say that a reader has come to the end; whoever opened the file closes it."""
        self.closed = True


def is_blf(head: bytes) -> bool:
    """Whether a file that begins so is a BLF log."""
    return head.startswith(b"LOGG")


def is_mdf(head: bytes) -> bool:
    """Whether a file that begins so is a measurement data file, version 3 or 4; the second mark is of one cut short."""
    return head.startswith((b"MDF     ", b"UnFinMF "))


def blf_frames(path: Path, *, faults: BusFaults) -> Iterator[Frame]:
    """The frames of a BLF log; behind a damaged block reading goes on with the next one that is whole."""
    from can.io.blf import BLFParseError, BLFReader

    broken = (*LINE_FAULTS, struct.error, zlib.error, BLFParseError, EOFError, MemoryError)
    with path.open("rb") as file:
        head = _blf_head(file, path)
        first: bytes | None = b""
        while first is not None:
            feed = BlfFeed(file, head + first)
            try:
                for message in BLFReader(cast("Any", feed)):
                    yield from _whole(message, faults)
                failed = feed.cut
            except broken:
                failed = True
            if not failed:
                return
            faults.add(READER_FAULT, Place(path.name, None, f"at byte {file.tell():,}"), expected=EXPECTED_BLF)
            first = _next_block(file)


def _next_block(file: BinaryIO) -> bytes | None:
    """The next block, from its first whole object on and unpacked; None where there is none.

    Blocks cut objects in two, so the beginning of one is the rest of an object whose beginning was lost.
    """
    while _to_next_block(file):
        start = file.tell()
        _, _, _, size, kind = _BLOCK_HEAD.unpack(file.read(_BLOCK_HEAD.size).ljust(_BLOCK_HEAD.size, b"\0"))
        if kind == LOG_CONTAINER and _BLOCK_HEAD.size + _CONTAINER.size < size <= MOST_BLOCK_BYTES:
            packed = file.read(size - _BLOCK_HEAD.size)
            file.read(size % 4)
            data = _unpacked(packed)
            at = data.find(BLOCK)
            if at >= 0:
                return _container(data[at:])
        file.seek(start + len(BLOCK))
    return None


def _unpacked(packed: bytes) -> bytes:
    """What a block holds; nothing where it cannot be unpacked."""
    method, _ = _CONTAINER.unpack_from(packed)
    body = packed[_CONTAINER.size :]
    if method != DEFLATED:
        return body
    try:
        return zlib.decompressobj().decompress(body, MOST_BLOCK_BYTES)
    except zlib.error:
        return b""


def _container(data: bytes) -> bytes:
    """A block that holds `data` as it is."""
    size = _BLOCK_HEAD.size + _CONTAINER.size + len(data)
    head = _BLOCK_HEAD.pack(BLOCK, _BLOCK_HEAD.size, 1, size, LOG_CONTAINER)
    return head + _CONTAINER.pack(0, len(data)) + data + bytes(size % 4)


def _blf_head(file: BinaryIO, path: Path) -> bytes:
    """The log's own head, as long as it says; UnreadableError where it is cut."""
    start = file.read(8)
    size = int.from_bytes(start[4:8], "little")
    head = start + file.read(max(0, min(size, SEARCHED_BYTES) - 8))
    if len(start) < 8 or not 72 <= size == len(head):
        raise UnreadableError(Place(path.name), "a BLF log with a whole head; this one is cut")
    return head


def _to_next_block(file: BinaryIO) -> bool:
    """Go on to where the next block begins; False at the end."""
    kept = b""
    while part := file.read(SEARCHED_BYTES):
        both = kept + part
        at = both.find(BLOCK)
        if at >= 0:
            file.seek(at - len(both), 1)
            return True
        kept = both[-len(BLOCK) + 1 :]
    return False


def _whole(message: Message, faults: BusFaults) -> Iterator[Frame]:
    frame = frame_of(message)
    if frame is None:
        faults.add(TORN_LINE, Place(faults.file, None, str(message)), expected="as many bytes as the frame says")
    else:
        yield frame


def mdf_frames(path: Path, *, faults: BusFaults) -> Iterator[Frame]:
    """The frames of a measurement data file; UnreadableError where what reads it is not installed, or it is damaged."""
    try:
        import asammdf  # noqa: F401 (python-can itself goes on without it, and fails later)
    except ImportError:
        raise UnreadableError(Place(path.name), MDF_EXTRA) from None
    from can.io.mf4 import MF4Reader

    logging.getLogger("asammdf").setLevel(logging.CRITICAL + 1)  # what it says of a fault is said here

    def opened() -> MF4Reader | str:
        try:
            return MF4Reader(str(path))
        except Exception as fault:  # noqa: BLE001 (of a damaged file its parts and theirs raise whatever they like)
            return str(fault)

    with _quiet_end():
        reader = opened()
    if isinstance(reader, str):
        raise UnreadableError(Place(path.name), f"a measurement data file; its reader says: {reader}")
    try:
        for message in reader:
            yield from _whole(message, faults)
    except Exception as fault:  # noqa: BLE001 (the same; what was read before the fault stands)
        faults.add(READER_FAULT, Place(path.name, None, str(fault)), expected="a whole measurement data file")
    finally:
        reader.stop()


@contextmanager
def _quiet_end() -> Iterator[None]:
    """Lets an object that failed half made go without a word of its own on the terminal."""
    hook = sys.unraisablehook
    sys.unraisablehook = lambda _: None
    try:
        yield
    finally:
        gc.collect()
        sys.unraisablehook = hook
