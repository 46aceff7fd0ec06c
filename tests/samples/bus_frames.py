"""Builds frames of a heavy vehicle's bus, for tests: what a node would send, byte by byte."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from backprobe.evidence.frame import Frame

BAM, RTS, CTS, END, ABORT = 32, 16, 17, 19, 255
TO_ALL = 255


def sent(time_s: float, pgn: int, data: bytes, *, source: int = 0, priority: int = 6) -> Frame:
    """A frame that a node sends to all: three bits of priority, the group's number, the sender's address."""
    return Frame(time_s, priority << 26 | pgn << 8 | source, data, channel="can0")


def sent_to(time_s: float, group: int, data: bytes, *, source: int, to: int) -> Frame:
    """A frame that a node sends to one other: the group's low byte is the receiver's address."""
    return Frame(time_s, 6 << 26 | (group | to) << 8 | source, data, channel="can0")


def packets(data: bytes) -> list[bytes]:
    """The numbered packets of seven bytes, the last one filled with 0xFF."""
    parts = [data[at : at + 7] for at in range(0, len(data), 7)]
    return [bytes([number]) + part.ljust(7, b"\xff") for number, part in enumerate(parts, start=1)]


def announcement(data: bytes, pgn: int, *, control: int) -> bytes:
    """Control byte, size (low byte first), number of packets, filler, and the group (low byte first)."""
    return bytes([control, len(data) & 255, len(data) >> 8, -(-len(data) // 7), 255]) + pgn.to_bytes(3, "little")


def long_message(
    data: bytes, pgn: int, *, source: int = 0, to: int = TO_ALL, start_s: float = 0.0, step_s: float = 0.05
) -> list[Frame]:
    """The frames of a long message: sent to all it is announced and sent, to one node it is asked for and answered."""
    if to == TO_ALL:
        bodies = [(0xEC00, announcement(data, pgn, control=BAM)), *((0xEB00, part) for part in packets(data))]
        return [
            sent_to(start_s + i * step_s, group, body, source=source, to=to) for i, (group, body) in enumerate(bodies)
        ]
    parts = packets(data)
    group_bytes = pgn.to_bytes(3, "little")
    told: list[tuple[bool, int, bytes]] = [(True, 0xEC00, announcement(data, pgn, control=RTS))]
    told.append((False, 0xEC00, bytes([CTS, len(parts), 1, 255, 255]) + group_bytes))
    told += [(True, 0xEB00, part) for part in parts]
    told.append((False, 0xEC00, bytes([END, len(data) & 255, len(data) >> 8, len(parts), 255]) + group_bytes))
    return [
        sent_to(start_s + i * step_s, group, body, source=source if out else to, to=to if out else source)
        for i, (out, group, body) in enumerate(told)
    ]


def aligned(frames: Iterable[Frame]) -> Iterator[str]:
    """The frames as candump's aligned text."""
    for frame in frames:
        digits = f"{frame.can_id:08X}" if frame.extended else f"{frame.can_id:03X}"
        body = "  remote request" if frame.remote else "".join(f" {byte:02X}" for byte in frame.data)
        yield f" ({frame.time_s:010.6f})  {frame.channel or 'can0'}  {digits}   [{len(frame.data)}] {body}"


def close(frames: Iterable[Frame]) -> Iterator[str]:
    """The frames as `candump -l` writes them."""
    for frame in frames:
        digits = f"{frame.can_id:08X}" if frame.extended else f"{frame.can_id:03X}"
        yield f"({frame.time_s:.6f}) {frame.channel or 'can0'} {digits}#{frame.data.hex().upper()}"
