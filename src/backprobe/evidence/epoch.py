"""What a satellite receiver said at one moment: its position, and the satellites it heard."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SatelliteSample:
    """A satellite by its id ('G07'), azimuth and elevation [°] where the receiver knew them.

    `cn0_dBHz` is None where the receiver knew of the satellite and did not hear it.
    """

    id: str
    az_deg: int | None
    el_deg: int | None
    cn0_dBHz: float | None


@dataclass(frozen=True, slots=True)
class EpochFix:
    """A position made from satellites: degrees north and east, how many were used, HDOP and speed where told."""

    lat_deg: float
    lon_deg: float
    used: int | None = None
    hdop: float | None = None
    speed_mps: float | None = None


@dataclass(frozen=True, slots=True)
class Epoch:
    """One moment of a log; `fix` is None where the receiver had none.

    `time_s` counts from the log's beginning, with jumps of the receiver's clock taken out: `clocked_s` of it by that
    clock, and `unclocked` steps to moments that bore no time, each taken as the step that was usual up to there.
    `satellites` is empty where the receiver said nothing of them at this moment, `used` names those of the position.
    """

    time_s: float
    clocked_s: float
    unclocked: int
    fix: EpochFix | None
    satellites: tuple[SatelliteSample, ...] = ()
    used: frozenset[str] = frozenset()
