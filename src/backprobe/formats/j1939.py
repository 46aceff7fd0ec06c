"""What the frames of a heavy vehicle's bus say, as SAE J1939 packs it: identifiers and the few quantities used here.

Positions and scales were seen alike in several bodies of public code, not in the standard; which raw values are none is
from memory (docs/sources.md). Values are little-endian.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

TP_CM, TP_DT = 0xEC00, 0xEB00
REQUEST = 0xEA00
EEC1, VEP1, CCVS1 = 61444, 65271, 65265
VIN, DISTANCE_FINE, DISTANCE, TIME_DATE = 65260, 65217, 65248, 65254
ENGINE = 0  # the address of the first engine's controller
GLOBAL, NO_ADDRESS = 255, 254
FIRST_BROADCAST = 0xF000  # a parameter group from here on is sent to all: its low byte belongs to its number

# the largest raw value that is a value, by the number of bytes; above it stand 'reserved', 'error' (0xFE…) and
# 'not available' (0xFF…): from memory, unverified, but for 0xFFFF
MOST_RAW = {1: 0xFA, 2: 0xFAFF, 4: 0xFAFF_FFFF}


@dataclass(frozen=True, slots=True)
class Quantity:
    """A suspect parameter: its number, name, group, first byte (from 0), size in bytes, and what one bit is worth."""

    spn: int
    name: str
    pgn: int
    at: int
    size: int
    per_bit: float
    unit: str

    def value(self, data: bytes) -> float | None:
        """The value in `unit`; None where it is not there, not available or an error.

        >>> BATTERY_V.value(bytes.fromhex("FFFFFFFF1401FFFF")), BATTERY_V.value(bytes.fromhex("FFFFFFFFFFFFFFFF"))
        (13.8, None)
        """
        raw_bytes = data[self.at : self.at + self.size]
        if len(raw_bytes) < self.size:
            return None
        raw = int.from_bytes(raw_bytes, "little")
        return None if raw > MOST_RAW[self.size] else round(raw * self.per_bit, 6)


ENGINE_SPEED = Quantity(190, "engine speed", EEC1, 3, 2, 0.125, "rpm")
BATTERY_V = Quantity(168, "battery potential", VEP1, 4, 2, 0.05, "V")
KEYSWITCH_V = Quantity(158, "keyswitch battery potential", VEP1, 6, 2, 0.05, "V")
VEHICLE_SPEED = Quantity(84, "wheel-based vehicle speed", CCVS1, 1, 2, 1 / 256, "km/h")
DISTANCE_KM_FINE = Quantity(917, "high-resolution total vehicle distance", DISTANCE_FINE, 0, 4, 0.005, "km")
DISTANCE_KM = Quantity(245, "total vehicle distance", DISTANCE, 4, 4, 0.125, "km")
QUANTITIES = (ENGINE_SPEED, BATTERY_V, KEYSWITCH_V, VEHICLE_SPEED, DISTANCE_KM_FINE, DISTANCE_KM)


def group_of(can_id: int) -> int:
    """The number of the parameter group in a 29-bit identifier.

    >>> group_of(0x0CF00400), hex(group_of(0x18EBFF03))
    (61444, '0xeb00')
    """
    number = can_id >> 8 & 0x3FFFF
    return number if number & 0xFF00 >= FIRST_BROADCAST else number & 0x3FF00


def source_of(can_id: int) -> int:
    """The address of the node that sent it."""
    return can_id & 0xFF


def destination_of(can_id: int) -> int:
    """The address that it was sent to; 255 for all."""
    return GLOBAL if can_id >> 8 & 0xFF00 >= FIRST_BROADCAST else can_id >> 8 & 0xFF


def vin_text(data: bytes) -> str | None:
    """The VIN that a message holds, as it was sent; None where it is no text.

    It ends at the first star (from memory, unverified); filling behind it is left out.

    >>> vin_text(b"1M8GDM9AXKP042788*")
    '1M8GDM9AXKP042788'
    """
    text = data.split(b"*", 1)[0].rstrip(b"\xff\0").strip()
    if not text or not all(0x20 <= byte < 0x7F for byte in text):
        return None
    return text.decode("ascii")


def time_date_s(data: bytes) -> float | None:
    """The vehicle's clock in seconds since 1970 UTC; None where it is not set or makes no date.

    Seconds by quarters, minutes, hours, month, day by quarters, years from 1985.

    >>> time_date_s(bytes((6 * 4, 30, 12, 3, 15 * 4, 39, 125, 125))) # 15 March 2024, 12:30:06
    1710505806.0
    """
    if len(data) < 6 or any(byte > MOST_RAW[1] for byte in data[:6]):
        return None
    quarters, minute, hour, month, day, year = data[:6]
    try:
        begun = datetime(1985 + year, month, max(1, (day + 3) // 4), hour, minute, tzinfo=UTC)
    except ValueError:
        return None
    return (begun + timedelta(seconds=quarters / 4)).timestamp() if quarters < 240 else None
