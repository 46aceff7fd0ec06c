"""What is kept of a receiver's log: figures small enough to travel with a job, whatever the size of the log.

All of it is whole numbers, so that it is the same in every journal and on every machine.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from backprobe.errors import Skipped

AZ_BIN_DEG, EL_BIN_DEG = 15, 10


@dataclass(frozen=True, slots=True)
class SkyBin:
    """One satellite in one piece of the sky: azimuths from `az_bin` × 15°, elevations from `el_bin` × 10°.

    `heard` and `missing` count the times at which the receiver heard the satellite there, or knew of it, had a position
    and did not hear it; `used` the times it was used. `cn0_tenths` is the sum over `heard` in 0.1 dB-Hz, `az_sum` and
    `el_sum` are sums over all times in whole degrees.
    """

    satellite: str
    az_bin: int
    el_bin: int
    heard: int
    missing: int
    used: int
    cn0_tenths: int
    az_sum: int
    el_sum: int

    @property
    def times(self) -> int:
        """How often the receiver spoke of the satellite there."""
        return self.heard + self.missing

    @property
    def az_deg(self) -> float:
        """The mean azimuth."""
        return self.az_sum / self.times

    @property
    def el_deg(self) -> float:
        """The mean elevation."""
        return self.el_sum / self.times

    @property
    def cn0_dBHz(self) -> float | None:
        """The mean strength while it was heard."""
        return self.cn0_tenths / 10 / self.heard if self.heard else None


@dataclass(frozen=True, slots=True)
class Rest:
    """The longest stretch at rest: its length, how many positions and how many of them count as independent.

    `r50_mm` and `r95_mm` are the radii round the mean place that hold 50 % and 95 % of the positions.
    """

    duration_s: int
    fixes: int
    independent_tenths: int
    r50_mm: int
    r95_mm: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Reception:
    """A receiver's log in figures.

    `skipped` counts lines by why they were passed over, `odd` what happened to the receiver's clock, `places` tells of
    the first of each. `epochs` are the moments, `fixes` those with a position, `since_first` those from the first
    position on. `used`, `hdop_hundredths` and `top4_tenths` (the mean of the four strongest signals, 0.1 dB-Hz) count
    moments by value; `told` are the moments at which the receiver spoke of signals, `moving` those with a position at
    which it was faster than a walk.
    """

    file: str
    sentences: int
    skipped: Mapping[str, int]
    odd: Mapping[str, int]
    places: tuple[Skipped, ...]
    epochs: int
    fixes: int
    since_first: int
    first_fix_ms: int | None
    duration_ms: int
    told: int
    moving: int
    used: Mapping[int, int]
    hdop_hundredths: Mapping[int, int]
    top4_tenths: Mapping[int, int]
    rest: Rest | None
    bins: tuple[SkyBin, ...]
