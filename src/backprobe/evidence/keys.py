"""The positions of the key, and what a meter did while it stood there."""

from __future__ import annotations

from enum import StrEnum


class Key(StrEnum):
    """The key's position when something was measured."""

    OFF = "off"  # within a minute of key-off
    ACCESSORY = "accessory"
    ON = "on"
    CRANK = "crank"
    RUNNING = "running"
    AFTER = "after"  # 10 minutes after key-off, doors shut
    ISOLATED = "isolated"  # battery switch open
    CHARGING = "charging"  # electric vehicle on its charger


class Capture(StrEnum):
    """How the meter held the value."""

    DISPLAY = "display"  # what stood on the display
    MIN = "min"  # lowest value of a MIN hold
    MAX = "max"  # highest value of a MAX hold
    LOGGED = "logged"  # lowest value that a fast recorder saw
