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
    `sources` are the vehicle's wires where the input follows more than one, `isolation` (diode, relay or none) what
    keeps them apart. `pulled` (up or down) is a resistor that was put in, `active` (high or low) how the unit was set
    to read the input, `reported_on` and `reported_off` when its change arrived as a report.
    """

    lead: str
    on_V: float | None = None
    off_V: float | None = None
    floats_off: bool | None = None
    coil: bool | None = None
    diode: bool | None = None
    isolated: bool | None = None
    sources: tuple[str, ...] = ()
    isolation: str | None = None
    pulled: str | None = None
    active: str | None = None
    reported_on: str | None = None
    reported_off: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """How the leads run; None where that was not said.

    `grommets` is True where every hole in sheet metal has one, `sheathed` where the leads are covered all round,
    `held` where they are tied along the way; `drip_loop` where they rise to the unit from a low point. The others say
    what they keep clear of: exhaust and heater, fuel lines, what moves.
    """

    grommets: bool | None = None
    sheathed: bool | None = None
    held: bool | None = None
    drip_loop: bool | None = None
    clear_of_heat: bool | None = None
    clear_of_fuel: bool | None = None
    clear_of_moving: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mount:
    """Where the unit sits; None where that was not said.

    `clear` is True where it is clear of all four: airbag zones, steering column, pedals, ducts.
    `top_mm` is how far below the upper edge, `bottom_mm` how far above the lower edge of the swept area it sits on the
    windscreen; `in_sight` whether it is in the driver's line of sight, `safety_technology` whether somebody looked up
    that the rule counts it as vehicle safety technology.
    """

    place: str | None = None
    solid: bool | None = None
    reachable: bool | None = None
    dry: bool | None = None
    cool: bool | None = None
    quiet: bool | None = None
    tied: bool | None = None
    clear: bool | None = None
    clear_of_airbags: bool | None = None
    clear_of_column: bool | None = None
    clear_of_pedals: bool | None = None
    clear_of_ducts: bool | None = None
    windscreen: bool | None = None
    top_mm: float | None = None
    bottom_mm: float | None = None
    in_sight: bool | None = None
    safety_technology: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinSheet:
    """Everything beside the joints: `tap` is the drop of the vehicle's own wiring up to the tap and back.

    `crank_level` is a level of ISO 16750-2, for jobs without a recording. `reversible` is True where the vehicle must
    be given back as it was, `spread` where a connector's cavity was spread in probing. `behind` says what is behind the
    panel that a self-tapping screw goes into.
    """

    ambient_C: float | None = None
    insulation: str | None = None
    crank_level: str | None = None
    tap: Drop | None = None
    vehicle_fuse_A: float | None = None
    vehicle_fuse_type: str | None = None
    vehicle_load_A: float | None = None
    reversible: bool | None = None
    pierced: bool | None = None
    spread: bool | None = None
    why_spliced: str | None = None
    ground: Drop | None = None
    self_tapping: bool | None = None
    behind: str | None = None
    switched_negative: bool | None = None
    levels: tuple[SignalLevels, ...] = ()
    mount: Mount | None = None
    route: Route | None = None
