"""Orbits of satellites as a navigation file or an almanac gives them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from backprobe.errors import Skipped


@dataclass(frozen=True, slots=True, kw_only=True)
class Elements:
    """One set of orbital elements of one satellite, named as IS-GPS-200 names them.

    `toe_s` is the moment they are about, in GPS seconds since 6 January 1980; angles are in radians. The longitude of
    the node, `omega0_rad`, is that of the beginning of toe's GPS week. An almanac knows no small corrections: they
    are 0.
    """

    id: str
    toe_s: float
    sqrt_a: float
    e: float
    i0_rad: float
    omega0_rad: float
    omega_rad: float
    m0_rad: float
    omega_dot_rad_s: float = 0.0
    i_dot_rad_s: float = 0.0
    delta_n_rad_s: float = 0.0
    cuc_rad: float = 0.0
    cus_rad: float = 0.0
    crc_m: float = 0.0
    crs_m: float = 0.0
    cic_rad: float = 0.0
    cis_rad: float = 0.0
    healthy: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Orbits:
    """What a file says of the satellites of GPS.

    `kind` names its form in words; `good_for_s` is how far from its own moment a set is meant to be used. `sets` may
    hold several of one satellite. `skipped` are the first lines that could not be read, `skipped_count` all of them;
    `others` counts the sets of other systems, which were passed over. `leap_s` is GPS time minus UTC as the file says
    it; None where it does not.
    """

    file: str
    kind: str
    good_for_s: float
    sets: tuple[Elements, ...]
    skipped: tuple[Skipped, ...] = ()
    skipped_count: int = 0
    others: Mapping[str, int] = field(default_factory=dict)
    leap_s: int | None = None
    notes: tuple[str, ...] = ()

    @property
    def ids(self) -> tuple[str, ...]:
        """The satellites, each once, sorted."""
        return tuple(sorted({each.id for each in self.sets}))
