"""What a light of the unit was seen to do."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class LightSeen:
    """The light's name as in the unit's sheet, the pattern seen, and after how many seconds of power it began."""

    light: str
    pattern: str
    after_s: float | None = None
    line: int | None = None
