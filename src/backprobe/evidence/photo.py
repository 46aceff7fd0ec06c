"""What a photo of the job shows, as the technician wrote it down."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Shows(StrEnum):
    """What a photo was taken of."""

    SERIAL_WITH_VIN = "serial_with_vin"
    BARE_JOINT = "bare_joint"
    GROUND = "ground"
    DASH_LAMPS = "dash_lamps"
    MOUNT = "mount"
    BEFORE = "before"
    AFTER = "after"
    OTHER = "other"

    @property
    def words(self) -> str:
        """What is shown, as it is said.

        >>> Shows.BARE_JOINT.words
        'the joint before it was covered'
        """
        return _WORDS[self]


_WORDS = {
    Shows.SERIAL_WITH_VIN: "the unit's serial with the VIN",
    Shows.BARE_JOINT: "the joint before it was covered",
    Shows.GROUND: "the ground point",
    Shows.DASH_LAMPS: "the lamps of the dash",
    Shows.MOUNT: "where the unit is fixed",
    Shows.BEFORE: "before the work",
    Shows.AFTER: "after the work",
    Shows.OTHER: "photo",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPhoto:
    """What is said of one photo: `file` is its path as written ('photos/ground.jpg')."""

    file: str
    shows: Shows = Shows.OTHER
    note: str | None = None
