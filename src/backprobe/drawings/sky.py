"""What a sky plot is made from, and where things of the sky stand on it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

_FIRM_DIGITS = 9  # sines differ in the last place between Pythons: rounded, they draw the same
_ARC_STEP_DEG = 3.0


@dataclass(frozen=True, slots=True)
class SkySatellite:
    """A satellite where it stood: azimuth from north over east and elevation [°].

    `cn0_dBHz` is how strongly it was heard, None where it was not; `used` whether the position was made with it.
    """

    id: str
    az_deg: float
    el_deg: float
    cn0_dBHz: float | None = None
    used: bool = False


@dataclass(frozen=True, slots=True)
class SkySector:
    """A part of the sky that is blocked: from one azimuth clockwise to the other [°], and what to write beside it."""

    from_deg: float
    to_deg: float
    label: str


@dataclass(frozen=True, slots=True)
class SkyMaskCell:
    """What stands before one piece of the sky: azimuths clockwise and elevations [°], the loss [dB] and its name."""

    az_from_deg: float
    az_to_deg: float
    el_from_deg: float
    el_to_deg: float
    attenuation_dB: float
    label: str


SkyMask: TypeAlias = Sequence[SkyMaskCell]


@dataclass(frozen=True, slots=True, kw_only=True)
class SkyPlot:
    """What is drawn: satellites as measured, those that were predicted, blocked sectors, a predicted obstruction.

    With `heading_deg`, where the vehicle's front points, the front is up and the compass turns; without it north is up.
    `note` stands beneath the picture.
    """

    title: str = "Sky plot"
    satellites: Sequence[SkySatellite] = ()
    predicted: Sequence[SkySatellite] = ()
    sectors: Sequence[SkySector] = ()
    mask: SkyMask = ()
    heading_deg: float | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Dome:
    """The disc on which the sky is drawn: its centre is the zenith, its rim the horizon, azimuth `up_deg` is up."""

    x: float
    y: float
    radius: float
    up_deg: float = 0.0

    def at(self, az_deg: float, el_deg: float) -> tuple[float, float]:
        """The point of a direction; below the horizon it is set on the rim.

        >>> Dome(100, 100, 90).at(90, 30)
        (160.0, 100.0)
        """
        return self.off(az_deg, self.radius * (90.0 - min(max(el_deg, 0.0), 90.0)) / 90.0)

    def off(self, az_deg: float, distance: float) -> tuple[float, float]:
        """The point `distance` from the centre towards an azimuth."""
        turned = math.radians(az_deg - self.up_deg)
        x, y = self.x + distance * math.sin(turned), self.y - distance * math.cos(turned)
        return round(x, _FIRM_DIGITS), round(y, _FIRM_DIGITS)


def width_deg(from_deg: float, to_deg: float) -> float:
    """How far it is clockwise from one azimuth to the other: above 0, up to the whole circle.

    >>> width_deg(350, 20), width_deg(0, 360)
    (30.0, 360.0)
    """
    return (to_deg - from_deg) % 360.0 or 360.0


def piece(dome: Dome, azimuths: tuple[float, float], *, elevations: tuple[float, float]) -> list[tuple[float, float]]:
    """The outline of a piece of the sky between two azimuths (clockwise) and two elevations [°]."""
    start, wide = azimuths[0], width_deg(*azimuths)
    low, high = elevations
    steps = max(1, math.ceil(wide / _ARC_STEP_DEG))
    along = [start + wide * step / steps for step in range(steps + 1)]
    outer = [dome.at(az, low) for az in along]
    inner = [dome.at(az, high) for az in reversed(along)] if high < 90.0 else [(dome.x, dome.y)]
    return outer + inner
