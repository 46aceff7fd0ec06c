"""One job as a line of a list: what it is, where it stands, what is to be done next."""

from __future__ import annotations

from dataclasses import dataclass, fields


@dataclass(frozen=True, slots=True, kw_only=True)
class JobRow:
    """A job for lists and exports; what is not known is None.

    `state` and `verdict` are words, `fails`, `thin` and `open` count findings. `updated_at` is RFC 3339 in UTC.
    `corner` is the place in words, `attribution` what is owed to whoever drew the map that it is named by.
    """

    id: str
    name: str
    state: str
    verdict: str
    fails: int = 0
    thin: int = 0
    open: int = 0
    next: str | None = None
    plate: str | None = None
    fleet_number: str | None = None
    vin: str | None = None
    vehicle_type: str | None = None
    unit_serial: str | None = None
    yard: str | None = None
    lat_deg: float | None = None
    lon_deg: float | None = None
    corner: str | None = None
    attribution: str | None = None
    updated_at: str | None = None


COLUMNS = tuple(field.name for field in fields(JobRow))
