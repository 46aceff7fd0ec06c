"""Who talks on the bus, from when to when, and how much of the bus it takes."""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.evidence.frame import Frame

SILENCE_S = 2.0  # a node that sends nothing for so long is silent; J1939 nodes that live send every second and faster
STEADY_S = 0.5  # a node whose frames come more often than this talks all the time (our own model)
STEADY_FRAMES, STEADY_LEAST_S = 20, 3.0  # and at least so many, for so long: a single long message is no talk
OFF_BOARD = (249, 250)  # addresses of service tools, which come and go: from memory, unverified
MOST_SPELLS = 64
MOST_NODES = 1_024


@dataclass(frozen=True, slots=True)
class Spell:
    """A stretch of time in which a node was never silent [s]."""

    from_s: float
    to_s: float
    frames: int

    @property
    def steady(self) -> bool:
        """Whether it talked all the time in it."""
        length_s = self.to_s - self.from_s
        return length_s >= STEADY_LEAST_S and self.frames >= STEADY_FRAMES and length_s / self.frames <= STEADY_S


@dataclass(slots=True)
class NodeTrack:
    """One node: its address on its bus, and its spells of talk, the last one still open."""

    channel: str
    address: int
    first_s: float
    last_s: float
    frames: int = 0
    spells: list[Spell] = field(default_factory=list)
    _begun_s: float = 0.0
    _begun_at: int = 0

    def take(self, time_s: float) -> None:
        """Take in the time of its next frame."""
        if time_s - self.last_s > SILENCE_S:
            self._end()
            self._begun_s, self._begun_at = time_s, self.frames
        self.last_s = time_s
        self.frames += 1

    def _end(self) -> None:
        if len(self.spells) < MOST_SPELLS:
            self.spells.append(Spell(self._begun_s, self.last_s, self.frames - self._begun_at))

    def finish(self) -> None:
        """The log ends here."""
        self._end()

    @classmethod
    def begun(cls, channel: str, address: int, *, time_s: float) -> NodeTrack:
        """A node that is heard for the first time."""
        return cls(channel, address, time_s, time_s, _begun_s=time_s)


def frame_bits(frame: Frame) -> tuple[int, int]:
    """How many bits a frame takes on the wire, with the space behind it: without stuffing, and with the most of it.

    A long identifier takes 67 bits beside its data, a short one 47 (the frame of ISO 11898-1, from memory); after five
    equal bits one is stuffed in, at worst one for every four of the first 54 (34) bits and the data. The figure for
    short identifiers is as published widely, that for long ones is counted alike.

    >>> frame_bits(Frame(0.0, 0x0CF00400, bytes(8)))
    (131, 160)
    """
    data = 8 * len(frame.data)
    fixed, stuffed = (67, 54) if frame.extended else (47, 34)
    return fixed + data, fixed + data + (stuffed + data - 1) // 4


@dataclass(slots=True)
class LoadTrack:
    """How many bits a bus carried, in all and in its busiest second, without stuffing and with the most of it."""

    least_bits: int = 0
    most_bits: int = 0
    busiest_least: int = 0
    busiest_most: int = 0
    busy_seconds: int = 0
    _second: int = -1
    _least: int = 0
    _most: int = 0

    def take(self, time_s: float, frame: Frame) -> None:
        """Take in a frame."""
        second = int(time_s)
        if second != self._second:
            self._close()
            self._second = second
        least, most = frame_bits(frame)
        self._least += least
        self._most += most

    def _close(self) -> None:
        if self._least:
            self.busy_seconds += 1
        self.least_bits += self._least
        self.most_bits += self._most
        if self._most > self.busiest_most:
            self.busiest_least, self.busiest_most = self._least, self._most
        self._least = self._most = 0

    def finish(self) -> None:
        """The log ends here."""
        self._close()
