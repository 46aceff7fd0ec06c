"""What a fleet asks for beyond the usual limits."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class FleetPolicy:
    """A fleet's own limits, None where it has none; `file` is the name shown beside them."""

    file: str
    ground_drop_mV: float | None = None
    joint_drop_mV: float | None = None
    path_drop_mV: float | None = None
    loaded_drop_V: float | None = None
    wire_over_fuse: float | None = None
    fuse_load_part: float | None = None
    selective_times: float | None = None
    unit_margin_V: float | None = None
    wanted_days: float | None = None
    balance_V: float | None = None
