"""What the technician wrote down of wire, fuse, ground, inputs and mounting beside the joints themselves."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Drop:
    """Millivolts read across something while `load_A` flows through it."""

    drop_mV: float
    load_A: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SignalLevels:
    """The levels of a vehicle's signal at one of the unit's inputs: volts when it is on and when it is off.

    `floats_off` is True where the wire is open when it is off; `coil` where a relay's coil hangs on it, `diode` whether
    that has a flyback diode, `isolated` whether a relay keeps the unit apart from the vehicle's circuit.
    """

    lead: str
    on_V: float | None = None
    off_V: float | None = None
    floats_off: bool | None = None
    coil: bool | None = None
    diode: bool | None = None
    isolated: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mount:
    """Where the unit sits and how its cable runs; None where that was not said.

    `top_mm` is how far below the upper edge, `bottom_mm` how far above the lower edge of the swept area it sits on the
    windscreen; `in_sight` whether it is in the driver's line of sight.
    """

    place: str | None = None
    solid: bool | None = None
    reachable: bool | None = None
    dry: bool | None = None
    cool: bool | None = None
    quiet: bool | None = None
    tied: bool | None = None
    clear: bool | None = None
    windscreen: bool | None = None
    top_mm: float | None = None
    bottom_mm: float | None = None
    in_sight: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinSheet:
    """Everything beside the joints: `tap` is the drop of the vehicle's own wiring up to the tap and back.

    `crank_level` is a level of ISO 16750-2, for jobs without a recording. `reversible` is True where the vehicle must
    be given back as it was. `behind` says what is behind the panel that a self-tapping screw goes into.
    """

    ambient_C: float | None = None
    insulation: str | None = None
    crank_level: str | None = None
    tap: Drop | None = None
    vehicle_fuse_A: float | None = None
    vehicle_load_A: float | None = None
    reversible: bool | None = None
    pierced: bool | None = None
    why_spliced: str | None = None
    ground: Drop | None = None
    self_tapping: bool | None = None
    behind: str | None = None
    switched_negative: bool | None = None
    levels: tuple[SignalLevels, ...] = ()
    mount: Mount | None = None
