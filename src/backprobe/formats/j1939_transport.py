"""Messages longer than one frame: announced, sent in packets of seven bytes, put together here (SAE J1939-21).

Two ways are in use: sent to all without answer (BAM), and to one node that answers (RTS, CTS, end of message). Control
bytes as in public code that names J1939-21 as its source; the times are from memory, unverified.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.evidence.frame import Frame
from backprobe.formats.j1939 import GLOBAL, TP_CM, TP_DT, destination_of, group_of, source_of

RTS, CTS, END_OF_MESSAGE, BAM, ABORT = 16, 17, 19, 32, 255
PACKET_BYTES = 7
LEAST_BYTES, MOST_BYTES = 9, 1785  # what fits one frame needs no packets; 255 packets of 7 are the most
BAM_WAIT_S = 0.75  # between two packets to all
ANSWER_WAIT_S = 1.25  # between two packets, or before one that was asked for again


@dataclass(frozen=True, slots=True)
class Message:
    """A whole message: its parameter group, who sent it to whom, and its bytes."""

    time_s: float
    pgn: int
    source: int
    destination: int
    data: bytes


@dataclass(frozen=True, slots=True)
class Lost:
    """A message of which packets never came: why, in words. `pgn` is None where its announcement is missing."""

    time_s: float
    pgn: int | None
    source: int
    why: str


@dataclass(slots=True)
class _Session:
    """What has come of one announced message."""

    pgn: int
    size: int
    packets: int
    last_s: float
    to_all: bool
    parts: dict[int, bytes] = field(default_factory=dict)
    broken: bool = False
    last: int = 0

    @property
    def missing(self) -> str:
        """How much is missing, in words."""
        return f"{self.packets - len(self.parts)} of {self.packets} packets never came"


_Key = tuple[str, int, int]


@dataclass(slots=True)
class Transport:
    """Puts messages together, whoever sends them at the same time: one message at a time from one node to another."""

    sessions: dict[_Key, _Session] = field(default_factory=dict)

    def take(self, frame: Frame) -> tuple[Message | Lost, ...]:
        """What this frame completes or shows to be lost; nothing for most frames."""
        group = group_of(frame.can_id)
        if group == TP_DT:
            return self._packet(frame)
        return self._control(frame) if group == TP_CM else ()

    def left(self) -> tuple[Lost, ...]:
        """The messages that are still incomplete at the end of the log."""
        found = tuple(
            Lost(session.last_s, session.pgn, key[1], f"the log ends: {session.missing}")
            for key, session in self.sessions.items()
            if not session.broken
        )
        self.sessions.clear()
        return found

    def _control(self, frame: Frame) -> tuple[Message | Lost, ...]:
        data, source, destination = frame.data, source_of(frame.can_id), destination_of(frame.can_id)
        if len(data) < 8 or data[0] not in (RTS, CTS, END_OF_MESSAGE, BAM, ABORT):
            return ()
        if data[0] in (BAM, RTS):
            return self._announced(frame, (frame.channel, source, destination))
        return self._answered(frame, (frame.channel, destination, source))

    def _announced(self, frame: Frame, key: _Key) -> tuple[Message | Lost, ...]:
        data = frame.data
        size, packets, pgn = data[1] | data[2] << 8, data[3], data[5] | data[6] << 8 | data[7] << 16
        lost = self._closed(key, frame.time_s, why="another message began")
        if (data[0] == BAM) != (key[2] == GLOBAL) or not LEAST_BYTES <= size <= MOST_BYTES:
            return lost
        if packets != -(-size // PACKET_BYTES):
            return (*lost, Lost(frame.time_s, pgn, key[1], f"{packets} packets were announced for {size} bytes"))
        self.sessions[key] = _Session(pgn, size, packets, frame.time_s, data[0] == BAM)
        return lost

    def _answered(self, frame: Frame, key: _Key) -> tuple[Message | Lost, ...]:
        """What the receiver says: go on, the end, or no more."""
        session = self.sessions.get(key)
        if session is None:
            return ()
        if frame.data[0] == CTS:
            session.last_s = frame.time_s
            return ()
        if frame.data[0] == ABORT:  # either side may say so: nothing was lost in the log
            self.sessions.pop(key)
            return ()
        return self._closed(key, frame.time_s, why="its receiver has it all, the log does not")

    def _closed(self, key: _Key, time_s: float, *, why: str) -> tuple[Lost, ...]:
        session = self.sessions.pop(key, None)
        if session is None or session.broken:
            return ()
        return (Lost(time_s, session.pgn, key[1], f"{why}: {session.missing}"),)

    def _packet(self, frame: Frame) -> tuple[Message | Lost, ...]:
        key = (frame.channel, source_of(frame.can_id), destination_of(frame.can_id))
        session, data = self.sessions.get(key), frame.data
        if session is None:
            return self._stray(frame, key)
        if session.broken:
            return ()
        wrong = _misplaced(session, frame)
        if wrong is not None:
            session.broken = True
            return (Lost(frame.time_s, session.pgn, key[1], wrong),)
        session.parts[data[0]] = data[1:]
        session.last, session.last_s = data[0], frame.time_s
        if len(session.parts) < session.packets:
            return ()
        self.sessions.pop(key)
        whole = b"".join(session.parts[number] for number in range(1, session.packets + 1))[: session.size]
        return (Message(frame.time_s, session.pgn, key[1], key[2], whole),)

    def _stray(self, frame: Frame, key: _Key) -> tuple[Lost, ...]:
        """Packets without an announcement: counted once, however many follow."""
        self.sessions[key] = _Session(-1, 0, 0, frame.time_s, key[2] == GLOBAL, broken=True)
        return (Lost(frame.time_s, None, key[1], "packets came without their announcement"),)


def _misplaced(session: _Session, frame: Frame) -> str | None:
    """Why a packet cannot belong to the message, in words; None where it can."""
    data = frame.data
    if len(data) < 1 + PACKET_BYTES:
        return "a packet is shorter than 8 bytes"
    wait_s = BAM_WAIT_S if session.to_all else ANSWER_WAIT_S
    if frame.time_s - session.last_s > wait_s:
        return f"no packet came for more than {wait_s:g} s: {session.missing}"
    number, known = data[0], session.parts.get(data[0])
    if not 1 <= number <= session.packets:
        return f"packet {number} of {session.packets} came"
    if known is not None:  # said twice: by the logger, or because the receiver asked for it again
        return None if known == data[1:] else f"packet {number} came again with other bytes"
    if session.to_all and number != session.last + 1:
        return f"packet {number} came after packet {session.last}"
    return None
