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


def volts_frame(time_s: float, volts: float | None, *, key_V: float | None = None, source: int = 0) -> Frame:
    """PGN 65271: the battery potential in bytes 5 and 6, the keyswitch's in 7 and 8, 0.05 V a bit."""
    raws = [0xFFFF if each is None else round(each * 20) for each in (volts, key_V)]
    return sent(time_s, 65271, b"\xff" * 4 + b"".join(raw.to_bytes(2, "little") for raw in raws), source=source)


def speed_frame(time_s: float, rpm: float | None, *, source: int = 0) -> Frame:
    """PGN 61444: the engine speed in bytes 4 and 5, 0.125 rpm a bit."""
    raw = 0xFFFF if rpm is None else round(rpm * 8)
    return sent(time_s, 61444, b"\xff" * 3 + raw.to_bytes(2, "little") + b"\xff" * 3, source=source, priority=3)


def rpm_at(time_s: float, *, crank_s: float, crank_length_s: float, stop_s: float, starts: bool = True) -> float:
    """An invented engine: 180 rpm on the starter, up to 750 within 0.4 s, down to nothing within a second."""
    ran_s = crank_s + crank_length_s
    if time_s < crank_s or time_s >= stop_s + 1.0 or (not starts and time_s >= ran_s):
        return 0.0
    if time_s < ran_s:
        return 180.0
    up = min(750.0, 180.0 + 570.0 * (time_s - ran_s) / 0.4)
    return up if time_s < stop_s else up * (stop_s + 1.0 - time_s)


def key_cycle(
    *,
    on_s: float = 5.0,
    crank_s: float = 9.0,
    crank_length_s: float = 0.8,
    off_s: float = 30.0,
    end_s: float = 40.0,
    lowest_V: float = 10.2,
    volts_every_s: float = 1.0,
    starts: bool = True,
    asleep: bool = True,
    scale: float = 1.0,
) -> list[Frame]:
    """An invented truck: a gateway (49) that never sleeps, an engine (0), and two computers (3, 11) fed by the key.

    The engine's computer stays awake for a while after the key went off. `scale` is 2 for a 24 V system.
    """
    frames: list[Frame] = []
    step_s = 0.02
    for step in range(round(end_s / step_s)):
        time_s = round(step * step_s, 6)
        awake, keyed = time_s >= on_s, on_s <= time_s < off_s
        if asleep and step % 50 == 0:
            frames.append(sent(time_s, 61712, bytes(8), source=49))
        if keyed and step % 5 == 0:
            frames += [sent(time_s, 61441, bytes(8), source=11), sent(time_s, 61442, bytes(8), source=3)]
        if awake and time_s >= on_s + 0.3:
            rpm = rpm_at(time_s, crank_s=crank_s, crank_length_s=crank_length_s, stop_s=off_s, starts=starts)
            frames.append(speed_frame(time_s, rpm))
        every = round(volts_every_s / step_s)
        if awake and step % every == 0:
            cranking = crank_s <= time_s < crank_s + crank_length_s
            running = starts and crank_s + crank_length_s <= time_s < off_s
            volts = lowest_V if cranking else 14.0 if running else 12.4
            frames.append(volts_frame(time_s, scale * volts))
    return frames
