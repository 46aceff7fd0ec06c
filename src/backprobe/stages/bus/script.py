"""A bus log's key cycle as a key script, to hold a unit's reports against where nobody wrote one down."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime

from backprobe.errors import InputError, Place, UnreadableError
from backprobe.evidence.keys import Key
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import key_spans

NO_START = (
    "the log does not say what time it was when it began: give the moment of its first frame, "
    "--start 2026-03-31T08:05:00Z"
)
NO_OFF = "a log in which the key goes off and stays off for some ten seconds; in this one it does not"
HEADER = "t,key"


def script_lines(heard: Heard, *, start_s: float | None = None) -> Iterator[str]:
    """The script as lines of CSV, `t,key`, times in UTC; `start_s` is the moment of the first frame, since 1970.

    Off is written where the first computers fell silent: the key went off no later. Raises InputError where the log
    knows no time of day and none is given, UnreadableError where the key was not seen to go off: a script without an
    off proves nothing.
    """
    begun_s = heard.stamped_s if start_s is None else start_s
    if begun_s is None:
        raise InputError(NO_START)
    spans = key_spans(heard.key)
    if not any(key is Key.OFF for _, key in spans):
        raise UnreadableError(
            Place(heard.file), "a log in which the key goes off, for ten seconds at least; it does not"
        )
    yield HEADER
    for time_s, key in spans:
        yield f"{_moment(begun_s + time_s)},{key}"


def _moment(time_s: float) -> str:
    """The moment to the millisecond: 2026-03-31T08:05:00.250Z."""
    whole = round(time_s * 1000)
    day = datetime.fromtimestamp(whole // 1000, tz=UTC)
    return f"{day:%Y-%m-%dT%H:%M:%S}.{whole % 1000:03d}Z"
