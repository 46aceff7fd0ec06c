"""Directions in words: of the compass, or of the vehicle where its heading is known."""

from __future__ import annotations

from backprobe.stages.mount.reception.sector import Sector

_COMPASS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")
_SIDES = ("front", "right front", "right", "right rear", "rear", "left rear", "left", "left front")
_ALL_BUT_DEG = 240


def direction(sector: Sector, heading_deg: float | None) -> str:
    """Where a sector lies.

    >>> direction(Sector(90, 180, 90, 0.99, 12.0, 5, 2), None)
    'south-east'
    >>> direction(Sector(90, 180, 90, 0.99, 12.0, 5, 2), 315.0)
    'rear'
    """
    names = _COMPASS if heading_deg is None else _SIDES
    wide = (sector.to_deg - sector.from_deg) % 360 or 360
    middle = sector.from_deg + wide / 2 - (heading_deg or 0.0)
    if wide >= _ALL_BUT_DEG:
        return f"all but the {_named(middle + 180, names)}"
    return _named(middle, names)


def _named(az_deg: float, names: tuple[str, ...]) -> str:
    return names[int((az_deg % 360) / 45 + 0.5) % 8]


def degrees(sector: Sector) -> str:
    """A sector's bounds: azimuths, and the elevation up to which it reaches where it does not reach the zenith.

    >>> degrees(Sector(90, 180, 50, 0.99, 12.0, 5, 2))
    '90° to 180°, up to 50° high'
    """
    height = "" if sector.below_deg >= 90 else f", up to {sector.below_deg}° high"
    return f"{sector.from_deg}° to {sector.to_deg}°{height}"
