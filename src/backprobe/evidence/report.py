"""Messages that a telematics unit sent, as its server exports them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from backprobe.errors import Skipped


class Event(StrEnum):
    """Why a report was sent, as far as it matters here."""

    BOOT = "boot"
    POWER_LOST = "power_lost"
    POWER_RESTORED = "power_restored"
    IGNITION_ON = "ignition_on"
    IGNITION_OFF = "ignition_off"
    HEARTBEAT = "heartbeat"


@dataclass(frozen=True, slots=True)
class Fix:
    """A position as reported: degrees north and east, the receiver's own accuracy [m], HDOP, satellites used."""

    lat_deg: float
    lon_deg: float
    accuracy_m: float | None = None
    hdop: float | None = None
    sats: int | None = None


@dataclass(frozen=True, slots=True)
class Report:
    """One report: `time_s` is the unit's own stamp, `received_s` the server's, both in seconds since 1970, UTC.

    `written` is the unit's stamp as it stands in the file. `fix` is None without a position (0, 0 is none).
    """

    unit_id: str
    time_s: float
    written: str
    received_s: float | None = None
    fix: Fix | None = None
    speed_kmh: float | None = None
    supply_V: float | None = None
    ignition: bool | None = None
    event: Event | None = None

    @property
    def ignition_event(self) -> bool | None:
        """True for ignition_on, False for ignition_off, None for any other report."""
        if self.event is Event.IGNITION_ON:
            return True
        return False if self.event is Event.IGNITION_OFF else None


@dataclass(frozen=True, slots=True)
class ReportNames:
    """What a server calls things: its column for each of ours, and its words for events."""

    columns: Mapping[str, str] = field(default_factory=dict)
    events: Mapping[str, Event] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportsTable:
    """Reports in the order of the file, of whatever units.

    `columns` are those of the known ones that the file has; `zoneless` says that stamps without a zone were taken
    as UTC. `skipped` holds the first places that could not be read, `skipped_rows` and `bad_cells` count them;
    `units` counts the reports of each unit.
    """

    file: str
    reports: tuple[Report, ...]
    columns: frozenset[str]
    zoneless: bool = False
    skipped: tuple[Skipped, ...] = ()
    skipped_rows: int = 0
    bad_cells: int = 0
    units: Mapping[str, int] = field(default_factory=dict)

    def of_unit(self, unit_id: str) -> tuple[Report, ...]:
        """The reports of one unit; capitals do not matter."""
        names = {name for name in self.units if name.casefold() == unit_id.strip().casefold()}
        return tuple(report for report in self.reports if report.unit_id in names)
