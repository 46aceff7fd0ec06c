"""What the maker of a telematics unit states of it: supply, leads, inputs, lights, reporting."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Purpose(StrEnum):
    """What a lead of the unit is for."""

    SUPPLY = "supply"
    IGNITION = "ignition"
    GROUND = "ground"
    INPUT = "input"
    OUTPUT = "output"
    DATA = "data"


class Pull(StrEnum):
    """Where an open input is pulled to inside the unit."""

    UP = "up"
    DOWN = "down"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """The range in which the unit works, how long it rides through a dip, and what it draws.

    `holdup_ms` is how long the unit stays up with no supply. Currents: `peak_A` highest, `idle_mA` awake with the
    engine off, `transmit_mA` while sending, `sleep_mA` asleep.
    """

    least_V: float
    most_V: float
    holdup_ms: float | None = None
    peak_A: float | None = None
    idle_mA: float | None = None
    transmit_mA: float | None = None
    sleep_mA: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lead:
    """A wire of the unit: `colour` in letters of IEC 60757, its size as `mm2` or `awg`, the fuse it asks for."""

    name: str
    purpose: Purpose
    colour: str | None = None
    mm2: float | None = None
    awg: int | None = None
    fuse_A: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitInput:
    """An input of the unit, named as its lead: surely off at most at `low_most_V`, surely on from `high_least_V`."""

    name: str
    low_most_V: float
    high_least_V: float
    debounce_s: float | None = None
    pull: Pull | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Light:
    """A light on the unit: what it `means` when it shows `pattern`."""

    name: str
    colour: str | None = None
    pattern: str | None = None
    means: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reporting:
    """How often the unit reports (moving or stopped), and how long its ignition input must stand before it counts.

    `report_s` is how long one report keeps it awake and sending.
    """

    interval_s: float | None = None
    stopped_interval_s: float | None = None
    report_s: float | None = None
    debounce_on_s: float | None = None
    debounce_off_s: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitSheet:
    """One unit: every input bears the name of one of its leads of purpose ignition or input."""

    name: str
    maker: str | None
    supply: Supply
    leads: tuple[Lead, ...]
    inputs: tuple[UnitInput, ...] = ()
    lights: tuple[Light, ...] = ()
    reporting: Reporting = Reporting()

    def leads_for(self, purpose: Purpose) -> tuple[Lead, ...]:
        """The leads of that purpose, as listed."""
        return tuple(lead for lead in self.leads if lead.purpose is purpose)

    @property
    def ignition(self) -> UnitInput | None:
        """The thresholds of the ignition lead; None where the sheet states none."""
        names = {lead.name for lead in self.leads_for(Purpose.IGNITION)}
        return next((entry for entry in self.inputs if entry.name in names), None)
