"""Where the vehicle stands."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class VehiclePlace:
    """Degrees north and east, and how well they are known, as a phone says it: 68 % within `accuracy_m`.

    `accuracy_m` is None where nobody said.
    """

    lat_deg: float
    lon_deg: float
    accuracy_m: float | None = None
