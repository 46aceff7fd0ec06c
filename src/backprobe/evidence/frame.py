"""One frame of a CAN bus log."""

from __future__ import annotations

from typing import NamedTuple


class Frame(NamedTuple):
    """One frame as the logger wrote it.

    `time_s` is the log's own stamp: seconds since 1970 where the logger knew the time, else from its start. `can_id`
    has 29 bits where `extended`, else 11. `error` marks a frame that the logger's controller reported as an error on
    the bus, `remote` one that asks for data; both hold none that means anything. `channel` is the logger's name of the
    bus. A named tuple, as a log holds millions of them: making one costs a third of a frozen dataclass.
    """

    time_s: float
    can_id: int
    data: bytes
    extended: bool = True
    remote: bool = False
    error: bool = False
    channel: str = ""
